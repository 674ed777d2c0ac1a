// Syrup and brine in the kettle: where they boil, at the sea and above it, and while they reduce.
#include <cmath>

#include "instant.hpp"
#include "kettlecast/base/constants.hpp"
#include "published.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

Food syrup(double share) {
  Food food = batch::water();
  food.name = "syrup";
  food.composition = {1.0 - share, 0.0, 0.0, share, 0.0, 0.0};
  food.sugar = share;
  return food;
}

Food brine(double share) {
  Food food = batch::water();
  food.name = "brine";
  food.composition = {1.0 - share, 0.0, 0.0, 0.0, 0.0, share};
  food.salt = share;
  return food;
}

/// Boiling point in a kettle in a room of a pressure [degC].
double boils_at(const Food& food, double pressure = 101325.0) {
  Kettle kettle = batch::stew_kettle();
  kettle.surroundings.pressure = pressure;
  Instant now(kettle, {batch::liquid(food, 20.0, 300.0)});
  return now.scene().boiling_point - constants::ice_point;
}

double elevation(const Food& food, double pressure = 101325.0) {
  return boils_at(food, pressure) - boils_at(batch::water(), pressure);
}

}  // namespace

TEST_CASE("syrup in a kettle boils where Brown found it") {
  const char source[] = "Brown (1912), boiling points of sucrose solutions";
  check_absolute(boils_at(syrup(0.40)), published(101.5, "degC", source), 0.5);
  check_absolute(boils_at(syrup(0.60)), published(103.0, "degC", source), 0.5);
  check_absolute(boils_at(syrup(0.70)), published(106.5, "degC", source), 1.3);
  check_absolute(boils_at(syrup(0.74)), published(108.4, "degC", source), 1.3);
  check_absolute(boils_at(syrup(0.80)), published(112.0, "degC", source), 1.3);
  check_absolute(boils_at(syrup(0.84)), published(116.3, "degC", source), 1.3);
}

TEST_CASE("brine in a kettle boils as handbook charts say") {
  const char source[] = "chemical engineers' handbook, chart, from memory";
  check_absolute(elevation(brine(0.05)), published(0.9, "K", source), 0.4);
  check_absolute(elevation(brine(0.10)), published(2.0, "K", source), 0.4);
  check_absolute(elevation(brine(0.20)), published(5.1, "K", source), 0.4);
  check_absolute(elevation(brine(0.25)), published(7.4, "K", source), 0.4);
}

TEST_CASE("a little sugar raises the boiling point by the ebullioscopic constant") {
  // 0.1 mol, 34.23 g of sucrose, per kg of water; 0.513 K kg/mol (CRC Handbook), 342.3 g/mol.
  check_relative(elevation(syrup(0.03423 / 1.03423)),
                 published(0.0513, "K", "CRC Handbook, ebullioscopic constant of water"), 0.02);
  CHECK_THAT(boils_at(batch::water()), WithinAbs(99.974, 1e-3));  // IAPWS-IF97, 1 atm
}

TEST_CASE("in the mountains syrup and brine boil earlier by about what water does") {
  // 79.50 kPa, 2000 m (US Standard Atmosphere 1976). By Clausius and Clapeyron an elevation goes
  // with T^2 / h_fg: (366.4 / 373.1)^2 x 2256.5 / 2273.4 = 0.957 of that at the sea (IAPWS-IF97).
  for (const Food& food : {syrup(0.6), syrup(0.8), brine(0.1), brine(0.2)}) {
    const double sea = elevation(food), mountain = elevation(food, 79495.0);
    INFO(food.name << " +" << sea << " K");
    CHECK_THAT(mountain / sea, WithinAbs(0.957, 0.015));
  }
}

TEST_CASE("sugar and salt in one liquid raise the boiling point more than either") {
  Kettle kettle = batch::stew_kettle();
  Instant both(kettle,
               {batch::liquid(syrup(0.4), 10.0, 300.0), batch::liquid(brine(0.1), 10.0, 300.0)});
  Instant sweet(
      kettle, {batch::liquid(syrup(0.4), 10.0, 300.0), batch::liquid(batch::water(), 9.0, 300.0)});
  Instant salty(
      kettle, {batch::liquid(batch::water(), 6.0, 300.0), batch::liquid(brine(0.1), 10.0, 300.0)});
  const double water = boils_at(batch::water()) + constants::ice_point;
  const double of_both = both.scene().boiling_point - water;
  const double of_each =
      (sweet.scene().boiling_point - water) + (salty.scene().boiling_point - water);
  // Activities multiply (Ross, 1975): so dilute, elevations add up to a few per cent.
  CHECK_THAT(of_both, WithinRel(of_each, 0.03));
}

TEST_CASE("a syrup that boils down follows the curve and keeps its sugar") {
  Instant now(batch::stew_kettle(), {batch::liquid(syrup(0.6), 20.0, 376.0)}, {400.0, 376.0});
  now.inputs.floor_heat = 1.0;
  now.inputs.agitator_speed = 1.0;
  now.inputs.cover = Cover::lid;  // in the open so wide a surface would evaporate below boiling
  const double sugar = 12.0;      // kg of sugar
  struct Point {
    double share, brown, tolerance;
  };
  for (const Point& at :
       {Point{0.70, 106.5, 1.3}, Point{0.80, 112.0, 1.3}, Point{0.84, 116.3, 1.3}}) {
    const double left = sugar / at.share;
    while (20.0 - now.state[slot::vapour_mass] > left) now.wait(2.0);
    check_absolute(now.scene().boiling_point - constants::ice_point,
                   published(at.brown, "degC", "Brown (1912)"), at.tolerance);
    // It boils: not a kelvin hotter than its own boiling point.
    CHECK_THAT(now.scene().liquid_temperature - now.scene().boiling_point, WithinAbs(0.5, 0.5));
    CHECK_THAT(now.state[slot::sugar], WithinAbs(sugar, 1e-9));
    CHECK_THAT(now.state[slot::solids], WithinAbs(sugar, 1e-9));
  }
}

TEST_CASE("vapour of brine takes no salt along and water poured in undoes the reduction") {
  Instant now(batch::stew_kettle(), {batch::liquid(brine(0.1), 20.0, 376.0)}, {400.0, 376.0});
  const double before = now.scene().boiling_point;
  now.inputs.floor_heat = 1.0;
  now.wait(600.0);
  REQUIRE(now.state[slot::vapour_mass] > 1.0);
  CHECK_THAT(now.state[slot::salt], WithinAbs(2.0, 1e-9));
  CHECK(now.scene().boiling_point > before + 0.1);
  now.state[slot::water] += now.state[slot::vapour_mass];
  CHECK_THAT(now.scene().boiling_point, WithinAbs(before, 1e-6));
}

TEST_CASE("syrup loses less vapour than water of the same temperature") {
  const auto vapour = [](const Food& food) {
    Instant now(batch::stew_kettle(), {batch::liquid(food, 20.0, 360.0)}, {360.0, 360.0});
    return now.rates()[slot::vapour_mass];
  };
  // Raoult at its simplest bounds it from above: mole fraction of water in 60 % sucrose 0.927.
  CHECK(vapour(syrup(0.6)) < 0.927 * vapour(batch::water()));
  CHECK(vapour(syrup(0.6)) > 0.0);
}

TEST_CASE("heat and mass balance at every instant with syrup and brine, below boiling and above") {
  for (double temperature : {300.0, 360.0, 380.0}) {
    for (double share : {0.1, 0.6, 0.85}) {
      Instant now(batch::stew_kettle(),
                  {batch::liquid(syrup(share), 15.0, temperature),
                   batch::liquid(brine(0.2), 3.0, temperature),
                   batch::pieces(batch::carrot(), 5.0, 290.0, 0.02)},
                  {temperature + 40.0, temperature});
      now.inputs.floor_heat = 1.0;
      now.inputs.agitator_speed = 0.5;
      now.inputs.pour_rate = {0.1, 0.05, 0.02};
      INFO("sugar " << share << ", " << temperature << " K");
      now.check_books();
    }
  }
}
