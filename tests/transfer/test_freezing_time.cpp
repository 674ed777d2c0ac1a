#include <cmath>

#include "kettlecast/transfer/freezing_time.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinRel;

namespace {

constexpr Shape shapes[] = {Shape::slab, Shape::cylinder, Shape::sphere};

double plank_time(const PieceInFluid<double>& piece, double heat, double difference) {
  return phase_change_time(piece, plank_factors<double>(piece.shape), heat, difference);
}

}  // namespace

TEST_CASE("Plank: a sphere with and without its package") {
  const double difference = 40.0 - 1.25, heat = 1000.0 * 250e3;
  const double packed = film_through_package(50.0, 0.003, 0.2);
  check_relative(plank_time({Shape::sphere, 0.07, packed, 1.2}, heat, difference),
                 published(3732.0, "s", "Singh & Heldman, problem on freezing, published solution"),
                 1e-3);
  check_relative(plank_time({Shape::sphere, 0.07, 50.0, 1.2}, heat, difference),
                 published(2600.0, "s", "Singh & Heldman, example 7.1 (from memory)"), 0.01);
}

TEST_CASE("Plank: the shapes") {
  constexpr char source[] = "Plank's equation with the classical P and R, by a second method";
  const auto time = [](Shape shape) {
    return plank_time({shape, 0.05, 25.0, 1.5}, 1050.0 * 240e3, 28.3);
  };
  check_relative(time(Shape::slab), published(10759.71731, "s", source), 1e-8);
  check_relative(time(Shape::sphere), published(3586.572438, "s", source), 1e-8);
  // A slab, a cylinder and a sphere: the heat has 1, 2 and 3 ways out.
  CHECK_THAT(2.0 * time(Shape::cylinder), WithinRel(time(Shape::slab), 1e-14));
}

TEST_CASE("Cleland and Earle: factors of a slab") {
  const auto factors = cleland_earle_factors<double>(Shape::slab, {0.2, 0.25, 2.0});
  constexpr char source[] = "coefficients of the ASHRAE chapter, by hand";
  check_relative(factors.p, published(0.5820175, "-", source), 1e-7);
  check_relative(factors.r, published(0.178725, "-", source), 1e-7);
}

TEST_CASE("factors take longer than Plank's: there is sensible heat besides the latent") {
  for (Shape shape : shapes) {
    for (double stefan : {0.155, 0.25, 0.345}) {
      for (double plank : {0.0, 0.3, 0.55}) {
        for (double biot : {1.0, 2.0, 4.5}) {
          const auto by = [&](const PhaseChangeFactors<double>& f) { return f.p / biot + f.r; };
          const double ratio = by(cleland_earle_factors<double>(shape, {plank, stefan, biot})) /
                               by(plank_factors<double>(shape));
          INFO("shape " << dimensions(shape) << " Ste " << stefan << " Pk " << plank << " Bi "
                        << biot);
          CHECK(ratio > 1.0);
        }
      }
    }
  }
}

TEST_CASE("factors are positive over their ranges and rise with the heat brought along") {
  for (Shape shape : shapes) {
    const auto of = [&](double plank, double stefan, double biot) {
      const auto f = cleland_earle_factors<double>(shape, {plank, stefan, biot});
      return f.p / biot + f.r;
    };
    sweep::positive(0.5, 4.5, [&](double biot) { return of(0.2, 0.25, biot); });
    sweep::falling(0.8, 4.5, [&](double biot) { return of(0.2, 0.25, biot); });
    sweep::rising(0.0, 0.55, [&](double plank) { return of(plank, 0.25, 2.0); });
    const auto thaw = [&](double plank, double stefan) {
      const auto f = thawing_factors<double>(shape, {plank, stefan, 5.0});
      return f.p / 5.0 + f.r;
    };
    sweep::rising(0.065, 0.272, [&](double plank) { return thaw(plank, 0.4); });
    sweep::rising(0.085, 0.7, [&](double stefan) { return thaw(0.1, stefan); });
  }
}

TEST_CASE("thawing: shapes share the heat as in Plank's form") {
  const auto slab = thawing_factors<double>(Shape::slab, {0.1, 0.4, 5.0});
  const auto sphere = thawing_factors<double>(Shape::sphere, {0.1, 0.4, 5.0});
  // 0.5 (0.7754 + 2.2828 * 0.04) and 0.125 (0.4271 + 0.8488 - 0.237552), by hand.
  check_relative(slab.p, published(0.433356, "-", "Cleland et al. (1987), by hand"), 1e-9);
  check_relative(slab.r, published(0.1297935, "-", "Cleland et al. (1987), by hand"), 1e-9);
  CHECK_THAT(3.0 * sphere.p, WithinRel(slab.p, 1e-14));
  CHECK_THAT(3.0 * sphere.r, WithinRel(slab.r, 1e-14));
}

TEST_CASE("Pham: a piece that starts and ends at its freezing point takes Plank's time") {
  // Identity: with Ti = Tc = Tfm only the latent heat is left. Tc from Tfm by hand.
  const double surroundings = 273.15 - 30.0;
  const double point = (1.8 + 0.105 * -30.0) / (1.0 - 0.263) + 273.15;
  for (Shape shape : shapes) {
    const PieceInFluid<double> piece{shape, 0.05, 25.0, 1.5};
    const FreezingSpan<double> span{point, point, surroundings};
    CHECK_THAT(pham_mean_freezing_temperature(span), WithinRel(point, 1e-14));
    CHECK_THAT(pham_freezing_time(piece, {3.6e6, 1.9e6, 252e6}, span),
               WithinRel(plank_time(piece, 252e6, point - surroundings), 1e-12));
  }
}

TEST_CASE("Pham: warmer starts, colder ends and weaker films take longer") {
  const auto time = [](double initial, double final_centre, double film) {
    return pham_freezing_time<double>({Shape::cylinder, 0.06, film, 1.5}, {3.6e6, 1.9e6, 240e6},
                                      {initial, final_centre, 243.15});
  };
  sweep::rising(273.15, 313.15, [&](double initial) { return time(initial, 255.15, 30.0); });
  sweep::falling(251.0, 265.0, [&](double end) { return time(288.15, end, 30.0); });
  sweep::falling(10.0, 55.0, [&](double film) { return time(288.15, 255.15, film); });
  sweep::positive(250.0, 268.0, [&](double end) { return time(288.15, end, 30.0); });
}
