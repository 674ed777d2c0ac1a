#include <cmath>

#include "kettlecast/properties/air.hpp"
#include "kettlecast/properties/water.hpp"
#include "kettlecast/transfer/evaporation.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;

namespace {

constexpr double pressure = 101325.0;  // [Pa]

double flux(double coefficient, double vapour_at_surface, double vapour_far_away) {
  return open_surface_evaporation(coefficient, 330.0, pressure, vapour_at_surface, vapour_far_away);
}

struct Room {
  double temperature, humidity, speed;
};

/// Film over open water in a vessel 0.8 m wide, properties at the mean temperature.
double film_coefficient(double water_temperature, const Room& room) {
  const double film = 0.5 * (water_temperature + room.temperature);
  const double far = room.humidity * water::saturation_pressure(room.temperature) / pressure;
  const double near =
      limited_vapour_fraction(water::saturation_pressure(water_temperature), pressure);
  WetSurface<double> surface{};
  surface.film = {air::density(film, pressure), air::specific_heat(film), air::conductivity(film),
                  air::viscosity(film), 0.0};
  surface.surface_density = air::moist_density(water_temperature, pressure, near);
  surface.ambient_density = air::moist_density(room.temperature, pressure, far);
  surface.diameter = 0.8;
  surface.air_speed = room.speed;
  return wet_surface_coefficient(surface);
}

double evaporation(double water_temperature, const Room& room) {
  const double film = 0.5 * (water_temperature + room.temperature);
  const double lewis =
      air::thermal_diffusivity(film, pressure) / air::vapour_diffusivity(film, pressure);
  const double heat_capacity = air::density(film, pressure) * air::specific_heat(film);
  const double coefficient =
      lewis_mass_coefficient(film_coefficient(water_temperature, room), heat_capacity, lewis);
  return open_surface_evaporation(coefficient, film, pressure,
                                  water::saturation_pressure(water_temperature),
                                  room.humidity * water::saturation_pressure(room.temperature));
}

}  // namespace

TEST_CASE("mass transfer coefficient by analogy") {
  const double lewis = lewis_number(2.5e-5, 2.8e-5);
  check_relative(lewis, published(0.8928571429, "-", "Chilton & Colburn analogy, by hand"), 1e-4);
  check_relative(lewis_mass_coefficient(10.0, 1.10 * 1007.0, lewis),
                 published(0.009736208359, "m/s", "Chilton & Colburn analogy, by hand"), 1e-4);
}

TEST_CASE("evaporation has the limits of the theory") {
  CHECK(flux(0.01, 3000.0, 3000.0) == 0.0);
  CHECK(flux(0.01, 2000.0, 3000.0) < 0.0);
  // Little vapour: plain diffusion, h_m M dp / (R T).
  const double plain = 0.01 * constants::water_molar_mass * 100.0 / (constants::molar_gas * 330.0);
  CHECK_THAT(flux(0.01, 150.0, 50.0), Catch::Matchers::WithinRel(plain, 2e-3));
  // Half vapour against dry gas: ln 2.
  const double half = 0.01 * pressure * constants::water_molar_mass /
                      (constants::molar_gas * 330.0) * std::log(2.0);
  CHECK_THAT(flux(0.01, 0.5 * pressure, 0.0), Catch::Matchers::WithinRel(half, 1e-4));
}

TEST_CASE("evaporation stays finite, rising and without jumps through the boiling point") {
  const auto of_temperature = [](double t) {
    return flux(0.01, water::saturation_pressure(t), 1500.0);
  };
  sweep::rising(290.0, 420.0, of_temperature);
  sweep::positive(290.0, 480.0, of_temperature);
  sweep::without_jump(300.0, 420.0, 0.02, of_temperature);
  const double ceiling = 0.01 * pressure * constants::water_molar_mass /
                         (constants::molar_gas * 330.0) * std::log(1.0 / 0.03);
  CHECK(of_temperature(480.0) < ceiling);
  sweep::rising(0.0, 1.0, [](double x) { return limited_vapour_fraction(x, 1.0); });
  CHECK(limited_vapour_fraction(1e9, 1.0) <= 0.97);
}

TEST_CASE("a calm surface evaporates less than the pool equation") {
  // Undisturbed pools measured 74 % of it (ASHRAE Trans. 104 (1998) pt 1A).
  constexpr Published pool =
      published(0.2204162379, "kg/(h m2)", "Carrier, ASHRAE: water 27 degC, air 28 degC 50 %");
  const double calm = evaporation(300.15, {301.15, 0.5, 0.1}) * 3600.0;
  CHECK(calm > 0.0);
  CHECK(calm < pool.value);
}

TEST_CASE("a warm surface evaporates like still water pools") {
  // Air 25 degC, 50 %: 35 rho_w (rho_r - rho_w)^(1/3) (W_w - W_r), densities of the dry air alone.
  const auto still_pool = [](double temperature) {
    const double near = water::saturation_pressure(temperature);
    const double far = 0.5 * water::saturation_pressure(298.15);
    const double at_surface = air::density(temperature, pressure - near);
    const double in_room = air::density(298.15, pressure - far);
    const double humidity = 0.62198 * (near / (pressure - near) - far / (pressure - far));
    return 35.0 * at_surface * std::cbrt(in_room - at_surface) * humidity;
  };
  for (double t : {303.15, 313.15, 323.15, 333.15})
    check_relative(evaporation(t, {298.15, 0.5, 0.0}) * 3600.0,
                   published(still_pool(t), "kg/(h m2)",
                             "Shah, Energy and Buildings (2014), undisturbed pools (from memory)"),
                   0.15);
}

TEST_CASE("film over warm water grows with draught and warmth") {
  sweep::rising(0.0, 2.0, [](double speed) {
    return film_coefficient(340.0, {295.15, 0.5, speed});
  });
  sweep::rising(297.0, 372.0, [](double t) { return film_coefficient(t, {295.15, 0.5, 0.1}); });
  sweep::positive(274.0, 420.0, [](double t) { return film_coefficient(t, {295.15, 0.5, 0.0}); });
  // Around the point where the gas at the surface gets lighter than the room, and over the rest.
  sweep::without_jump(290.0, 300.0, 0.1, [](double t) {
    return film_coefficient(t, {295.15, 0.5, 0.0});
  });
  sweep::without_jump(300.0, 420.0, 0.02, [](double t) {
    return film_coefficient(t, {295.15, 0.5, 0.0});
  });
  sweep::rising(290.0, 372.0, [](double t) { return evaporation(t, {295.15, 0.5, 0.1}); });
}
