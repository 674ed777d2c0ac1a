#include "kettlecast/transfer/boiling.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;

namespace {
/// Water at 1 atm in the worked example of Kreith.
const BoilingLiquid<double> water{962.0, 0.60, 4211.0, 2.25e6, 0.0588, 2.77e-4, 1.75};
const BoilingSurface polished_steel{0.0132, 1.0};
}  // namespace

TEST_CASE("boiling water on polished stainless steel") {
  check_relative(rohsenow_heat_flux(water, 6.0, polished_steel),
                 published(29669.0, "W/m2", "Kreith, Manglik & Bohn, 7th ed., example 10.1"), 0.04);
  check_relative(
      critical_heat_flux(water),
      published(1107093.72, "W/m2", "Zuber with pi/24, computed for Kreith, example 10.1"), 5e-3);
}

TEST_CASE("boiling water on oxidised aluminium") {
  const double prandtl = 4217.0 * 2.79e-4 / 0.680;
  const BoilingLiquid<double> liquid{957.854, 0.595593, 4217.0, 2.257e6, 0.0589, 2.79e-4, prandtl};
  check_relative(rohsenow_heat_flux(liquid, 4.9, BoilingSurface{0.011, 1.26}),
                 published(18245.91, "W/m2", "test value of the package ht, Rohsenow"), 1e-4);
}

TEST_CASE("boiling starts smoothly at saturation") {
  CHECK(rohsenow_heat_flux(water, 0.0, polished_steel) == 0.0);
  CHECK(rohsenow_heat_flux(water, -20.0, polished_steel) == 0.0);
  const auto flux = [](double excess) { return nucleate_heat_flux(water, excess, polished_steel); };
  CHECK_THAT(sweep::slope(0.0, 1e-3, flux), Catch::Matchers::WithinAbs(0.0, 1e-3));
  sweep::rising(0.01, 60.0, flux);
}

TEST_CASE("nucleate flux follows Rohsenow when small and levels off at the critical flux") {
  const double critical = critical_heat_flux(water);
  CHECK_THAT(nucleate_heat_flux(water, 3.0, polished_steel),
             Catch::Matchers::WithinRel(rohsenow_heat_flux(water, 3.0, polished_steel), 1e-6));
  CHECK_THAT(nucleate_heat_flux(water, 200.0, polished_steel),
             Catch::Matchers::WithinRel(critical, 1e-6));
  for (double excess = 0.0; excess < 300.0; excess += 1.0)
    CHECK(nucleate_heat_flux(water, excess, polished_steel) <= critical * (1.0 + 1e-12));
}

TEST_CASE("boiling water in a pan with the other Prandtl exponent") {
  // Specific heat, latent heat and surface tension are not listed there: saturated at 100 degC.
  const BoilingLiquid<double> liquid{958.0, 0.6, 4217.0, 2.257e6, 0.0589, 958.0 * 2.91e-7, 1.76};
  const double flux = rohsenow_heat_flux(liquid, 20.0, BoilingSurface{0.0132, 1.7});
  check_relative(
      flux, published(318995.2715, "W/m2", "Janna, Engineering Heat Transfer, example 10.3"), 5e-3);
  check_relative(rohsenow_heat_flux(liquid, 20.0, BoilingSurface{0.0132, 1.0}) / flux,
                 published(3.28, "-", "Janna, example 10.3, exponent 1.0 over 1.7"), 2e-3);
}

TEST_CASE("critical flux with the constants of other sources") {
  // The example leaves the density of the vapour out of the difference: 0.06 % of it.
  const BoilingLiquid<double> pan{958.0, 0.596, 4217.0, 2.257e6, 0.0589, 958.0 * 2.91e-7, 1.76};
  check_relative(critical_heat_flux(pan, 0.18),
                 published(1.521e6, "W/m2", "Janna, Engineering Heat Transfer, example 10.3"),
                 2e-3);
  const BoilingLiquid<double> organic{567.0, 18.09, 2400.0, 272e3, 8.2e-3, 1e-4, 4.0};
  check_relative(critical_heat_flux(organic, 0.149),
                 published(444307.223, "W/m2", "Serth, Process Heat Transfer, via package ht"),
                 1e-6);
  CHECK_THAT(critical_heat_flux(water, constants::pi / 24.0),
             Catch::Matchers::WithinRel(critical_heat_flux(water), 5e-4));
}

TEST_CASE("excess temperature is the inverse of the flux") {
  check_relative(rohsenow_excess(water, 29669.0, polished_steel),
                 published(6.0, "K", "Kreith, Manglik & Bohn, 7th ed., example 10.1"), 0.04 / 3.0);
  for (double excess : {0.5, 3.0, 17.0})
    CHECK_THAT(
        rohsenow_excess(water, rohsenow_heat_flux(water, excess, polished_steel), polished_steel),
        Catch::Matchers::WithinRel(excess, 1e-12));
  CHECK(rohsenow_excess(water, 0.0, polished_steel) == 0.0);
  sweep::rising(0.0, 1e6, [](double q) { return rohsenow_excess(water, q, polished_steel); });
}

TEST_CASE("boil-off is the heat over what each kilogram needs") {
  check_relative(boil_off_rate(363863.0, 970.3, 0.0) / 1500.0,
                 published(0.25, "lb/lb", "kettle of milk that loses a quarter, in Btu and lb"),
                 1e-4);
  CHECK(boil_off_rate(1e4, 2.257e6, 3.3e5) < boil_off_rate(1e4, 2.257e6, 0.0));
  CHECK(boil_off_rate(0.0, 2.257e6, 0.0) == 0.0);
}
