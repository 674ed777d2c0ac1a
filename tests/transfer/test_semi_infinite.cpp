#include <cmath>

#include "kettlecast/transfer/semi_infinite.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {
constexpr double foot = 0.3048;                // [m]
constexpr double hour = 3600.0;                // [s]
constexpr double btu = 1055.05585262;          // [J]
constexpr double fahrenheit_step = 1.0 / 1.8;  // [K]
}  // namespace

TEST_CASE("scaled error function") {
  check_relative(scaled_erfc(1.0),
                 published(0.427583576155807, "-", "e erfc(1), erfc(1) of A&S table 7.1"), 1e-14);
  sweep::falling(0.0, 100.0, [](double x) { return scaled_erfc(x); });
  CHECK_THAT(scaled_erfc(25.0 - 1e-12), WithinRel(scaled_erfc(25.0 + 1e-12), 1e-10));
  // Bounds of Abramowitz & Stegun, 7.1.13: 1/(x + sqrt(x^2 + 2)) < sqrt(pi)/2 f <= 1/(x + ...).
  for (double x : {0.1, 1.0, 10.0, 24.9, 25.1, 300.0}) {
    const double half = 0.5 * std::sqrt(constants::pi) * scaled_erfc(x);
    CHECK(half > 1.0 / (x + std::sqrt(x * x + 2.0)));
    CHECK(half <= 1.0 / (x + std::sqrt(x * x + 4.0 / constants::pi)));
  }
}

TEST_CASE("thick steel wall with one face held hot") {
  const double diffusivity = 0.41 * foot * foot / hour;
  const double conductivity = 24.0 * btu / (hour * foot * fahrenheit_step);
  const double time = 4.0 * hour, difference = 900.0 * fahrenheit_step;
  const double depth = diffusion_depth(foot / 3.0, diffusivity, time);
  check_relative(depth, published(0.13, "-", "Kern, Process Heat Transfer, example 18.2"), 5e-3);
  check_absolute(100.0 + 900.0 * semi_infinite_fixed_surface(depth),
                 published(868.7, "degF", "the error function of Kern, example 18.2"), 0.5);
  const double area = btu / (foot * foot);  // [J/m2]
  check_relative(semi_infinite_flux(difference, conductivity, diffusivity, time) / area * hour,
                 published(9516.0, "Btu/(h ft2)", "k dT / sqrt(pi a t) by hand, Kern ex. 18.2"),
                 2e-3);
  check_relative(semi_infinite_heat(difference, conductivity, diffusivity, time) / area,
                 published(76128.0, "Btu/ft2", "2 q t by hand, Kern example 18.2"), 2e-3);
}

TEST_CASE("depth that a share of the change has reached") {
  check_relative(
      semi_infinite_depth(0.5),
      published(
          0.4769362762, "-",
          "probable error of the normal distribution over its spread, erfc x = 1/2 (from memory)"),
      1e-9);
  for (double share : {1e-11, 0.02, 0.999}) {
    CHECK_THAT(semi_infinite_fixed_surface(semi_infinite_depth(share)), WithinRel(share, 1e-9));
  }
}

TEST_CASE("thick body under a constant flux") {
  const double rise = semi_infinite_flux_rise(20e3, 0.01, 1.0, 5.08e-7, hour);
  check_absolute(15.0 + rise,
                 published(793.0, "degC", "pychemengg, documentation, transient example 5"), 0.5);
}

TEST_CASE("solutions of the thick body fulfil the heat equation and their surface condition") {
  const double a = 1.4e-7, k = 0.5, t = 300.0, film = 60.0;
  const auto by_film = [&](double x, double time) {
    return semi_infinite_film(diffusion_depth(x, a, time), film * std::sqrt(a * time) / k);
  };
  const auto by_flux = [&](double x, double time) {
    return semi_infinite_flux_rise(1000.0, x, k, a, time);
  };
  const auto residual = [&](auto&& field, double x) {
    const double h = 2e-5;
    const double rate = sweep::slope(t, 0.1, [&](double time) { return field(x, time); });
    const double bend = (field(x + h, t) - 2.0 * field(x, t) + field(x - h, t)) / (h * h);
    return (a * bend - rate) / rate;
  };
  for (double x : {2e-3, 5e-3, 1e-2}) {
    CHECK_THAT(residual(by_film, x), WithinAbs(0.0, 1e-4));
    CHECK_THAT(residual(by_flux, x), WithinAbs(0.0, 1e-4));
  }
  const double step = 1e-7;
  const auto gradient = [&](auto&& field) { return (field(0.0, t) - field(step, t)) / step; };
  CHECK_THAT(k * gradient(by_film), WithinRel(film * (1.0 - by_film(0.0, t)), 1e-4));
  CHECK_THAT(k * gradient(by_flux), WithinRel(1000.0, 1e-4));
}

TEST_CASE("a strong film is a surface held at the temperature of the fluid") {
  for (double depth : {0.0, 0.1, 0.5, 2.0}) {
    CHECK_THAT(semi_infinite_film(depth, 1e6), WithinAbs(semi_infinite_fixed_surface(depth), 1e-6));
    CHECK_THAT(semi_infinite_film(depth, 0.0), WithinAbs(0.0, 1e-15));
    sweep::rising(0.0, 60.0, [&](double film) { return semi_infinite_film(depth, film); });
  }
}
