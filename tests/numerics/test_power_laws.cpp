#include <cmath>

#include "kettlecast/numerics/power_laws.hpp"
#include "sweep.hpp"

using namespace kettlecast;

namespace {
constexpr PowerLaws<3> laws{{{{2.0, 0.5}, {1.0, 1.0}, {5.0, 0.2}}}, {{4.0, 7.5}}, 1.1};
double value(double x) { return joined_power_laws(x, laws); }
}  // namespace

TEST_CASE("joined power laws are the laws themselves outside their bands") {
  CHECK_THAT(value(1.0), Catch::Matchers::WithinRel(2.0, 1e-14));
  CHECK_THAT(value(3.6), Catch::Matchers::WithinRel(2.0 * std::sqrt(3.6), 1e-14));
  CHECK_THAT(value(5.0), Catch::Matchers::WithinRel(5.0, 1e-14));
  CHECK_THAT(value(100.0), Catch::Matchers::WithinRel(5.0 * std::pow(100.0, 0.2), 1e-14));
}

TEST_CASE("joined power laws have neither jumps nor kinks") {
  sweep::positive(0.1, 20.0, value);
  sweep::without_jump(0.1, 20.0, 0.06, value);
  for (double edge : {4.0 / 1.1, 4.4, 7.5 / 1.1, 8.25}) {
    const double before = sweep::slope(edge - 1e-4, 1e-6, value);
    const double after = sweep::slope(edge + 1e-4, 1e-6, value);
    CHECK_THAT(after, Catch::Matchers::WithinAbs(before, 2e-3));
  }
}

TEST_CASE("laws that meet without a step are joined without a dip") {
  constexpr PowerLaws<2> meeting{{{{1.0, 0.2}, {1.0, 3.0}}}, {{1.0}}, 1.05};
  const auto met = [&](double x) { return joined_power_laws(x, meeting); };
  sweep::rising(0.5, 2.0, met);
  CHECK_THAT(met(1.051), Catch::Matchers::WithinRel(std::pow(1.051, 3.0), 1e-14));
  CHECK_THAT(met(0.951), Catch::Matchers::WithinRel(std::pow(0.951, 0.2), 1e-14));
}
