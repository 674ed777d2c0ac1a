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
