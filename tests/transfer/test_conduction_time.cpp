#include <cmath>

#include "kettlecast/transfer/conduction_time.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {
constexpr Shape shapes[] = {Shape::slab, Shape::cylinder, Shape::sphere};
}

TEST_CASE("steaks cooled until their surface is at 2 degC") {
  const double biot = biot_number(9.0, 0.01, 0.45);
  const double change = (2.0 + 11.0) / (25.0 + 11.0);
  const double fourier = one_term_fourier(Shape::slab, biot, change, 1.0);
  constexpr char source[] = "Cengel, Heat Transfer, problem 11-44, published solution";
  check_relative(fourier, published(5.085, "-", source), 1e-3);
  check_relative(fourier_time(fourier, 0.91e-7, 0.01) / 60.0, published(93.1, "min", source), 2e-3);
}

TEST_CASE("a log ignites later than the first term says") {
  const double biot = biot_number(13.6, 0.05, 0.17), change = (550.0 - 420.0) / (550.0 - 15.0);
  const auto time = [](double fourier) { return fourier_time(fourier, 1.28e-7, 0.05); };
  constexpr char source[] = "pychemengg, documentation, transient example 3";
  check_relative(time(one_term_fourier(Shape::cylinder, biot, change, 1.0)),
                 published(2771.0, "s", source), 1e-3);
  check_relative(time(fourier_to_reach(Shape::cylinder, biot, change, 1.0)),
                 published(2966.0, "s", source), 1e-3);
}

TEST_CASE("a carcass as a long cylinder") {
  const double biot = biot_number(22.0, 0.12, 0.47), change = 14.0 / 47.0;
  check_relative(biot, published(5.617, "-", "h R / k of the inputs by hand"), 1e-4);
  const double fourier = fourier_to_reach(Shape::cylinder, biot, change, 0.0);
  check_relative(fourier_time(fourier, 0.13e-6, 0.12) / 3600.0,
                 published(12.2, "h", "Cengel, Heat Transfer, beef carcass (from memory)"), 5e-3);
  check_absolute(-10.0 + 47.0 * remaining_change(Shape::cylinder, biot, fourier, 1.0),
                 published(-7.09, "degC", "series by a second method"), 0.1);
}

TEST_CASE("an apple in cold water") {
  const double biot = biot_number(50.0, 0.03, 0.355), diffusivity = 0.355 / (3600.0 * 820.0);
  const double fourier = fourier_to_reach(Shape::sphere, biot, 1.0 / 13.0, 0.0);
  check_relative(fourier_time(fourier, diffusivity, 0.03),
                 published(3777.7, "s", "Singh & Heldman, example 4.26, series by a second method"),
                 3e-3);
}

TEST_CASE("plates that are warm alike throughout") {
  const double change =
      lumped_change(200.0, surface_per_volume(Shape::slab, 0.01), 2800.0 * 880.0, 120.0);
  check_absolute(800.0 - 780.0 * change,
                 published(689.0, "degC", "pychemengg, documentation, transient example 1"), 0.5);
}

TEST_CASE("at small Biot number every body is warm alike throughout") {
  for (Shape shape : shapes) {
    // Radius 0.01 m, k 50, so Bi 1e-4; rho cp 1e6.
    const double fourier = fourier_number(5e-5, 2e4, 0.01);
    const double lumped = lumped_change(0.5, surface_per_volume(shape, 0.02), 1e6, 2e4);
    CHECK_THAT(mean_remaining_change(shape, 1e-4, fourier), WithinRel(lumped, 1e-4));
  }
}

TEST_CASE("times lead back to the change") {
  for (Shape shape : shapes) {
    for (double biot : {1e-3, 0.4, 6.0, 200.0}) {
      for (double change : {1e-6, 0.02, 0.5, 0.93}) {
        INFO("shape " << dimensions(shape) << " Bi " << biot << " change " << change);
        for (double position : {0.0, 0.6, 1.0}) {
          const double fourier = fourier_to_reach(shape, biot, change, position);
          CHECK_THAT(remaining_change(shape, biot, fourier, position), WithinRel(change, 1e-10));
        }
        const double fourier = mean_fourier_to_reach(shape, biot, change);
        CHECK_THAT(mean_remaining_change(shape, biot, fourier), WithinRel(change, 1e-10));
      }
    }
  }
}

TEST_CASE("a change that a surface makes at once takes no time") {
  CHECK(fourier_to_reach(Shape::slab, 1e8, 0.5, 1.0) < 1e-14);
}

TEST_CASE("the first term holds after Fo 0.2 and not before") {
  // Incropera & DeWitt, section 5.5 (from memory): error below 2 % for Fo > 0.2.
  for (Shape shape : shapes) {
    for (double biot : {0.1, 1.0, 10.0, 100.0}) {
      for (double fourier : {0.2, 0.4, 1.0}) {
        const double all = remaining_change(shape, biot, fourier, 0.0);
        CHECK_THAT(one_term_change(shape, biot, fourier, 0.0), WithinRel(all, 0.02));
      }
    }
    CHECK(one_term_change(shape, 10.0, 0.01, 0.0) > 1.1);
  }
}
