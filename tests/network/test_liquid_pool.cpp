#include "kettlecast/network/liquid_pool.hpp"
#include "published.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinAbs;

TEST_CASE("the temperature of a pool is the inverse of its enthalpy") {
  // The header states 1e-9 K between 0 and 200 degC; water alone only up to boiling under pressure.
  for (LiquidPool<double> pool : {LiquidPool<double>{60.0, 0.0, 0.0, 0.0, 50.0},
                                  LiquidPool<double>{0.0, 12.0, 0.0, 0.0, 50.0},
                                  LiquidPool<double>{5.0, 5.0, 2.0, 0.0, 4000.0},
                                  LiquidPool<double>{0.0, 0.0, 0.0, 0.0, 50.0}}) {
    for (double temperature = 273.15; temperature <= 473.15; temperature += 5.0) {
      pool.enthalpy = pool_enthalpy(pool, temperature);
      CHECK_THAT(pool_temperature(pool), WithinAbs(temperature, 1e-9));
    }
  }
}

TEST_CASE("a pool of water holds the heat of the steam tables") {
  const LiquidPool<double> pool{1.0, 0.0, 0.0, 0.0, 0.0};
  const auto rise = [&](double from, double to) {
    return 1e-3 * (pool_enthalpy(pool, to + 273.15) - pool_enthalpy(pool, from + 273.15));
  };
  // Saturated liquid less the work of pressing it along the saturation line, v (1 - beta T) dp:
  // 1.03e-3 m3/kg x 0.8 x 12.5 kPa and 1.04e-3 m3/kg x 0.75 x 99.0 kPa. Tolerance: the stated
  // 5e-5 of the fitted specific heat.
  check_absolute(rise(40.0, 60.0),
                 published(251.154 - 167.541 - 0.010, "kJ/kg", "IAPWS-IF97, saturated liquid"),
                 5e-5 * 84.0);
  check_absolute(rise(20.0, 100.0),
                 published(419.099 - 83.920 - 0.077, "kJ/kg", "IAPWS-IF97, saturated liquid"),
                 5e-5 * 335.0);
}

TEST_CASE("heat capacity is the slope of the enthalpy") {
  const LiquidPool<double> pool{5.0, 3.0, 2.0, 0.0, 700.0};
  for (double temperature : {280.0, 320.0, 370.0, 420.0}) {
    const double slope =
        (pool_enthalpy(pool, temperature + 0.01) - pool_enthalpy(pool, temperature - 0.01)) / 0.02;
    CHECK_THAT(pool_heat_capacity(pool, temperature), Catch::Matchers::WithinRel(slope, 1e-7));
  }
}

TEST_CASE("mixing two pools keeps their heat") {
  LiquidPool<double> hot{10.0, 1.0, 0.0, 0.0, 0.0}, cold{4.0, 0.0, 1.0, 0.0, 0.0};
  hot.enthalpy = pool_enthalpy(hot, 360.0);
  cold.enthalpy = pool_enthalpy(cold, 280.0);
  LiquidPool<double> mixed{14.0, 1.0, 1.0, hot.enthalpy + cold.enthalpy, 0.0};
  const double temperature = pool_temperature(mixed);
  CHECK_THAT(pool_enthalpy(hot, temperature) - hot.enthalpy,
             WithinAbs(cold.enthalpy - pool_enthalpy(cold, temperature), 1e-3));
  CHECK(temperature > 280.0);
  CHECK(temperature < 360.0);
}

TEST_CASE("a pool of one liquid has its film properties") {
  const LiquidPool<double> pure{3.0, 0.0, 0.0, 0.0, 0.0}, fat{0.0, 3.0, 0.0, 0.0, 0.0};
  CHECK_THAT(watery_share(pure), WithinAbs(1.0, 1e-12));
  CHECK_THAT(watery_share(fat), WithinAbs(0.0, 1e-8));
  const auto wet = film_properties(pure, 333.15);
  // IAPWS-IF97, R12-08 and R15-11 for saturated water at 60 degC.
  check_relative(wet.density, published(983.2, "kg/m3", "IAPWS-IF97, 60 degC"), 1e-4);
  check_relative(wet.viscosity, published(466.4e-6, "Pa s", "IAPWS R12-08, 60 degC"), 1e-3);
  check_relative(wet.conductivity, published(0.6509, "W/(m K)", "IAPWS R15-11, 60 degC"), 5e-3);
  CHECK(film_properties(fat, 333.15).viscosity > 10.0 * wet.viscosity);
}
