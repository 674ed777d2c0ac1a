#include "kettlecast/properties/mixture.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;

TEST_CASE("few pieces thicken a liquid as Einstein found") {
  const double slope = (suspension_viscosity(1.0, 1e-6, 1.7) - 1.0) / 1e-6;
  check_relative(slope, published(2.5, "-", "Einstein, Ann. Phys. 19 (1906) 289, corrected 1911"),
                 1e-5);
}

TEST_CASE("a thick suspension stays finite") {
  sweep::positive(0.0, 1.0, [](double phi) { return suspension_viscosity(1e-3, phi, 1.7); });
  sweep::rising(0.0, 0.67, [](double phi) { return suspension_viscosity(1e-3, phi, 1.7); });
  CHECK(suspension_viscosity(1.0, 0.9, 1.7) == suspension_viscosity(1.0, 0.67, 1.7));
}

TEST_CASE("mixed viscosity is the mean of the logarithms") {
  CHECK(mixed_viscosity(1e-3, 5e-2, 0.0) == 1e-3);
  CHECK_THAT(mixed_viscosity(1e-3, 5e-2, 1.0), Catch::Matchers::WithinRel(5e-2, 1e-14));
  // Half and half: the geometric mean, sqrt(1 * 25) = 5.
  CHECK_THAT(mixed_viscosity(1.0, 25.0, 0.5), Catch::Matchers::WithinRel(5.0, 1e-14));
  sweep::rising(0.0, 1.0, [](double f) { return mixed_viscosity(1e-3, 5e-2, f); });
}
