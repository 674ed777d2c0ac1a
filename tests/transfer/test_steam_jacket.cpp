#include <cmath>

#include "kettlecast/properties/steam.hpp"
#include "kettlecast/transfer/steam_jacket.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;

namespace {
/// Condensate between a wall at 110 degC and steam at 121 degC.
const Condensate<double> jacket{946.0, 1.15, 0.683, 2.43e-4, 2.2e6};
constexpr double prandtl = 1.5;

double with_air(double air) { return steam_jacket_coefficient(jacket, prandtl, 10.0, 0.5, air); }
}  // namespace

TEST_CASE("film number by Reynolds number in its three regimes") {
  check_relative(film_number_by_reynolds(10.0, 1.75),
                 published(1.47 / std::cbrt(10.0), "-", "Nusselt; Incropera & DeWitt, 10.38"),
                 1e-12);
  check_relative(film_number_by_reynolds(500.0, 1.75),
                 published(500.0 / (1.08 * std::pow(500.0, 1.22) - 5.2), "-",
                           "Kutateladze; Incropera & DeWitt, 10.39"),
                 1e-12);
  check_relative(film_number_by_reynolds(5000.0, 4.0),
                 published(5000.0 / (8750.0 + 29.0 * (std::pow(5000.0, 0.75) - 253.0)), "-",
                           "Labuntsov; Incropera & DeWitt, 10.40"),
                 1e-12);
}

TEST_CASE("film number by condensation parameter solves the one by Reynolds number") {
  // Re = 4 Nu P; the closed forms are rounded by their source.
  for (double p : {0.1, 1.0, 10.0, 40.0, 300.0, 1500.0, 4000.0, 2e4, 9e4})
    for (double pr : {1.0, 1.75, 5.0}) {
      const double number = film_number(p, pr);
      CHECK_THAT(film_number_by_reynolds(4.0 * number * p, pr),
                 Catch::Matchers::WithinRel(number, 0.02));
    }
}

TEST_CASE("short walls follow Nusselt, tall ones are better") {
  const auto gain = [](double subcooling, double height) {
    return condensing_wall_coefficient(jacket, prandtl, subcooling, height) /
           laminar_film_coefficient(jacket, subcooling, height, constants::pi / 2.0);
  };
  CHECK_THAT(gain(1.0, 0.01), Catch::Matchers::WithinRel(1.0, 1e-3));
  check_relative(gain(10.0, 1.0),
                 published(1.2, "-", "waves add about 20 %, McAdams (1954), from memory"), 0.1);
}

TEST_CASE("films have no jumps between regimes") {
  const auto by_reynolds = [](double ln_re) {
    return film_number_by_reynolds(std::exp(ln_re), 1.75);
  };
  const auto by_parameter = [](double ln_p) { return film_number(std::exp(ln_p), 1.75); };
  sweep::positive(std::log(1.0), std::log(1e5), by_reynolds);
  sweep::without_jump(std::log(1.0), std::log(1e5), 0.01, by_reynolds);
  sweep::falling(std::log(0.01), std::log(2000.0), by_parameter);
  sweep::without_jump(std::log(0.01), std::log(1e5), 0.01, by_parameter);
  sweep::positive(0.0, 60.0,
                  [](double d) { return condensing_wall_coefficient(jacket, prandtl, d, 0.5); });
}

TEST_CASE("a clean jacket is near the rule of the trade") {
  check_relative(with_air(0.0),
                 published(1500.0 * 5.678263, "W/(m2 K)", "Kern, example 20.1, steam in a jacket"),
                 0.3);
}

TEST_CASE("resting air decides the coefficient") {
  check_relative(resting_air_coefficient(0.5),
                 published(380.0, "W/(m2 K)", "Uchida, Oyama & Togo (1965), equal masses"), 1e-12);
  // A few per cent by volume took half and more away in experiments.
  const double mass_fraction = steam::air_mass_fraction(0.03);
  const double left = with_air(mass_fraction) / with_air(0.0);
  CHECK(left < published(0.5, "-", "Sparrow & Lin, J. Heat Transfer 86 (1964) 430").value);
  CHECK(left > 0.1);
  CHECK(with_air(0.0) == condensing_wall_coefficient(jacket, prandtl, 10.0, 0.5));
  sweep::falling(0.0, 0.9, with_air);
  sweep::positive(0.0, 0.9, with_air);
  CHECK_THAT(with_air(1e-9), Catch::Matchers::WithinRel(with_air(0.0), 1e-3));
}
