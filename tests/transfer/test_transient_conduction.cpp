#include <cmath>

#include "kettlecast/transfer/transient_conduction.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

constexpr Shape shapes[] = {Shape::slab, Shape::cylinder, Shape::sphere};

void check_first(Shape shape, double biot, double root, double amplitude) {
  INFO("shape " << dimensions(shape) << " Bi " << biot);
  constexpr char table[] = "one-term table, Incropera & DeWitt, table 5.1 (from memory)";
  const double found = conduction_eigenvalue(shape, biot, 1);
  check_absolute(found, published(root, "-", table), 1e-4);
  check_absolute(mode_amplitude(shape, found), published(amplitude, "-", table), 1.1e-4);
}

}  // namespace

TEST_CASE("first eigenvalue and amplitude of a slab") {
  check_first(Shape::slab, 0.01, 0.0998, 1.0017);
  check_first(Shape::slab, 0.1, 0.3111, 1.0161);
  check_first(Shape::slab, 0.5, 0.6533, 1.0701);
  check_first(Shape::slab, 1.0, 0.8603, 1.1191);
  check_first(Shape::slab, 5.0, 1.3138, 1.2403);
  check_first(Shape::slab, 10.0, 1.4289, 1.2620);
  check_first(Shape::slab, 100.0, 1.5552, 1.2731);
}

TEST_CASE("first eigenvalue and amplitude of a cylinder") {
  check_first(Shape::cylinder, 0.01, 0.1412, 1.0025);
  check_first(Shape::cylinder, 0.1, 0.4417, 1.0246);
  check_first(Shape::cylinder, 1.0, 1.2558, 1.2071);
  check_first(Shape::cylinder, 2.0, 1.5995, 1.3384);
  check_first(Shape::cylinder, 5.0, 1.9898, 1.5029);
  check_first(Shape::cylinder, 100.0, 2.3809, 1.6015);
}

TEST_CASE("first eigenvalue and amplitude of a sphere") {
  check_first(Shape::sphere, 0.01, 0.1730, 1.0030);
  check_first(Shape::sphere, 0.1, 0.5423, 1.0298);
  check_first(Shape::sphere, 1.0, 1.5708, 1.2732);
  check_first(Shape::sphere, 2.0, 2.0288, 1.4793);
  check_first(Shape::sphere, 5.0, 2.5704, 1.7870);
  check_first(Shape::sphere, 100.0, 3.1102, 1.9990);
}

TEST_CASE("eigenvalues of any body fulfil their equation and follow each other") {
  for (Shape shape : shapes) {
    for (double biot = 1e-4; biot < 1.1e4; biot *= 10.0) {
      double last = 0.0;
      for (int n = 1; n <= 60; ++n) {
        const double u = conduction_eigenvalue(shape, biot, n);
        INFO("shape " << dimensions(shape) << " Bi " << biot << " n " << n << " u " << u);
        // Carslaw & Jaeger: at the surface, conduction equals the film.
        CHECK_THAT(u * mode_fall(shape, u) - biot * mode_profile(shape, u),
                   WithinAbs(0.0, 1e-12 * (u + biot)));
        // One root per half wave: the gaps approach pi, the first root lies in the first gap.
        CHECK(u > last + (n == 1 ? 0.0 : 0.5 * constants::pi));
        CHECK(u < n * constants::pi);
        last = u;
      }
    }
  }
}

TEST_CASE("eigenvalues rise with the Biot number") {
  for (Shape shape : shapes) {
    for (int n : {1, 2, 7}) {
      sweep::rising(-4.0, 4.0, [&](double exponent) {
        return conduction_eigenvalue(shape, std::pow(10.0, exponent), n);
      });
    }
  }
}

TEST_CASE("profiles fall as their derivative says") {
  for (Shape shape : shapes) {
    CHECK(mode_profile(shape, 0.0) == 1.0);
    for (double z : {0.01, 0.019999, 0.020001, 0.5, 3.0, 40.0}) {
      const double slope = sweep::slope(z, 1e-5, [&](double x) { return mode_profile(shape, x); });
      CHECK_THAT(mode_fall(shape, z), WithinAbs(-slope, 1e-9));
    }
    // The two branches of the sphere meet.
    CHECK_THAT(mode_fall(shape, 0.02 * (1.0 - 1e-13)),
               WithinRel(mode_fall(shape, 0.02 * (1.0 + 1e-13)), 1e-11));
  }
}

TEST_CASE("a body starts as one: the series sums to its start") {
  for (Shape shape : shapes) {
    for (double biot : {1e-4, 0.1, 3.0, 100.0}) {
      const ConductionSeries series(shape, biot, 1e-4);
      INFO("shape " << dimensions(shape) << " Bi " << biot);
      CHECK_THAT(series.at(0.0, 1e-4), WithinAbs(1.0, 1e-12));
      CHECK_THAT(series.at(0.5, 1e-4), WithinAbs(1.0, 1e-10));
      CHECK(series.at(1.0, 0.0) == 1.0);
      CHECK_THAT(series.mean(0.0), WithinAbs(1.0, 1e-12));
    }
  }
}

TEST_CASE("short times join the semi-infinite body") {
  for (Shape shape : shapes) {
    for (double biot : {0.01, 10.0, 1e4}) {
      const ConductionSeries series(shape, biot, 0.0);
      const double above = 1.000001e-6, below = 0.999999e-6;
      INFO("shape " << dimensions(shape) << " Bi " << biot);
      CHECK_THAT(series.at(1.0, above), WithinAbs(series.at(1.0, below), 1.1e-3));
      CHECK_THAT(series.mean(above), WithinAbs(series.mean(below), 1e-5));
    }
  }
}

TEST_CASE("a slab that has not felt its middle is a semi-infinite body") {
  // Independent of the series: Carslaw & Jaeger (1959), section 2.7.
  for (double biot : {0.3, 5.0, 1000.0}) {
    const ConductionSeries series(Shape::slab, biot, 1e-3);
    for (double fourier : {1e-3, 1e-2}) {
      const double root = std::sqrt(fourier);
      for (double position : {0.7, 0.9, 1.0}) {
        const double thick = semi_infinite_film((1.0 - position) / (2.0 * root), biot * root);
        CHECK_THAT(series.at(position, fourier), WithinAbs(1.0 - thick, 1e-10));
      }
    }
  }
}

TEST_CASE("the mean is the mean of the profile, and falls by what the film carries") {
  for (Shape shape : shapes) {
    const int d = dimensions(shape);
    for (double biot : {0.2, 4.0, 80.0}) {
      const ConductionSeries series(shape, biot, 0.01);
      constexpr int steps = 2000;
      double sum = 0.0;
      for (int i = 0; i < steps; ++i) {
        const double xi = (i + 0.5) / steps;
        sum += d * std::pow(xi, d - 1) * series.at(xi, 0.05) / steps;
      }
      CHECK_THAT(series.mean(0.05), WithinAbs(sum, 1e-6));
      const double rate = sweep::slope(0.05, 1e-5, [&](double fo) { return series.mean(fo); });
      CHECK_THAT(rate, WithinRel(-d * biot * series.at(1.0, 0.05), 1e-5));
    }
  }
}

TEST_CASE("changes fall in time and towards the surface") {
  for (Shape shape : shapes) {
    const ConductionSeries series(shape, 7.0, 1e-3);
    sweep::falling(0.02, 2.0, [&](double fo) { return series.at(0.0, fo); });
    sweep::falling(1e-3, 2.0, [&](double fo) { return series.at(1.0, fo); });
    sweep::falling(1e-3, 2.0, [&](double fo) { return series.mean(fo); });
    sweep::falling(0.0, 1.0, [&](double xi) { return series.at(xi, 0.2); });
    sweep::positive(1e-3, 20.0, [&](double fo) { return series.at(1.0, fo); });
  }
}
