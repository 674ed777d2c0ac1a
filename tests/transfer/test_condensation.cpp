#include <cmath>

#include "kettlecast/transfer/condensation.hpp"
#include "kettlecast/transfer/steam_jacket.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;

namespace {
constexpr double wall = constants::pi / 2.0;
/// Steam at 100 degC on a surface at 90 degC, Som, examples 9.1 and 9.2.
const Condensate<double> som{962.0, 0.598, 0.677, 3e-4, 2.27e6};
/// Steam at 349 K on a tube at 325 K, Kreith, examples 10.4 and 10.5.
const Condensate<double> kreith{980.9, 0.25, 0.661, 4.48e-4,
                                modified_latent_heat(2.349e6, 4184.0, 24.0, film_cooling::nusselt)};
}  // namespace

TEST_CASE("laminar film on a plate") {
  const Condensate<double> organic{585.0, 7.0, 0.091, 158.9e-6, 776.9e3};
  check_relative(laminar_film_coefficient(organic, 20.0, 0.1, wall),
                 published(1482.206, "W/(m2 K)",
                           "Hewitt, Shires & Bott, Process Heat Transfer (1994), p. 578"),
                 1e-5);
}

TEST_CASE("film on a tilted plate follows the component of gravity along it") {
  const double upright = laminar_film_coefficient(som, 10.0, 0.4, wall);
  check_relative(laminar_film_coefficient(som, 10.0, 0.4, constants::pi / 6.0) / upright,
                 published(std::pow(0.5, 0.25), "-", "Nusselt (1916): g sin 30 deg in the group"),
                 1e-12);
}

TEST_CASE("steam on a horizontal tube") {
  const double coefficient = tube_film_coefficient(som, 10.0, 0.05, tube_film::som);
  check_relative(coefficient, published(10703.32466, "W/(m2 K)", "Som, example 9.2"), 5e-3);
  const double area = constants::pi * 0.05 * 3.0;
  check_relative(condensate_rate(coefficient * area * 10.0, som.latent_heat),
                 published(0.02221948422, "kg/s", "Som, example 9.2"), 5e-3);
}

TEST_CASE("Nusselt's coefficient of a tube is the mean of the film around it") {
  // Flow G around the half tube: G^(1/3) dG ~ sin^(1/3) dphi, so that the heat of the whole is
  // (4/3 I)^(3/4) (2/3)^(1/4) / pi with I the integral of sin^(1/3) over 0..pi.
  constexpr int n = 200000;
  double sum = 0.0;
  for (int i = 0; i < n; ++i) sum += std::cbrt(std::sin((i + 0.5) * constants::pi / n));
  const double whole = sum * constants::pi / n;
  const double mean = std::pow(4.0 / 3.0 * whole, 0.75) * std::pow(2.0 / 3.0, 0.25) / constants::pi;
  CHECK_THAT(mean, Catch::Matchers::WithinAbs(tube_film::nusselt, 5e-4));
}

TEST_CASE("film Reynolds number of a vertical tube") {
  const double coefficient = laminar_film_coefficient(kreith, 24.0, 1.5, wall);
  check_relative(film_reynolds_number(kreith, coefficient, 24.0, 1.5),
                 published(569.0513159, "-", "Kreith, Manglik & Bohn, 7th ed., example 10.5"),
                 5e-3);
}

TEST_CASE("the mean coefficient is 4/3 of the local one at the lower edge") {
  const double local = som.conductivity / film_thickness(som, 10.0, 0.4);
  check_relative(laminar_film_coefficient(som, 10.0, 0.4, wall) / local,
                 published(4.0 / 3.0, "-", "Nusselt (1916), Incropera & DeWitt, 10.30"), 1e-12);
}

TEST_CASE("modified latent heat by the two rules") {
  CHECK(modified_latent_heat(2.27e6, 4200.0, 10.0, film_cooling::none) == 2.27e6);
  check_relative(modified_latent_heat(2.349e6, 4184.0, 24.0, film_cooling::nusselt),
                 published(2386656.0, "J/kg", "Kreith, example 10.5, h_fg + 3/8 cp dT"), 1e-12);
  CHECK(modified_latent_heat(2.27e6, 4200.0, 10.0, film_cooling::rohsenow) >
        modified_latent_heat(2.27e6, 4200.0, 10.0, film_cooling::nusselt));
}

TEST_CASE("films fall with subcooling and length and stay finite at none") {
  sweep::falling(0.01, 60.0, [](double d) { return laminar_film_coefficient(som, d, 0.4, wall); });
  sweep::falling(0.01, 3.0, [](double l) { return laminar_film_coefficient(som, 9.0, l, wall); });
  sweep::falling(0.005, 0.1, [](double d) { return tube_film_coefficient(som, 9.0, d, 0.728); });
  sweep::rising(0.01, 2.0, [](double x) { return film_thickness(som, 9.0, x); });
  sweep::positive(-5.0, 5.0, [](double d) { return laminar_film_coefficient(som, d, 0.4, wall); });
}
