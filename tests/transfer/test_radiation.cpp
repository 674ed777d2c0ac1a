#include "kettlecast/transfer/radiation.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;

TEST_CASE("radiation of a black and of a grey surface") {
  check_relative(
      radiative_heat_flux(1.0, 400.0, 0.0),
      published(1451.613952, "W/m2", "Bergman et al., Introduction to Heat Transfer, 6th ed."),
      1e-5);
  check_relative(
      radiative_heat_flux(0.85, 400.0, 305.0),
      published(816.78217, "W/m2", "Bergman et al., Introduction to Heat Transfer, 6th ed."), 1e-5);
}

TEST_CASE("radiation vanishes at equal temperatures and changes sign") {
  CHECK(radiative_heat_flux(0.9, 300.0, 300.0) == 0.0);
  CHECK(radiative_heat_flux(0.9, 290.0, 300.0) == -radiative_heat_flux(0.9, 300.0, 290.0));
  sweep::rising(250.0, 600.0, [](double t) { return radiative_heat_flux(0.9, t, 295.0); });
}

TEST_CASE("coefficient of radiation from a hot steel plate") {
  const double hot = (1100.0 + 459.67) / 1.8, room = (70.0 + 459.67) / 1.8;
  const double coefficient = radiation_coefficient(0.7, hot, room);
  // The source rounds sigma up by 0.95 % (0.173e-8 Btu/(h ft2 degR4)) and 459.67 to 460.
  check_relative(coefficient / 5.678263341,
                 published(6.870372355, "Btu/(h ft2 degF)", "Kern, example 18.4"), 1.2e-2);
  CHECK_THAT(coefficient * (hot - room),
             Catch::Matchers::WithinRel(radiative_heat_flux(0.7, hot, room), 1e-12));
  CHECK_THAT(radiation_coefficient(1.0, 300.0, 300.0),
             Catch::Matchers::WithinRel(4.0 * constants::stefan_boltzmann * 27e6, 1e-12));
  sweep::rising(250.0, 900.0, [](double t) { return radiation_coefficient(0.9, t, 295.0); });
}

TEST_CASE("exchange of two grey surfaces has the limits of the theory") {
  CHECK_THAT(exchange_emissivity(0.8, 0.3, 0.0), Catch::Matchers::WithinRel(0.8, 1e-14));
  CHECK_THAT(exchange_emissivity(0.8, 1.0, 0.7), Catch::Matchers::WithinRel(0.8, 1e-14));
  CHECK_THAT(exchange_emissivity(0.8, 0.3, 1.0),
             Catch::Matchers::WithinRel(exchange_emissivity(0.3, 0.8, 1.0), 1e-14));
  // Dewar of two silvered walls: e / (2 - e).
  check_relative(exchange_emissivity(0.02, 0.02, 1.0),
                 published(0.02 / 1.98, "-", "Incropera & DeWitt, equation 13.24"), 1e-12);
}

TEST_CASE("one sheet of the same emissivity halves the exchange") {
  check_relative(shielded_emissivity(0.6, 0.6, 0.6) / exchange_emissivity(0.6, 0.6, 1.0),
                 published(0.5, "-", "Incropera & DeWitt, radiation shields"), 1e-12);
  // Plates of 0.8 with a sheet of 0.05: balance of the sheet by hand.
  const double side = exchange_emissivity(0.8, 0.05, 1.0);
  CHECK_THAT(shielded_emissivity(0.8, 0.8, 0.05), Catch::Matchers::WithinRel(0.5 * side, 1e-12));
  sweep::rising(0.01, 1.0, [](double e) { return shielded_emissivity(0.8, 0.9, e); });
}
