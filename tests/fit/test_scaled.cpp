#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include "catch.hpp"
#include "kettlecast/base/errors.hpp"
#include "kettlecast/fit/scaled.hpp"
#include "message.hpp"

using namespace kettlecast;

namespace {

std::vector<std::string> all_names() {
  std::vector<std::string> names;
  for (const auto& card : coefficient_cards()) names.emplace_back(card.name);
  return names;
}

}  // namespace

TEST_CASE("defaults are zero and one prior spread is one") {
  for (const auto& card : coefficient_cards()) {
    const std::string name(card.name);
    CHECK(to_scaled(Coefficients(), {name}).at(0) == 0.0);
    const double spread =
        card.positive ? card.value * std::exp(card.spread) : card.value + card.spread;
    if (spread > card.upper) continue;
    const auto moved = Coefficients().with(name, spread);
    CHECK_THAT(to_scaled(moved, {name}).at(0), Catch::Matchers::WithinRel(1.0, 1e-12));
  }
}

TEST_CASE("scaled values lead back to the coefficients") {
  const auto names = all_names();
  const std::vector<double> point(names.size(), 0.3);
  const auto there = from_scaled(Coefficients(), names, point);
  const auto back = to_scaled(there, names);
  for (std::size_t i = 0; i < names.size(); ++i) {
    INFO(names[i]);
    CHECK_THAT(back[i], Catch::Matchers::WithinAbs(0.3, 1e-12));
  }
  CHECK(from_scaled(there, {}, {}) == there);
}

TEST_CASE("scaled values beyond the bounds are moved onto them") {
  const auto names = all_names();
  const auto bounds = scaled_bounds(names);
  const auto low = from_scaled(Coefficients(), names, std::vector<double>(names.size(), -1e3));
  const auto high = from_scaled(Coefficients(), names, std::vector<double>(names.size(), 1e3));
  for (std::size_t i = 0; i < names.size(); ++i) {
    CHECK(low.values()[i] == coefficient_cards()[i].lower);
    CHECK(high.values()[i] == coefficient_cards()[i].upper);
    CHECK(to_scaled(low, names)[i] == bounds.lower[i]);
    CHECK(to_scaled(high, names)[i] == bounds.upper[i]);
  }
}

TEST_CASE("slopes are those of central differences") {
  const auto names = all_names();
  const auto slopes = scaled_slopes(Coefficients(), names);
  for (std::size_t i = 0; i < names.size(); ++i) {
    INFO(names[i]);
    const auto value = [&](double x) {
      return from_scaled(Coefficients(), {names[i]}, {x}).value(names[i]);
    };
    const double quotient = (value(1e-4) - value(-1e-4)) / 2e-4;
    CHECK_THAT(slopes[i], Catch::Matchers::WithinRel(quotient, 1e-6));
  }
}

TEST_CASE("impossible scaled values are refused") {
  CHECK_THROWS_AS(to_scaled(Coefficients(), {"floor.efficency"}), UnknownName);
  CHECK_THROWS_WITH(from_scaled(Coefficients(), {"probe.lag"}, {}), mentions("as many"));
  const double nan = std::numeric_limits<double>::quiet_NaN();
  CHECK_THROWS_AS(from_scaled(Coefficients(), {"probe.lag"}, {nan}), InvalidArgument);
}
