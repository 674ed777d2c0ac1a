#include "kettlecast/properties/air.hpp"
#include "kettlecast/properties/atmosphere.hpp"
#include "kettlecast/properties/oil.hpp"
#include "kettlecast/properties/water.hpp"
#include "kettlecast/properties/water_ambient.hpp"
#include "kettlecast/properties/water_saturation.hpp"
#include "kettlecast/properties/water_states.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;
namespace states = kettlecast::water_states;

// What holds for fluids by definition: the other side of each comparison is a derivative, an
// integral or an inverse of the same quantity, so no expected value comes from the library.

namespace {

/// Slope over temperature of one function equals another, to a relative tolerance.
template <class Integral, class Function>
void slope_is(double low, double high, double tolerance, Integral&& integral, Function&& function) {
  for (double t = low; t <= high; t += (high - low) / 50.0)
    CHECK_THAT(sweep::slope(t, 0.02, integral), Catch::Matchers::WithinRel(function(t), tolerance));
}

}  // namespace

TEST_CASE("enthalpies of fluids are integrals of their specific heats") {
  slope_is(274.0, 432.0, 1e-6, water::specific_enthalpy<double>, water::specific_heat<double>);
  slope_is(280.0, 470.0, 1e-9, oil::specific_enthalpy<double>, oil::specific_heat<double>);
  for (const double pressure : {1e6, 20e6})
    slope_is(
        280.0, 440.0, 1e-6, [&](double t) { return states::compressed_enthalpy(t, pressure); },
        [&](double t) { return states::compressed_specific_heat(t, pressure); });
}

TEST_CASE("expansivities of fluids are relative slopes of their densities") {
  for (double t = 285.0; t < 430.0; t += 5.0) {
    CHECK_THAT(-sweep::slope(t, 0.05, water::density<double>) / water::density(t),
               Catch::Matchers::WithinAbs(water::expansivity(t), 1e-9));
    CHECK_THAT(-sweep::slope(t, 0.05, oil::density<double>) / oil::density(t),
               Catch::Matchers::WithinRel(oil::expansivity(t), 1e-9));
  }
}

TEST_CASE("saturation pressure rises and saturation temperature takes it back") {
  sweep::rising(273.16, 640.0, water::saturation_pressure<double>);
  for (double t = 273.16; t < 640.0; t += 1.0)
    CHECK_THAT(water::saturation_temperature(water::saturation_pressure(t)),
               Catch::Matchers::WithinAbs(t, 1e-7));
  sweep::rising(273.16, 647.0, states::saturation_pressure<double>);
  slope_is(275.0, 640.0, 1e-6, states::saturation_pressure<double>,
           states::saturation_pressure_slope<double>);
}

TEST_CASE("latent heat falls to nothing at the critical point") {
  sweep::falling(273.15, 433.15, water::latent_heat<double>);
  const auto latent = [](double t) {
    return states::saturated_vapour_enthalpy(t) - states::saturated_liquid_enthalpy(t);
  };
  sweep::falling(273.16, 647.0, latent);
  CHECK_THAT(latent(states::critical_temperature), Catch::Matchers::WithinAbs(0.0, 1e-3));
}

TEST_CASE("fits of water obey Clausius and Clapeyron within their stated errors") {
  // dp/dT = h / (T dv); 1.1e-5 of the latent heat, 1.0e-5 of steam and the slope of region 4.
  for (double t = 274.0; t <= 432.0; t += 2.0) {
    const double volume = 1.0 / water::vapour_density(t) - 1.0 / water::density(t);
    CHECK_THAT(water::latent_heat(t) / (t * volume),
               Catch::Matchers::WithinRel(sweep::slope(t, 0.01, water::saturation_pressure<double>),
                                          2e-4));
  }
}

TEST_CASE("densities are positive") {
  sweep::positive(240.0, 490.0, water::density<double>);
  sweep::positive(240.0, 490.0, water::vapour_density<double>);
  sweep::positive(278.0, 473.0, oil::density<double>);
  sweep::positive(250.0, 500.0, [](double t) { return air::density(t, 101325.0); });
  sweep::positive(253.15, 383.15, states::ambient_density<double>);
  sweep::positive(273.16, 647.0, states::saturated_vapour_density<double>);
  sweep::positive(-2000.0, 11000.0, density_at_altitude<double>);
}

TEST_CASE("compressing water makes it denser and hardly warmer in enthalpy") {
  for (const double t : {280.0, 350.0, 430.0, 500.0}) {
    sweep::rising(5e6, 100e6, [&](double p) { return states::compressed_density(t, p); });
    // Maxwell: dh/dp = v - T dv/dT.
    const double p = 20e6;
    const double rise =
        sweep::slope(p, 1e3, [&](double x) { return states::compressed_enthalpy(t, x); });
    const double expansion =
        sweep::slope(t, 0.01, [&](double x) { return states::compressed_volume(x, p); });
    CHECK_THAT(rise,
               Catch::Matchers::WithinRel(states::compressed_volume(t, p) - t * expansion, 1e-5));
  }
}

TEST_CASE("standard atmosphere carries its own weight") {
  // dp/dz = -rho g (r / (r + z))^2, gravity falling with height.
  for (double z = -1900.0; z < 10900.0; z += 400.0) {
    const double fall = 6356766.0 / (6356766.0 + z);
    CHECK_THAT(sweep::slope(z, 1.0, pressure_at_altitude<double>),
               Catch::Matchers::WithinRel(
                   -density_at_altitude(z) * constants::gravity * fall * fall, 1e-5));
  }
}
