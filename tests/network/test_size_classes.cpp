#include <cmath>
#include <limits>

#include "kettlecast/base/errors.hpp"
#include "kettlecast/network/size_classes.hpp"
#include "message.hpp"
#include "sweep.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

constexpr double mean_size = 0.012;  // [m]

/// Moment of the classes: sum of mass shares times (size / mean)^power.
double moment(const std::vector<SizeClass>& classes, double power) {
  double sum = 0.0;
  for (const auto& one : classes) sum += one.mass_share * std::pow(one.size / mean_size, power);
  return sum;
}

/// The same moment of the whole lognormal distribution: (1 + s^2)^(p (p - 1) / 2).
double lognormal_moment(double variation, double power) {
  return std::pow(1.0 + variation * variation, 0.5 * power * (power - 1.0));
}

/// Positive, rising in size, of a mass that adds up.
void check_classes(const std::vector<SizeClass>& classes) {
  REQUIRE(classes.size() == 3);
  CHECK(classes[0].size > 0.0);
  CHECK(classes[0].size < classes[1].size);
  CHECK(classes[1].size < classes[2].size);
  for (const auto& one : classes) CHECK(one.mass_share > 0.0);
  CHECK_THAT(moment(classes, 0.0), WithinRel(1.0, 1e-12));
}

}  // namespace

TEST_CASE("lognormal classes keep six moments of the distribution exactly") {
  // Aitchison & Brown, The Lognormal Distribution (1957): moments in closed form.
  for (double variation : {0.01, 0.1, 0.3, 0.6, 1.0}) {
    const auto classes = lognormal_size_classes(mean_size, variation);
    INFO("s " << variation);
    check_classes(classes);
    for (int power = -1; power <= 4; ++power) {
      CHECK_THAT(moment(classes, power), WithinRel(lognormal_moment(variation, power), 1e-9));
    }
  }
}

TEST_CASE("lognormal classes: what follows from other powers of the size comes close") {
  // Warming times go with the square, films with roots: within 1 % at a spread of 30 %.
  const auto classes = lognormal_size_classes(mean_size, 0.3);
  for (double power : {-2.0, -1.5, -0.5, 0.5, 1.5}) {
    CHECK_THAT(moment(classes, power), WithinRel(lognormal_moment(0.3, power), 0.01));
  }
}

TEST_CASE("normal classes keep the moments of the normal distribution") {
  // Moments about the mean: 0, s^2, 0, 3 s^4, 0 (Abramowitz & Stegun, 26.2.18).
  for (double variation : {0.01, 0.1, 0.3}) {
    const auto classes = normal_size_classes(mean_size, variation);
    check_classes(classes);
    const double moments[] = {0.0, std::pow(variation, 2), 0.0, 3.0 * std::pow(variation, 4), 0.0};
    for (int power = 1; power <= 5; ++power) {
      double sum = 0.0;
      for (const auto& one : classes) {
        sum += one.mass_share * std::pow(one.size / mean_size - 1.0, power);
      }
      CHECK_THAT(sum, WithinAbs(moments[power - 1], 1e-15));
    }
    // Mean of 1/size of a normal distribution away from zero: 1 + s^2 + 3 s^4 + 15 s^6 + ...
    const double square = variation * variation;
    CHECK_THAT(moment(classes, -1.0),
               WithinAbs(1.0 + square + 3.0 * square * square + 15.0 * std::pow(square, 3),
                         6.1 * std::pow(square, 3) + 1e-12));
  }
}

TEST_CASE("without a spread there is one size") {
  for (double variation : {0.0, 5e-5}) {
    for (const auto& classes : {lognormal_size_classes(mean_size, variation),
                                normal_size_classes(mean_size, variation)}) {
      REQUIRE(classes.size() == 1);
      CHECK(classes[0].size == mean_size);
      CHECK(classes[0].mass_share == 1.0);
    }
  }
  // A narrow spread lies close to it.
  CHECK_THAT(lognormal_size_classes(mean_size, 1e-3)[2].size,
             WithinRel(mean_size * (1.0 + std::sqrt(3.0) * 1e-3), 1e-5));
}

TEST_CASE("classes move apart as the spread grows") {
  sweep::falling(0.001, 1.0, [](double s) { return lognormal_size_classes(1.0, s)[0].size; });
  sweep::rising(0.001, 1.0, [](double s) { return lognormal_size_classes(1.0, s)[2].size; });
}

TEST_CASE("a spread out of range is refused") {
  CHECK_THROWS_AS(lognormal_size_classes(mean_size, 1.1), InvalidArgument);
  CHECK_THROWS_AS(lognormal_size_classes(0.0, 0.2), InvalidArgument);
  CHECK_THROWS_WITH(normal_size_classes(mean_size, 0.5), mentions("variation"));
  CHECK_THROWS_AS(normal_size_classes(std::numeric_limits<double>::quiet_NaN(), 0.1),
                  InvalidArgument);
}
