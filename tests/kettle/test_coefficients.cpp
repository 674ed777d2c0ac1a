#include <cmath>
#include <set>

#include "kettlecast/base/errors.hpp"
#include "kettlecast/kettle/coefficients.hpp"
#include "message.hpp"

using namespace kettlecast;

TEST_CASE("every coefficient has a card with a source and a default inside its bounds") {
  std::set<std::string> names;
  for (const auto& card : coefficient_cards()) {
    INFO(card.name);
    CHECK(card.name.find('.') != std::string_view::npos);
    CHECK_FALSE(card.unit.empty());
    CHECK_FALSE(card.meaning.empty());
    CHECK_FALSE(card.source.empty());
    CHECK(card.lower < card.upper);
    CHECK(card.value >= card.lower);
    CHECK(card.value <= card.upper);
    CHECK(card.spread > 0.0);
    if (card.positive) CHECK(card.lower > 0.0);
    names.insert(std::string(card.name));
  }
  CHECK(names.size() == coefficient_count);
}

TEST_CASE("coefficients are found by name and changed one at a time") {
  const Coefficients defaults;
  const Coefficients changed = defaults.with("probe.lag", 30.0);
  CHECK(changed.value("probe.lag") == 30.0);
  CHECK(changed[Coefficient::probe_lag] == 30.0);
  CHECK_FALSE(changed == defaults);
  CHECK(changed.with("probe.lag", defaults.value("probe.lag")) == defaults);
}

TEST_CASE("an unknown coefficient is refused with the nearest names") {
  CHECK_THROWS_AS(coefficient_named("probe.lagg"), UnknownName);
  CHECK_THROWS_WITH(Coefficients().with("probe.lagg", 1.0), mentions("probe.lag"));
}

TEST_CASE("a coefficient beyond its bounds is refused") {
  CHECK_THROWS_AS(Coefficients().with("probe.lag", -1.0), InvalidArgument);
  CHECK_THROWS_WITH(Coefficients().with("probe.lag", 1e4), mentions("probe.lag must be between"));
  CHECK_THROWS_AS(Coefficients().with("wall.loss", std::nan("")), InvalidArgument);
}
