#include "kettlecast/transfer/film_cards.hpp"
#include "kettlecast/transfer/film_geometry.hpp"
#include "message.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;

namespace {

constexpr double exact_form = 1e-3;  // tolerance for the form; sources differ by 10-40 %

double nusselt(FilmSource source, FilmSurface surface, Impeller impeller, double reynolds,
               double prandtl) {
  return agitated_nusselt(FilmGroups<double>{reynolds, prandtl, 1.0},
                          film_constants(source, surface, impeller));
}

const AgitatedConstants& geankoplis(Impeller impeller, double reynolds) {
  return constants_at(film_constants(FilmSource::geankoplis, FilmSurface::wall, impeller),
                      reynolds);
}

}  // namespace

TEST_CASE("cards find the constants of their source") {
  check_relative(
      nusselt(FilmSource::penney, FilmSurface::wall, Impeller::anchor, 50, 5000),
      published(83.43035554, "-", "Penney & Atiemo-Obeng (2004), 0.69 Re^(1/2), 12 < Re < 100"),
      exact_form);
  check_relative(nusselt(FilmSource::penney, FilmSurface::floor, Impeller::pitched_turbine, 1e5, 7),
                 published(4450.988124, "-", "Penney & Atiemo-Obeng (2004), 1.08 Re^(2/3)"),
                 exact_form);
  check_relative(nusselt(FilmSource::geankoplis, FilmSurface::wall, Impeller::pitched_turbine,
                         126.4911064, 1000),
                 published(133.5516313, "-", "Geankoplis, section 4.13 (from memory)"), exact_form);
  check_relative(
      nusselt(FilmSource::geankoplis, FilmSurface::wall, Impeller::anchor, 3464.101615, 1000),
      published(824.1942546, "-", "Geankoplis, section 4.13 (from memory)"), exact_form);
  check_relative(nusselt(FilmSource::geankoplis, FilmSurface::wall, Impeller::helical_ribbon,
                         894.427191, 1000),
                 published(189.3111557, "-", "Geankoplis, section 4.13 (from memory)"), exact_form);
}

TEST_CASE("constants of the list of Geankoplis stand beside each other") {
  const char source[] = "Geankoplis, section 4.13 (from memory)";
  check_relative(geankoplis(Impeller::paddle, 1e4).constant, published(0.36, "-", source), 1e-12);
  check_relative(geankoplis(Impeller::paddle, 1e4).viscosity_exponent, published(0.21, "-", source),
                 1e-12);
  check_relative(geankoplis(Impeller::anchor, 50).constant, published(1.0, "-", source), 1e-12);
  check_relative(geankoplis(Impeller::anchor, 50).reynolds_exponent, published(0.5, "-", source),
                 1e-12);
  check_relative(geankoplis(Impeller::anchor, 1e3).constant, published(0.36, "-", source), 1e-12);
  check_relative(geankoplis(Impeller::disc_turbine, 1e3).constant, published(0.54, "-", source),
                 1e-12);
}

TEST_CASE("paddle of the worked example by the equation of its chart") {
  // j over Re: the chart is drawn by eye, so the equation need only come near it.
  check_relative(nusselt(FilmSource::kern, FilmSurface::wall, Impeller::paddle, 1.6e5, 1.0),
                 published(1100.0, "-", "Kern (1950), example 20.1, j read from figure 20.2"),
                 0.05);
  check_relative(nusselt(FilmSource::kern, FilmSurface::coil, Impeller::paddle, 1.6e5, 1.0),
                 published(1700.0, "-", "Kern (1950), example 20.2, j read from figure 20.2"),
                 0.15);
}

TEST_CASE("film of the worked example from the j of its chart") {
  const double prandtl = 1.0 * 1.06 / 0.38;
  check_relative(chart_nusselt(1100.0, prandtl, 1.0) * 0.38 / 1.01,
                 published(588.0, "Btu/(h ft2 F)", "Kern (1950), example 20.1"), 0.01);
}

TEST_CASE("constants that no source prints are refused") {
  CHECK_THROWS_AS(film_constants(FilmSource::penney, FilmSurface::floor, Impeller::anchor),
                  InvalidArgument);
  CHECK_THROWS_AS(film_constants(FilmSource::geankoplis, FilmSurface::coil, Impeller::paddle),
                  InvalidArgument);
}

TEST_CASE("every film rises with speed and never jumps") {
  for (const FilmCard& card : film_cards) {
    INFO(name_of(card.impeller));
    const auto film = [&](double power) {
      const double reynolds = std::pow(10.0, power);
      return agitated_nusselt(FilmGroups<double>{reynolds, 50.0, 1.0}, card.regimes);
    };
    sweep::positive(-3.0, 6.0, film);
    sweep::rising(0.0, 6.0, film);
    sweep::without_jump(0.0, 6.0, 0.02, film);
  }
}

TEST_CASE("factors of geometry are 1 for the standard vessel") {
  CHECK_THAT(depth_factor(1.0), Catch::Matchers::WithinRel(1.0, 1e-14));
  CHECK_THAT(blade_height_factor(1.0), Catch::Matchers::WithinRel(1.0, 1e-14));
  CHECK_THAT(pitch_factor(1.0), Catch::Matchers::WithinRel(1.0, 1e-14));
  CHECK_THAT(coil_factor(1.0 / 3.0, 0.04), Catch::Matchers::WithinRel(1.0, 1e-14));
  sweep::falling(0.3, 2.0, [](double ratio) { return depth_factor(ratio); });
  sweep::rising(0.3, 2.0, [](double ratio) { return blade_height_factor(ratio); });
  sweep::rising(0.3, 2.0, [](double ratio) { return pitch_factor(ratio); });
  sweep::rising(0.02, 0.1, [](double ratio) { return coil_factor(0.4, ratio); });
}
