#include "kettlecast/properties/mixture.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;

TEST_CASE("few spheres thicken a liquid as Einstein found") {
  const auto einstein = published(2.5, "-", "Einstein, Ann. Phys. 19 (1906) 289, corrected 1911");
  check_relative((suspension_viscosity(1e-3, 0.01, einstein.value) / 1e-3 - 1.0) / 0.01, einstein,
                 1e-12);
  CHECK(suspension_viscosity(1e-3, 0.0, einstein.value) == 1e-3);
}

TEST_CASE("more pieces never thin a liquid") {
  sweep::rising(0.0, 0.6, [](double phi) { return suspension_viscosity(1e-3, phi, 6.0); });
}

TEST_CASE("mixed viscosity is the mean of the logarithms") {
  CHECK(mixed_viscosity(1e-3, 5e-2, 0.0) == 1e-3);
  CHECK_THAT(mixed_viscosity(1e-3, 5e-2, 1.0), Catch::Matchers::WithinRel(5e-2, 1e-14));
  // Half and half: the geometric mean, sqrt(1 * 25) = 5.
  CHECK_THAT(mixed_viscosity(1.0, 25.0, 0.5), Catch::Matchers::WithinRel(5.0, 1e-14));
  sweep::rising(0.0, 1.0, [](double f) { return mixed_viscosity(1e-3, 5e-2, f); });
}
