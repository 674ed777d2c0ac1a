#include "catch.hpp"
#include "kettlecast/base/constants.hpp"
#include "kettlecast/properties/shape.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinRel;

TEST_CASE("surface per volume of the shapes") {
  // From the surfaces and volumes of a slab, a cylinder and a sphere, 0.02 m across.
  const double d = 0.02, pi = constants::pi;
  CHECK_THAT(surface_per_volume(Shape::slab, d), WithinRel(2.0 * 1.0 / (d * 1.0), 1e-14));
  CHECK_THAT(surface_per_volume(Shape::cylinder, d), WithinRel(pi * d / (pi * d * d / 4.0), 1e-14));
  CHECK_THAT(surface_per_volume(Shape::sphere, d),
             WithinRel(pi * d * d / (pi * d * d * d / 6.0), 1e-14));
}
