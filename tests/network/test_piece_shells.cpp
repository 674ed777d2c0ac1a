#include <array>
#include <cmath>

#include "kettlecast/base/constants.hpp"
#include "kettlecast/base/errors.hpp"
#include "kettlecast/network/piece_shells.hpp"
#include "kettlecast/transfer/transient_conduction.hpp"
#include "message.hpp"
#include "piece_run.hpp"
#include "sweep.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

constexpr Shape shapes[] = {Shape::slab, Shape::cylinder, Shape::sphere};
constexpr double from = 290.0, fluid = 340.0;  // [K]

Addition block(Shape shape, double size) {
  Addition addition;
  addition.name = "block";
  addition.food.composition = {0.75, 0.0, 0.0, 0.25, 0.0, 0.0};
  addition.shape = shape;
  addition.piece_size = size;
  return addition;
}

/// Pieces that get the wanted number of shells by the rule of the header.
PieceShells shells_of(Shape shape, int count) {
  return make_piece_shells(block(shape, 2.0 * count * std::sqrt(40.0 * 1.4e-7)));
}

/// Film of a Biot number.
double film_of(const PieceShells& shells, double biot) {
  return biot * shells.conductivity / (0.5 * shells.size);
}

/// Time of a Fourier number.
double time_of(const PieceShells& shells, double fourier) {
  const double heat_capacity = shells.density * shells.freezing.unfrozen_specific_heat;
  return fourier * shells.size * shells.size * heat_capacity / (4.0 * shells.conductivity);
}

/// Unaccomplished change of a temperature [-].
double change(double temperature) { return (fluid - temperature) / (fluid - from); }

/// Unaccomplished change of mean, core and surface after warming.
struct Changes {
  double mean, core, surface;
};

Changes warmed(const PieceShells& shells, double biot, double fourier) {
  PieceRun run(shells, film_of(shells, biot), fluid, from);
  run.advance(time_of(shells, fourier));
  return {change(run.mean()), change(run.core()), change(run.surface())};
}

double shell_mean(const PieceShells& shells, double biot, double fourier) {
  return warmed(shells, biot, fourier).mean;
}

/// Largest errors against the series from Fo 0.02 on.
Changes largest_errors(const PieceShells& shells, Shape shape, double biot) {
  const ConductionSeries series(shape, biot, 0.02);
  Changes largest{0.0, 0.0, 0.0};
  for (double fourier : {0.02, 0.05, 0.1, 0.2, 0.4, 0.8, 1.6}) {
    const Changes got = warmed(shells, biot, fourier);
    largest.mean = std::fmax(largest.mean, std::fabs(got.mean - series.mean(fourier)));
    largest.core = std::fmax(largest.core, std::fabs(got.core - series.at(0.0, fourier)));
    largest.surface = std::fmax(largest.surface, std::fabs(got.surface - series.at(1.0, fourier)));
  }
  return largest;
}

/// Errors that the cards state, of the whole change [-].
void check_errors(const Changes& largest, Shape shape) {
  CHECK(largest.mean < 0.016);
  CHECK(largest.core < (shape == Shape::sphere ? 0.07 : 0.03));
  CHECK(largest.surface < 0.04);
}

}  // namespace

TEST_CASE("six shells keep to the exact series in mean, core and surface") {
  // Exact: Carslaw & Jaeger, by the series of transient_conduction.hpp, itself tested on tables.
  for (Shape shape : shapes) {
    const auto shells = shells_of(shape, 6);
    for (double biot : {0.05, 0.2, 1.0, 5.0, 20.0, 50.0}) {
      INFO("shape " << dimensions(shape) << " Bi " << biot);
      check_errors(largest_errors(shells, shape, biot), shape);
    }
  }
}

TEST_CASE("fewer shells do where the film is the resistance") {
  for (Shape shape : shapes) {
    std::size_t last = 0;
    // Just below and above the joins of the rule.
    for (double biot : {0.05, 0.099, 0.101, 0.29, 0.31, 0.79, 0.81, 1.9, 2.1, 4.9, 5.1, 50.0}) {
      const auto addition = block(shape, 0.05);
      const auto shells = make_piece_shells(addition, film_of(make_piece_shells(addition), biot));
      INFO("shape " << dimensions(shape) << " Bi " << biot << " shells " << shells.count);
      CHECK(shells.count >= last);
      check_errors(largest_errors(shells, shape, biot), shape);
      last = shells.count;
    }
    CHECK(last == most_shells);
    CHECK(make_piece_shells(block(shape, 0.05), 0.5).count == 1);
  }
}

TEST_CASE("a known film never asks for more shells than the size does") {
  for (double size : {0.002, 0.006, 0.012, 0.02, 0.05}) {
    const auto addition = block(Shape::sphere, size);
    CHECK(make_piece_shells(addition, 1e4).count <= make_piece_shells(addition).count);
    CHECK(make_piece_shells(addition, 1e6).count == make_piece_shells(addition).count);
  }
  CHECK_THROWS_AS(make_piece_shells(block(Shape::sphere, 0.02), 0.0), InvalidArgument);
}

TEST_CASE("before warmth has come in, the centre of six shells stays at the start within 2 %") {
  for (Shape shape : shapes) {
    const auto shells = shells_of(shape, 6);
    for (double fourier : {0.001, 0.005, 0.01, 0.02}) {
      CHECK_THAT(warmed(shells, 50.0, fourier).core, WithinAbs(1.0, 0.02));
    }
  }
}

TEST_CASE("the centre of a parabola is found exactly") {
  // Mean of 300 + 20 (r/R)^2 over shells of equal volume, by the midpoint rule.
  for (Shape shape : shapes) {
    for (int count : {1, 2, 3, 6}) {
      const auto shells = shells_of(shape, count);
      std::array<double, most_shells> means{};
      constexpr int steps = 20000;
      for (int i = 0; i < steps * count; ++i) {
        const double share = (i + 0.5) / (steps * count);
        means[static_cast<std::size_t>(i / steps)] +=
            (300.0 + 20.0 * std::pow(share, 2.0 / dimensions(shape))) / steps;
      }
      CHECK_THAT(core_temperature(shells, means, 320.0), WithinAbs(300.0, 1e-4));
    }
  }
}

TEST_CASE("core and surface of a piece at rest are those of the piece") {
  const auto shells = shells_of(Shape::sphere, 6);
  const std::array<double, most_shells> even{310.0, 310.0, 310.0, 310.0, 310.0, 310.0};
  CHECK(core_temperature(shells, even, 310.0) == 310.0);
  CHECK_THAT(piece_surface_temperature(shells, 310.0, 200.0, 310.0), WithinRel(310.0, 1e-14));
  sweep::rising(1.0, 1e4,
                [&](double film) { return piece_surface_temperature(shells, 310.0, film, 350.0); });
}

TEST_CASE("the error of the shells falls about fourfold when their number doubles") {
  // Second order in the width of a shell, as any flux between middles.
  for (Shape shape : shapes) {
    const auto error = [&](int count) {
      return std::fabs(shell_mean(shells_of(shape, count), 5.0, 0.3) -
                       ConductionSeries(shape, 5.0, 0.3).mean(0.3));
    };
    INFO("shape " << dimensions(shape) << " errors " << error(3) << " " << error(6));
    CHECK(error(6) < 0.4 * error(3));
  }
}

TEST_CASE("one shell is the linear driving force, within five percent at moderate Biot number") {
  // The driving force is the asymptote of even warming, good for Bi <= 1 (Glueckauf 1955).
  for (Shape shape : shapes) {
    const auto shells = shells_of(shape, 1);
    REQUIRE(shells.count == 1);
    const int d = dimensions(shape);
    CHECK_THAT(shells.surface_resistance, WithinRel(0.5 * shells.size / (d + 2), 1e-12));
    for (double fourier : {0.1, 0.5, 1.0}) {
      CHECK_THAT(shell_mean(shells, 1.0, fourier),
                 WithinAbs(ConductionSeries(shape, 1.0, 0.1).mean(fourier), 0.05));
    }
  }
}

TEST_CASE("larger pieces get more shells, from one to six") {
  std::size_t last = 0;
  for (int count = 1; count <= 6; ++count) {
    CHECK(shells_of(Shape::sphere, count).count > last);
    last = shells_of(Shape::sphere, count).count;
  }
  CHECK(shells_of(Shape::sphere, 30).count == most_shells);
}

TEST_CASE("surface per mass follows from the geometry") {
  for (Shape shape : shapes) {
    const auto shells = shells_of(shape, 4);
    // Area over volume of a slab heated on both sides, a long cylinder, a sphere: 1, 2, 3 over R.
    CHECK_THAT(shells.area * shells.density * 0.5 * shells.size,
               WithinRel(double(dimensions(shape)), 1e-12));
  }
}

TEST_CASE("shells alone neither make nor lose heat") {
  const auto shells = shells_of(Shape::sphere, 6);
  PieceRun run(shells, 1e-12 * shells.conductivity / shells.size, fluid, from);
  run.advance(time_of(shells, 1.0));
  double sum = 0.0;
  for (double enthalpy : run.state()) sum += enthalpy;
  CHECK_THAT(sum, WithinRel(shells.freezing.specific_enthalpy(from), 1e-9));
}

TEST_CASE("a shell gives back the temperature it was poured with, frozen or not") {
  const auto shells = shells_of(Shape::sphere, 3);
  for (double temperature : {240.0, 260.0, 272.0, 280.0, 300.0, 370.0}) {
    CHECK_THAT(shell_temperature(shells, shells.freezing.specific_enthalpy(temperature),
                                 shells.water_share),
               WithinAbs(temperature, 1e-8));
  }
}

TEST_CASE("a liquid has no shells") {
  Addition milk;
  milk.name = "milk";
  CHECK_THROWS_AS(make_piece_shells(milk), InvalidArgument);
  CHECK_THROWS_WITH(make_piece_shells(milk), mentions("\"milk\" is a liquid"));
}
