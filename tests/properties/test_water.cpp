#include "kettlecast/properties/atmosphere.hpp"
#include "kettlecast/properties/water.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;

namespace {
constexpr double psi = 6894.757293168;  // [Pa]
constexpr double celsius(double t) { return t + 273.15; }
}  // namespace

TEST_CASE("saturation pressure and temperature are those of IAPWS-IF97") {
  check_relative(water::saturation_pressure(300.0) / 1e6,
                 published(0.353658941e-2, "MPa", "IAPWS R7-97 Table 35"), 1e-8);
  check_relative(water::saturation_pressure(600.0) / 1e6,
                 published(0.123443146e2, "MPa", "IAPWS R7-97 Table 35"), 1e-8);
  check_relative(water::saturation_temperature(0.1e6),
                 published(0.372755919e3, "K", "IAPWS R7-97 Table 36"), 1e-8);
  check_relative(water::saturation_temperature(10e6),
                 published(0.584149488e3, "K", "IAPWS R7-97 Table 36"), 1e-8);
}

TEST_CASE("saturation pressure agrees with other tables") {
  check_relative(water::saturation_pressure(celsius(5.0)),
                 published(872.6, "Pa", "ASHRAE Fundamentals 2017, ch. 1, Table 3"), 3e-4);
  check_relative(water::saturation_pressure(celsius(25.0)),
                 published(3169.7, "Pa", "ASHRAE Fundamentals 2017, ch. 1, Table 3"), 3e-4);
  check_relative(water::saturation_pressure(celsius(100.0)),
                 published(101418.0, "Pa", "ASHRAE Fundamentals 2017, ch. 1, Table 3"), 3e-4);
  check_absolute(water::saturation_pressure(373.1243) / 1e6,
                 published(0.101325, "MPa", "IAPWS SR1-86 Table 1"), 1e-6);
  const double rise = sweep::slope(373.1243, 0.01, water::saturation_pressure<double>);
  check_absolute(rise / 1e6, published(0.003616, "MPa/K", "IAPWS SR1-86 Table 1"), 1e-6);
}

TEST_CASE("saturation temperature inverts saturation pressure") {
  for (double temperature = 273.16; temperature < 460.0; temperature += 0.5)
    CHECK_THAT(water::saturation_temperature(water::saturation_pressure(temperature)),
               Catch::Matchers::WithinAbs(temperature, 1e-8));
}

TEST_CASE("saturated liquid water agrees with an independent computation of the IAPWS releases") {
  struct Row {
    double celsius, pressure, density, specific_heat, latent_heat, viscosity, conductivity, prandtl;
  };
  const Row rows[] = {{10, 1.228183869, 999.6537132, 4.195825449, 2477.20875, 1305.991985,
                       0.5787106887, 9.468832203},
                      {20, 2.339214767, 998.1608093, 4.185102491, 2453.54956, 1001.627328,
                       0.597952753, 7.010441884},
                      {40, 7.384427487, 992.1831489, 4.178784392, 2406.00137, 652.7192432,
                       0.6284455047, 4.340190144},
                      {50, 12.35127043, 988.0087757, 4.179760088, 2381.974063, 546.5041541,
                       0.6405895988, 3.565865345},
                      {70, 31.2006357, 977.7484275, 4.188248816, 2333.080884, 403.5386338,
                       0.6597388517, 2.561801842},
                      {80, 47.41471993, 971.7787936, 4.195633924, 2308.065655, 354.0436971,
                       0.6669803608, 2.227108673},
                      {90, 70.18236074, 965.3044353, 4.205091228, 2282.560344, 314.1722253,
                       0.6727823681, 1.96367047},
                      {100, 101.4179779, 958.3542773, 4.216645119, 2256.472874, 281.5850194,
                       0.6772168438, 1.75327018},
                      {110, 143.3759672, 950.9496923, 4.230364235, 2229.70428, 254.6120542,
                       0.6803493604, 1.583159757},
                      {130, 270.2596066, 934.8316615, 4.264846964, 2173.699989, 212.9397327,
                       0.6829478006, 1.329758104},
                      {150, 476.1013811, 917.0065844, 4.310270262, 2113.667582, 182.610349,
                       0.6810147172, 1.155775252}};
  for (const Row& row : rows) {
    INFO(row.celsius << " degC");
    const double t = celsius(row.celsius);
    check_relative(water::saturation_pressure(t) / 1e3,
                   published(row.pressure, "kPa", "IAPWS-IF97 by the Python package iapws 1.5.2"),
                   1e-5);
    check_relative(water::density(t),
                   published(row.density, "kg/m3", "IAPWS-IF97 by the Python package iapws 1.5.2"),
                   1e-5);
    check_relative(
        water::specific_heat(t) / 1e3,
        published(row.specific_heat, "kJ/(kg K)", "IAPWS-IF97 by the Python package iapws 1.5.2"),
        1e-4);
    check_relative(
        water::latent_heat(t) / 1e3,
        published(row.latent_heat, "kJ/kg", "IAPWS-IF97 by the Python package iapws 1.5.2"), 1e-4);
    check_relative(
        water::viscosity(t) * 1e6,
        published(row.viscosity, "uPa s", "IAPWS R12-08 by the Python package iapws 1.5.2"), 1e-4);
    check_relative(
        water::conductivity(t),
        published(row.conductivity, "W/(m K)", "IAPWS R15-11 by the Python package iapws 1.5.2"),
        1e-4);
    check_relative(water::specific_heat(t) * water::viscosity(t) / water::conductivity(t),
                   published(row.prandtl, "-", "IAPWS releases by the Python package iapws 1.5.2"),
                   3e-4);
  }
}

TEST_CASE("surface tension is that of the IAPWS table") {
  const double tolerance = 0.006;  // half a unit of the last digit printed, rounded up
  check_absolute(water::surface_tension(273.16) * 1e3,
                 published(75.65, "mN/m", "IAPWS R1-76(2014) Table 1"), tolerance);
  check_absolute(water::surface_tension(293.15) * 1e3,
                 published(72.74, "mN/m", "IAPWS R1-76(2014) Table 1"), tolerance);
  check_absolute(water::surface_tension(353.15) * 1e3,
                 published(62.67, "mN/m", "IAPWS R1-76(2014) Table 1"), tolerance);
  check_absolute(water::surface_tension(373.15) * 1e3,
                 published(58.91, "mN/m", "IAPWS R1-76(2014) Table 1"), tolerance);
}

TEST_CASE("steam density agrees with the auxiliary equation within the stated error") {
  check_relative(water::vapour_density(373.1243),
                 published(0.597586, "kg/m3", "IAPWS SR1-86(1992) Table 1"), 1e-4);
}

TEST_CASE("steam jackets condense at the temperature and heat of the tables") {
  const auto jacket = [](double gauge) {
    return water::saturation_temperature(constants::atmosphere + gauge * psi);
  };
  check_absolute(jacket(5.0) - 273.15, published(108.3912853, "degC", "IAPWS-IF97 by iapws 1.5.2"),
                 0.01);
  check_absolute(jacket(15.0) - 273.15, published(120.9546665, "degC", "IAPWS-IF97 by iapws 1.5.2"),
                 0.01);
  check_absolute(jacket(30.0) - 273.15, published(134.4437875, "degC", "IAPWS-IF97 by iapws 1.5.2"),
                 0.01);
  check_absolute(water::latent_heat(jacket(5.0)) / 1e3,
                 published(2234.060835, "kJ/kg", "IAPWS-IF97 by iapws 1.5.2"), 0.1);
  check_absolute(water::latent_heat(jacket(15.0)) / 1e3,
                 published(2199.474075, "kJ/kg", "IAPWS-IF97 by iapws 1.5.2"), 0.1);
  check_absolute(water::latent_heat(jacket(30.0)) / 1e3,
                 published(2160.74119, "kJ/kg", "IAPWS-IF97 by iapws 1.5.2"), 0.1);
}

TEST_CASE("water boils colder on a mountain") {
  const auto boiling = [](double altitude) {
    return water::saturation_temperature(pressure_at_altitude(altitude)) - 273.15;
  };
  check_absolute(boiling(0.0), published(99.9743, "degC", "US Std Atm 1976 and IAPWS-IF97"), 0.01);
  check_absolute(boiling(1000.0), published(96.64927747, "degC", "US Std Atm 1976 and IAPWS-IF97"),
                 0.01);
  check_absolute(boiling(1524.0), published(94.90420633, "degC", "US Std Atm 1976 and IAPWS-IF97"),
                 0.01);
  check_absolute(boiling(1609.344),
                 published(94.61979291, "degC", "US Std Atm 1976 and IAPWS-IF97"), 0.01);
  check_absolute(boiling(2000.0), published(93.31718879, "degC", "US Std Atm 1976 and IAPWS-IF97"),
                 0.01);
  check_absolute(boiling(3048.0), published(89.81648354, "degC", "US Std Atm 1976 and IAPWS-IF97"),
                 0.01);
  check_absolute(boiling(4000.0), published(86.62774328, "degC", "US Std Atm 1976 and IAPWS-IF97"),
                 0.01);
}

TEST_CASE("enthalpy of water is the integral of its specific heat") {
  CHECK_THAT(water::specific_enthalpy(273.15), Catch::Matchers::WithinAbs(0.0, 1e-6));
  for (double t = 274.0; t < 433.0; t += 3.0)
    CHECK_THAT(sweep::slope(t, 0.05, water::specific_enthalpy<double>),
               Catch::Matchers::WithinRel(water::specific_heat(t), 1e-7));
}

TEST_CASE("latent heat obeys Clausius and Clapeyron") {
  // dp/dT = h_fg / (T (v_steam - v_liquid)); every term is a fit or equation of its own.
  for (double t = 280.0; t <= 430.0; t += 10.0) {
    const double volume = 1.0 / water::vapour_density(t) - 1.0 / water::density(t);
    CHECK_THAT(water::latent_heat(t) / (t * volume),
               Catch::Matchers::WithinRel(sweep::slope(t, 0.01, water::saturation_pressure<double>),
                                          2e-4));
  }
}

TEST_CASE("expansivity of water is the relative slope of its density, zero near 4 degC") {
  for (double t = 275.0; t < 433.0; t += 4.0)
    CHECK_THAT(water::expansivity(t),
               Catch::Matchers::WithinAbs(
                   -sweep::slope(t, 0.05, water::density<double>) / water::density(t), 1e-9));
  check_relative(water::expansivity(300.0),
                 published(276.1e-6, "1/K", "Incropera & DeWitt, Table A.6 (from memory)"), 0.02);
  check_relative(water::expansivity(370.0),
                 published(728.7e-6, "1/K", "Incropera & DeWitt, Table A.6 (from memory)"), 0.02);
  const double densest = 273.15 + 3.98;  // [K], IAPWS; CRC Handbook
  CHECK(water::expansivity(densest - 1.0) < 0.0);
  CHECK(water::expansivity(densest + 1.0) > 0.0);
}

TEST_CASE("properties of water are finite, positive and bend the right way") {
  sweep::positive(240.0, 490.0, water::specific_heat<double>);
  sweep::positive(240.0, 490.0, water::density<double>);
  sweep::positive(240.0, 490.0, water::conductivity<double>);
  sweep::positive(240.0, 490.0, water::viscosity<double>);
  sweep::positive(240.0, 490.0, water::latent_heat<double>);
  sweep::positive(240.0, 490.0, water::surface_tension<double>);
  sweep::positive(240.0, 490.0, water::vapour_density<double>);
  sweep::rising(250.0, 640.0, water::saturation_pressure<double>);
  sweep::rising(612.0, 20e6, water::saturation_temperature<double>);
  sweep::rising(250.0, 490.0, water::specific_enthalpy<double>);
  sweep::rising(250.0, 490.0, water::vapour_density<double>);
  sweep::falling(250.0, 490.0, water::latent_heat<double>);
  sweep::falling(250.0, 490.0, water::viscosity<double>);
  sweep::falling(250.0, 490.0, water::surface_tension<double>);
  sweep::falling(278.0, 490.0, water::density<double>);
  sweep::rising(273.15, 395.0, water::conductivity<double>);
}
