#include <cmath>
#include <functional>

#include "kettlecast/base/constants.hpp"
#include "kettlecast/base/errors.hpp"
#include "kettlecast/network/piece_shells.hpp"
#include "kettlecast/numerics/integrator.hpp"
#include "message.hpp"
#include "published.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

int dimension(Shape shape) { return shape == Shape::slab ? 1 : shape == Shape::cylinder ? 2 : 3; }

/// Exact solution by eigenfunctions for a body that meets a fluid all at once (Carslaw and Jaeger,
/// Conduction of Heat in Solids, 2nd ed., 3.11, 7.7, 9.4). Lengths in R, times in R^2 / a.
class Series {
 public:
  Series(Shape shape, double biot) : shape_(shape), biot_(biot) {}

  /// Root `n` (from 0) of the eigenvalue equation.
  double root(int n) const {
    // Slab and sphere: one root per pi; cylinder: between the zeros of J1 (interlaced with J0).
    double low = n * constants::pi + 1e-9, high = low + constants::pi - 2e-9;
    if (shape_ == Shape::slab) high = low + 0.5 * constants::pi;
    if (shape_ == Shape::cylinder) {
      low = n == 0 ? 1e-9 : bessel_one_zero(n);
      high = bessel_one_zero(n + 1);
    }
    const double sign = equation(low);
    for (int step = 0; step < 100; ++step) {
      const double middle = 0.5 * (low + high);
      (equation(middle) * sign > 0.0 ? low : high) = middle;
    }
    return 0.5 * (low + high);
  }

  /// Coefficient of the term of a root at the centre.
  double centre_coefficient(double root) const {
    const double s = std::sin(root), c = std::cos(root);
    if (shape_ == Shape::slab) return 2.0 * s / (root + s * c);
    if (shape_ == Shape::sphere) return 2.0 * (s - root * c) / (root - s * c);
    const double j0 = std::cyl_bessel_j(0.0, root), j1 = std::cyl_bessel_j(1.0, root);
    return 2.0 / root * j1 / (j0 * j0 + j1 * j1);
  }

  /// Mean unaccomplished temperature change at a Fourier number [-].
  double mean(double fourier) const {
    double sum = 0.0;
    for (int n = 0; n < 12; ++n) {
      const double r = root(n);
      sum += centre_coefficient(r) * mean_of_mode(r) * std::exp(-r * r * fourier);
    }
    return sum;
  }

 private:
  double equation(double r) const {
    if (shape_ == Shape::slab) return r * std::sin(r) - biot_ * std::cos(r);
    if (shape_ == Shape::sphere) return (1.0 - biot_) * std::sin(r) - r * std::cos(r);
    return r * std::cyl_bessel_j(1.0, r) - biot_ * std::cyl_bessel_j(0.0, r);
  }
  double mean_of_mode(double r) const {
    if (shape_ == Shape::slab) return std::sin(r) / r;
    if (shape_ == Shape::sphere) return 3.0 * (std::sin(r) - r * std::cos(r)) / (r * r * r);
    return 2.0 * std::cyl_bessel_j(1.0, r) / r;
  }
  static double bessel_one_zero(int n) {
    double low = (n + 0.25) * constants::pi - 0.4, high = low + 0.8;  // McMahon's estimate
    const double sign = std::cyl_bessel_j(1.0, low);
    for (int step = 0; step < 80; ++step) {
      const double middle = 0.5 * (low + high);
      (std::cyl_bessel_j(1.0, middle) * sign > 0.0 ? low : high) = middle;
    }
    return low;
  }

  Shape shape_;
  double biot_;
};

/// Pieces that get the wanted number of shells by the rule of the header.
PieceShells shells_of(Shape shape, int count) {
  Addition addition;
  addition.name = "block";
  addition.food.composition = {0.75, 0.0, 0.0, 0.25, 0.0, 0.0};
  addition.shape = shape;
  addition.piece_size = 2.0 * count * std::sqrt(40.0 * 1.4e-7);
  return make_piece_shells(addition);
}

/// Enthalpies per mass after warming at a Biot number up to a Fourier number.
State warm(const PieceShells& shells, double biot, double fourier, double from, double fluid) {
  const double radius = 0.5 * shells.size;
  const double film = biot * shells.conductivity / radius;
  const double heat_capacity = shells.density * shells.freezing.unfrozen_specific_heat;
  const double duration = fourier * radius * radius * heat_capacity / shells.conductivity;
  const double count = static_cast<double>(shells.count);
  const auto temperature = [&](double enthalpy) {
    return shell_temperature(shells, enthalpy * count, shells.water_share);
  };
  Components components;
  for (std::size_t k = 0; k < shells.count; ++k) {
    components.names.push_back("shell");
    components.scales.push_back(1e5);
  }
  Integrator integrator(
      [&](const State& x, State& dxdt, double) {
        dxdt.assign(shells.count, 0.0);
        for (std::size_t k = 0; k + 1 < shells.count; ++k) {
          const double flow =
              shells.links[k] * shells.conductivity * (temperature(x[k + 1]) - temperature(x[k]));
          dxdt[k] += flow;
          dxdt[k + 1] -= flow;
        }
        dxdt.back() += shells.area * (fluid - temperature(x.back())) /
                       (1.0 / film + shells.surface_resistance / shells.conductivity);
      },
      components, {});
  State x(shells.count, shells.freezing.specific_enthalpy(from) / count);
  integrator.advance(0.0, duration, x, {}, [](double, double, const DenseOutput&) {});
  return x;
}

/// Mean unaccomplished temperature change of the shells [-].
double shell_mean(const PieceShells& shells, double biot, double fourier) {
  const double from = 290.0, fluid = 340.0;
  double sum = 0.0;
  for (double enthalpy : warm(shells, biot, fourier, from, fluid)) sum += enthalpy;
  return (fluid - shell_temperature(shells, sum, shells.water_share)) / (fluid - from);
}

constexpr Shape shapes[] = {Shape::slab, Shape::cylinder, Shape::sphere};

}  // namespace

TEST_CASE("the exact series used here has the printed eigenvalues") {
  // One-term table, Incropera and DeWitt, table 5.1 (from memory): first root and coefficient.
  const auto check_first = [](Shape shape, double biot, double root, double coefficient) {
    const Series series(shape, biot);
    CHECK_THAT(series.root(0), WithinAbs(root, 1e-4));
    CHECK_THAT(series.centre_coefficient(series.root(0)), WithinAbs(coefficient, 1.1e-4));
  };
  check_first(Shape::slab, 1.0, 0.8603, 1.1191);
  check_first(Shape::cylinder, 1.0, 1.2558, 1.2071);
  check_first(Shape::sphere, 1.0, 1.5708, 1.2732);
  check_first(Shape::slab, 5.0, 1.3138, 1.2403);
  check_first(Shape::cylinder, 5.0, 1.9898, 1.5029);
  check_first(Shape::sphere, 5.0, 2.5704, 1.787);
  for (Shape shape : shapes) CHECK_THAT(Series(shape, 2.0).mean(1e-3), WithinAbs(1.0, 0.01));
}

TEST_CASE("six shells warm as the exact series within one percent of the whole change") {
  for (Shape shape : shapes) {
    const auto shells = shells_of(shape, 6);
    REQUIRE(shells.count == 6);
    for (double biot : {0.2, 1.0, 5.0, 50.0}) {
      for (double fourier : {0.05, 0.1, 0.3, 0.8}) {
        INFO("shape " << dimension(shape) << " Bi " << biot << " Fo " << fourier);
        CHECK_THAT(shell_mean(shells, biot, fourier),
                   WithinAbs(Series(shape, biot).mean(fourier), 0.01));
      }
    }
  }
}

TEST_CASE("the error of the shells falls about fourfold when their number doubles") {
  // Second order in the width of a shell, as any flux between middles.
  for (Shape shape : shapes) {
    const auto error = [&](int count) {
      return std::fabs(shell_mean(shells_of(shape, count), 5.0, 0.3) -
                       Series(shape, 5.0).mean(0.3));
    };
    INFO("shape " << dimension(shape) << " errors " << error(3) << " " << error(6));
    CHECK(error(6) < 0.4 * error(3));
  }
}

TEST_CASE("one shell is the linear driving force, within five percent at moderate Biot number") {
  // The driving force is the asymptote of even warming, good for Bi <= 1 (Glueckauf 1955).
  for (Shape shape : shapes) {
    const auto shells = shells_of(shape, 1);
    REQUIRE(shells.count == 1);
    const int d = dimension(shape);
    CHECK_THAT(shells.surface_resistance, WithinRel(0.5 * shells.size / (d + 2), 1e-12));
    for (double fourier : {0.1, 0.5, 1.0}) {
      CHECK_THAT(shell_mean(shells, 1.0, fourier),
                 WithinAbs(Series(shape, 1.0).mean(fourier), 0.05));
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
               WithinRel(double(dimension(shape)), 1e-12));
  }
}

TEST_CASE("shells alone neither make nor lose heat") {
  const auto shells = shells_of(Shape::sphere, 6);
  const State cold = warm(shells, 1e-12, 1.0, 290.0, 340.0);
  double sum = 0.0;
  for (double enthalpy : cold) sum += enthalpy;
  CHECK_THAT(sum, WithinRel(shells.freezing.specific_enthalpy(290.0), 1e-9));
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
