#include <cmath>

#include "kettlecast/properties/solutes.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;

namespace {
constexpr double atmosphere = constants::atmosphere;
}

TEST_CASE("constants at boiling are those of the equation") {
  const auto constants = salt::pitzer_constants(373.15);
  CHECK_THAT(solutes::at_boiling.slope, Catch::Matchers::WithinRel(constants.slope, 1e-8));
  CHECK_THAT(solutes::at_boiling.first, Catch::Matchers::WithinRel(constants.first, 1e-8));
  CHECK_THAT(solutes::at_boiling.second, Catch::Matchers::WithinRel(constants.second, 1e-8));
  CHECK_THAT(solutes::at_boiling.third, Catch::Matchers::WithinRel(constants.third, 1e-8));
  CHECK_THAT(solutes::saturated_salt, Catch::Matchers::WithinRel(salt::saturation(373.15), 1e-8));
}

TEST_CASE("sugar and salt each act in all the water") {
  const double sugar = solutes::water_activity(1.0, 0.5, 0.0);
  const double salt = solutes::water_activity(1.0, 0.0, 0.1);
  CHECK(solutes::water_activity(1.0, 0.0, 0.0) == 1.0);
  CHECK_THAT(sugar, Catch::Matchers::WithinRel(sugar::water_activity(0.5 / 1.5), 1e-9));
  CHECK_THAT(salt, Catch::Matchers::WithinRel(salt::water_activity(0.1 / 1.1, 373.15), 1e-9));
  // Ross (1975): the activities multiply.
  CHECK_THAT(solutes::water_activity(1.0, 0.5, 0.1),
             Catch::Matchers::WithinRel(sugar * salt, 1e-12));
}

TEST_CASE("dilute elevations of sugar and salt add up") {
  constexpr double sugar = 1e-4 * sugar::molar_mass;
  constexpr double salt = 1e-4 * salt::molar_mass;
  const double elevation = solutes::boiling_temperature(1.0, sugar, salt, atmosphere) -
                           water::saturation_temperature(atmosphere);
  check_relative(
      elevation / 3e-4,
      published(0.513, "K kg/mol", "ebullioscopic constant of water, CRC Handbook (from memory)"),
      0.02);
}

TEST_CASE("constants of 100 degC serve brine at other pressures") {
  for (double pressure : {5e4, 101325.0, 2e5}) {
    for (double w : {0.05, 0.15, 0.25}) {
      const double found = solutes::boiling_temperature(1.0 - w, 0.0, w, pressure);
      const double stated = pressure > atmosphere ? 0.4 : 0.1;  // in the docstring
      CHECK_THAT(found, Catch::Matchers::WithinAbs(salt::boiling_temperature(w, pressure), stated));
    }
  }
}

TEST_CASE("a liquid can boil dry") {
  const auto activity = [](double water) { return solutes::water_activity(water, 0.6, 0.02); };
  sweep::rising(0.0, 3.0, activity);
  sweep::rising(0.0, 1e-3, activity);
  const auto boiling = [](double water) {
    return solutes::boiling_temperature(water, 0.6, 0.02, atmosphere);
  };
  sweep::falling(0.0, 3.0, boiling);
  CHECK(boiling(0.0) < 600.0);
  CHECK(solutes::water_activity(0.0, 0.0, 0.0) == 1.0);
  CHECK(solutes::water_activity(0.0, 1.0, 0.0) < 1e-9);
  CHECK(std::isfinite(sweep::slope(1e-9, 1e-9, activity)));
  // Salt alone: that of saturated brine, until the last water has gone.
  CHECK_THAT(solutes::water_activity(0.0, 0.0, 1.0),
             Catch::Matchers::WithinRel(salt::water_activity(1.0, 373.15), 1e-6));
  sweep::without_jump(0.0, 1.0, 0.02,
                      [](double water) { return solutes::water_activity(water, 0.0, 0.1); });
}
