#include "kettlecast/properties/water.hpp"
#include "kettlecast/transfer/pool_evaporation.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;

namespace {
constexpr double pound = 0.45359237, foot = 0.3048, inch_of_mercury = 3386.389, btu_per_lb = 2326.0;

struct Open {
  double water, air, humidity, speed;  // [degC], [degC], [-], [m/s]
};

double of(const Open& pool) {
  const double near = water::saturation_pressure(pool.water + 273.15);
  const double far = pool.humidity * water::saturation_pressure(pool.air + 273.15);
  return pool_evaporation(near - far, pool.speed, water::latent_heat(pool.water + 273.15), 1.0);
}
}  // namespace

TEST_CASE("constants of the pool equation in SI are those in inches of mercury and pounds") {
  const double flux = pound / (3600.0 * foot * foot);
  const double still = 95.0 * flux * btu_per_lb / inch_of_mercury;
  const double velocity = 0.425 * flux * btu_per_lb / inch_of_mercury / (foot / 60.0);
  check_relative(still, published(0.089, "W/(m2 Pa)", "ASHRAE HVAC Applications (from memory)"),
                 6e-3);
  check_relative(velocity,
                 published(0.0782, "W s/(m3 Pa)", "ASHRAE HVAC Applications (from memory)"), 4e-3);
  CHECK(PoolConstants{}.still == 0.089);
  CHECK(PoolConstants{}.velocity == 0.0782);
}

TEST_CASE("pool equation at two temperatures") {
  const Open swimming{27.0, 28.0, 0.5, 0.0}, kettle{90.0, 25.0, 0.5, 0.2};
  check_relative(of(swimming) * 3600.0,
                 published(0.2204162379, "kg/(h m2)", "ASHRAE with IAPWS-IF97 properties"), 1e-2);
  check_relative(of(kettle) * 3600.0,
                 published(11.32103602, "kg/(h m2)", "ASHRAE with IAPWS-IF97 properties"), 1e-2);
  check_relative(latent_heat_flux(of(kettle), water::latent_heat(363.15)),
                 published(7178.041073, "W/m2", "ASHRAE with IAPWS-IF97 properties"), 1e-2);
}

TEST_CASE("undisturbed pools evaporate less and draught helps") {
  check_relative(pool_evaporation(1000.0, 0.0, 2.4e6, undisturbed_pool) /
                     pool_evaporation(1000.0, 0.0, 2.4e6, 1.0),
                 published(0.74, "-", "ASHRAE Trans. 104 (1998) part 1A"), 1e-12);
  CHECK_THAT(
      draught_factor(0.3),
      Catch::Matchers::WithinRel(of({60.0, 20.0, 0.4, 0.3}) / of({60.0, 20.0, 0.4, 0.0}), 1e-12));
  CHECK(draught_factor(0.0) == 1.0);
  sweep::rising(0.0, 2.0, [](double v) { return draught_factor(v); });
  sweep::rising(20.0, 95.0, [](double t) { return of({t, 20.0, 0.5, 0.1}); });
  CHECK(of({5.0, 30.0, 0.9, 0.0}) < 0.0);
}
