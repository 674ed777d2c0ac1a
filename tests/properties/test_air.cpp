#include "kettlecast/properties/air.hpp"
#include "kettlecast/properties/atmosphere.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;

TEST_CASE("pressure of the standard atmosphere") {
  const double tolerance = 5e-5;  // the tables print four to five digits
  check_relative(pressure_at_altitude(-2000.0),
                 published(127780.0, "Pa", "US Standard Atmosphere 1976"), tolerance);
  check_relative(pressure_at_altitude(0.0),
                 published(101325.0, "Pa", "US Standard Atmosphere 1976"), 1e-12);
  check_relative(pressure_at_altitude(4000.0),
                 published(61660.0, "Pa", "US Standard Atmosphere 1976"), tolerance);
  check_relative(pressure_at_altitude(6000.0),
                 published(47218.0, "Pa", "US Standard Atmosphere 1976"), tolerance);
  check_relative(pressure_at_altitude(10000.0),
                 published(26500.0, "Pa", "US Standard Atmosphere 1976"), tolerance);
  check_relative(pressure_at_altitude(1524.0),
                 published(84311.0567, "Pa", "US Standard Atmosphere 1976, computed"), 2e-5);
  sweep::falling(-2000.0, 11000.0, pressure_at_altitude<double>);
}

TEST_CASE("density of air along the standard atmosphere") {
  const double tolerance = 5e-5;
  check_relative(air::density(301.154, 127783.0),
                 published(1.4782, "kg/m3", "US Standard Atmosphere 1976"), tolerance);
  check_relative(air::density(288.15, 101325.0),
                 published(1.2250, "kg/m3", "US Standard Atmosphere 1976"), tolerance);
  check_relative(air::density(262.166, 61660.4),
                 published(0.81935, "kg/m3", "US Standard Atmosphere 1976"), tolerance);
}

TEST_CASE("transport properties of air at sea level are those of the standard") {
  check_relative(
      air::viscosity(288.15),
      published(1.7894e-5, "Pa s", "US Standard Atmosphere 1976, sea level (from memory)"), 5e-5);
  check_relative(
      air::conductivity(288.15),
      published(0.025326, "W/(m K)", "US Standard Atmosphere 1976, sea level (from memory)"), 5e-5);
}

TEST_CASE("air agrees with the textbook table within the stated 1.4 %") {
  check_relative(air::specific_heat(300.0),
                 published(1007.0, "J/(kg K)", "Incropera Table A.4 (from memory)"), 1e-3);
  check_relative(air::specific_heat(400.0),
                 published(1014.0, "J/(kg K)", "Incropera Table A.4 (from memory)"), 1e-3);
  check_relative(air::viscosity(350.0),
                 published(208.2e-7, "Pa s", "Incropera Table A.4 (from memory)"), 0.014);
  check_relative(air::conductivity(350.0),
                 published(30.0e-3, "W/(m K)", "Incropera Table A.4 (from memory)"), 0.014);
  // The densities of that table are those of 100 kPa.
  check_relative(air::thermal_diffusivity(300.0, 1e5),
                 published(22.5e-6, "m2/s", "Incropera Table A.4 (from memory)"), 0.014);
  check_relative(air::vapour_diffusivity(298.0, 101325.0),
                 published(0.26e-4, "m2/s", "Incropera Table A.8 (from memory)"), 0.05);
}

TEST_CASE("moist air is dry air without vapour and steam without air") {
  CHECK_THAT(air::moist_density(330.0, 9e4, 0.0),
             Catch::Matchers::WithinRel(air::density(330.0, 9e4), 1e-14));
  check_relative(air::moist_density(373.1243, 101325.0, 1.0),
                 published(0.597586, "kg/m3", "IAPWS SR1-86(1992) Table 1"), 0.02);  // ideal gas
  sweep::falling(0.0, 1.0, [](double x) { return air::moist_density(350.0, 1e5, x); });
}

TEST_CASE("properties of air rise with temperature") {
  sweep::rising(250.0, 500.0, air::conductivity<double>);
  sweep::rising(250.0, 500.0, air::viscosity<double>);
  sweep::rising(260.0, 500.0, air::specific_heat<double>);
  sweep::positive(250.0, 500.0, air::specific_heat<double>);
  sweep::rising(250.0, 500.0, [](double t) { return air::thermal_diffusivity(t, 1e5); });
  sweep::rising(250.0, 500.0, [](double t) { return air::vapour_diffusivity(t, 1e5); });
  sweep::falling(250.0, 500.0, [](double t) { return air::density(t, 1e5); });
}
