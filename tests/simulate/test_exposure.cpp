#include <limits>

#include "catch.hpp"
#include "kettlecast/base/errors.hpp"
#include "kettlecast/simulate/exposure.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinAbs;

namespace {
// Up 0 to 100 in 100 s, down to 40 in 30 s, up to 90 in 50 s, there for 20 s.
const Series signal{{0.0, 100.0, 130.0, 180.0, 200.0}, {0.0, 100.0, 40.0, 90.0, 90.0}};
}  // namespace

TEST_CASE("stays above a level end where the lines cross it") {
  // By hand: above 80 from 80 s; down through it 10 s after 100 s; up again 40 s after 130 s.
  const auto stays = stays_above(signal, 80.0);
  REQUIRE(stays.size() == 2);
  CHECK_THAT(stays[0].begin, WithinAbs(80.0, 1e-12));
  CHECK_THAT(stays[0].end, WithinAbs(110.0, 1e-12));
  CHECK_THAT(stays[1].begin, WithinAbs(170.0, 1e-12));
  CHECK_THAT(stays[1].end, WithinAbs(200.0, 1e-12));
  CHECK_THAT(total_time(stays), WithinAbs(60.0, 1e-12));
  CHECK_THAT(longest_time(stays_above(signal, 75.0)), WithinAbs(37.5, 1e-12));
  CHECK_THAT(first_time(stays).value(), WithinAbs(80.0, 1e-12));
}

TEST_CASE("above and below share the series without a gap") {
  for (const double level : {-1.0, 0.0, 33.3, 40.0, 80.0, 90.0, 100.0, 101.0}) {
    const double above = total_time(stays_above(signal, level));
    CHECK_THAT(above + total_time(stays_below(signal, level)), WithinAbs(200.0, 1e-12));
  }
  const auto below = stays_below(signal, 80.0);
  REQUIRE(below.size() == 2);
  CHECK(below[0].begin == 0.0);
  CHECK_THAT(longest_time(below), WithinAbs(80.0, 1e-12));
}

TEST_CASE("a level that is only touched is reached, but not held") {
  CHECK(first_time(stays_above(signal, 100.0)).value() == 100.0);
  CHECK(total_time(stays_above(signal, 100.0)) == 0.0);
  CHECK_FALSE(first_time(stays_above(signal, 100.5)).has_value());
  CHECK(longest_time(stays_above(signal, 100.5)) == 0.0);
}

TEST_CASE("a plateau at the level counts as above") {
  const Series flat{{0.0, 10.0, 20.0}, {60.0, 60.0, 60.0}};
  CHECK(total_time(stays_above(flat, 60.0)) == 20.0);
  CHECK(stays_below(flat, 60.0).empty());
}

TEST_CASE("a jump at one time is crossed at that time") {
  const Series jump{{0.0, 10.0, 10.0, 20.0}, {90.0, 90.0, 10.0, 10.0}};
  CHECK(total_time(stays_above(jump, 50.0)) == 10.0);
  CHECK(total_time(stays_below(jump, 50.0)) == 10.0);
}

TEST_CASE("series that cannot be judged are refused") {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  CHECK_THROWS_AS(stays_above({{}, {}}, 1.0), InvalidArgument);
  CHECK_THROWS_AS(stays_below({{0.0}, {1.0}}, 1.0), InvalidArgument);
  CHECK_THROWS_AS(stays_above({{0.0, 1.0}, {1.0}}, 1.0), InvalidArgument);
  CHECK_THROWS_AS(stays_above({{0.0, -1.0}, {1.0, 1.0}}, 1.0), InvalidArgument);
  CHECK_THROWS_AS(stays_above({{0.0, 1.0}, {1.0, nan}}, 1.0), InvalidArgument);
}
