#include <cmath>
#include <utility>

#include "kettlecast/properties/brine.hpp"
#include "kettlecast/properties/salt.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;

namespace {
constexpr double atmosphere = constants::atmosphere;
constexpr double celsius(double t) { return t + 273.15; }
double mass_fraction(double molality) {
  return molality * salt::molar_mass / (1.0 + molality * salt::molar_mass);
}
}  // namespace

TEST_CASE("osmotic coefficient of brine") {
  const auto room = salt::pitzer_constants(298.15);
  const std::pair<double, double> measured[] = {{0.1, 0.9324}, {0.5, 0.9209}, {1.0, 0.9355},
                                                {2.0, 0.9833}, {3.0, 1.0453}, {6.0, 1.2710}};
  for (const auto& [molality, value] : measured) {
    check_relative(salt::osmotic_coefficient(molality, room),
                   published(value, "-", "Robinson & Stokes, NaCl at 25 degC (from memory)"),
                   1.5e-3);
  }
  CHECK_THAT(salt::osmotic_coefficient(0.0, room), Catch::Matchers::WithinAbs(1.0, 1e-5));
  check_relative(room.slope,
                 published(0.3915, "kg^0.5/mol^0.5", "Pitzer, at 25 degC (from memory)"), 1e-3);
}

TEST_CASE("activity of the water over saturated brine") {
  check_absolute(salt::water_activity(1.0, 298.15),
                 published(0.7529, "-", "Greenspan (1977), NaCl at 25 degC (from memory)"), 0.002);
  // Crystals on the floor change nothing.
  CHECK_THAT(salt::water_activity(0.5, 350.0),
             Catch::Matchers::WithinRel(salt::water_activity(0.9, 350.0), 1e-5));
  for (double t : {0.0, 25.0, 60.0, 100.0, 120.0}) {
    const auto activity = [&](double w) { return salt::water_activity(w, celsius(t)); };
    CHECK(activity(0.0) == 1.0);
    sweep::falling(0.0, 0.28, activity);
    sweep::positive(0.0, 1.0, activity);
    sweep::without_jump(0.0, 1.0, 0.01, activity);
  }
}

TEST_CASE("boiling point of brine") {
  const std::pair<double, double> chart[] = {{0.05, 0.9}, {0.10, 2.0}, {0.20, 5.1}, {0.25, 7.4}};
  for (const auto& [w, elevation] : chart) {
    check_absolute(salt::boiling_elevation(w, atmosphere),
                   published(elevation, "K", "chemical engineers' chart (from memory)"), 0.4);
  }
  check_absolute(salt::saturated_boiling_temperature(atmosphere) - 273.15,
                 published(108.7, "degC", "saturated brine at 1 atm (from memory)"), 0.3);
  // Twice as many particles as molecules of salt.
  const double molality = 1e-5;
  check_relative(
      salt::boiling_elevation(mass_fraction(molality), atmosphere) / (2.0 * molality),
      published(0.513, "K kg/mol", "ebullioscopic constant of water, CRC Handbook (from memory)"),
      0.01);
  for (double pressure : {6e4, 101325.0, 2e5}) {
    const auto boiling = [&](double w) { return salt::boiling_temperature(w, pressure); };
    sweep::rising(0.0, 0.28, boiling);
    sweep::without_jump(0.0, 1.0, 1e-3, boiling);
  }
  // The activity at the temperature found gives the pressure again; steam is no ideal gas.
  const double at = salt::boiling_temperature(0.2, 8e4);
  const double boiling = water::saturation_temperature(8e4);
  const double real = water::vapour_density(boiling) * constants::molar_gas * boiling /
                      (8e4 * constants::water_molar_mass);
  CHECK_THAT(std::pow(salt::water_activity(0.2, at), real) * water::saturation_pressure(at),
             Catch::Matchers::WithinRel(8e4, 1e-5));
}

TEST_CASE("boiling point of sea salt") {
  check_absolute(salt::sea_salt_elevation(0.035, atmosphere),
                 published(0.5176798, "K", "IAPWS-08 with IAPWS-97, 35 g/kg"), 0.02);
  check_absolute(salt::sea_salt_elevation(0.12, atmosphere),
                 published(2.2175, "K", "IAPWS-08 extrapolated, 120 g/kg"), 0.15);
  CHECK(salt::sea_salt_elevation(0.0, atmosphere) == 0.0);
  sweep::rising(0.0, 0.12, [](double s) { return salt::sea_salt_elevation(s, atmosphere); });
  // Fewer ions per kilogram than kitchen salt.
  CHECK(salt::sea_salt_elevation(0.035, atmosphere) < salt::boiling_elevation(0.035, atmosphere));
}

TEST_CASE("saturation of salt") {
  check_absolute(100.0 * salt::saturation(celsius(20.0)),
                 published(26.4, "% salt", "35.9 g per 100 g of water (from memory)"), 0.1);
  check_absolute(100.0 * salt::saturation(celsius(100.0)),
                 published(28.1, "% salt", "39.1 g per 100 g of water"), 0.15);
  sweep::rising(celsius(0.0), celsius(150.0), salt::saturation<double>);
}

TEST_CASE("density of brine") {
  struct Point {
    double celsius, molality, volume;
  };
  const Point points[] = {{0, 1, 0.959525},  {0, 5, 0.848646},  {20, 2, 0.930909},
                          {25, 1, 0.965038}, {25, 5, 0.857301}, {50, 3, 0.914411},
                          {80, 4, 0.9037},   {100, 1, 1.0040},  {100, 5, 0.8910}};
  for (const Point& point : points) {
    check_relative(
        1e3 / salt::density(mass_fraction(point.molality), celsius(point.celsius)),
        published(point.volume, "cm3/g", "Rogers & Pitzer (1982), in the CRC Handbook, 1 bar"),
        2e-3);
  }
  for (double t : {0.0, 40.0, 100.0, 140.0}) {
    sweep::rising(0.0, 0.28, [&](double w) { return salt::density(w, celsius(t)); });
    CHECK_THAT(salt::density(0.0, celsius(t)),
               Catch::Matchers::WithinRel(water::density(celsius(t)), 1e-14));
  }
}

TEST_CASE("viscosity and specific heat of brine") {
  check_relative(1e3 * salt::viscosity(0.10, celsius(20.0)),
                 published(1.193, "mPa s", "CRC Handbook, 10 % (from memory)"), 0.02);
  check_relative(1e3 * salt::viscosity(0.20, celsius(20.0)),
                 published(1.557, "mPa s", "CRC Handbook, 20 % (from memory)"), 0.02);
  check_relative(1e-3 * salt::specific_heat(0.25, celsius(20.0)),
                 published(3.33, "kJ/(kg K)", "tables of brine, 25 % (from memory)"), 0.03);
  for (double t : {5.0, 40.0, 100.0, 120.0}) {
    sweep::rising(0.0, 0.28, [&](double w) { return salt::viscosity(w, celsius(t)); });
    sweep::falling(0.0, 0.28, [&](double w) { return salt::specific_heat(w, celsius(t)); });
    CHECK_THAT(salt::viscosity(0.0, celsius(t)),
               Catch::Matchers::WithinRel(water::viscosity(celsius(t)), 1e-10));
    CHECK(salt::specific_heat(0.0, celsius(t)) == water::specific_heat(celsius(t)));
  }
}
