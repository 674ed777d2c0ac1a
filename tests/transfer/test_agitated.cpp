#include "kettlecast/transfer/agitated.hpp"
#include "kettlecast/transfer/fluid.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;

namespace {

constexpr double two_thirds = 2.0 / 3.0;
constexpr double exact_form = 1e-3;  // tolerance for the form; sources differ by 10-40 %

template <class Constants>
double nusselt(double reynolds, double prandtl, const Constants& constants) {
  return agitated_nusselt(FilmGroups<double>{reynolds, prandtl, 1.0}, constants);
}

}  // namespace

TEST_CASE("anchor and helical ribbon at the wall") {
  check_relative(nusselt(50, 5000, wall_film::anchor),
                 published(83.43035554, "-", "Penney & Atiemo-Obeng (2004), 0.69 Re^(1/2)"),
                 exact_form);
  check_relative(nusselt(20000, 50, wall_film::anchor),
                 published(868.6136373, "-", "Penney & Atiemo-Obeng (2004), 0.32 Re^(2/3)"),
                 exact_form);
  check_relative(nusselt(5, 20000, wall_film::helical_ribbon),
                 published(43.63093504, "-", "Penney & Atiemo-Obeng (2004), 0.94 Re^(1/3)"),
                 exact_form);
  check_relative(nusselt(5000, 200, wall_film::helical_ribbon),
                 published(427.4939867, "-", "Penney & Atiemo-Obeng (2004), 0.25 Re^(2/3)"),
                 exact_form);
}

TEST_CASE("turbines and propeller at the wall") {
  check_relative(nusselt(1e5, 7, wall_film::disc_turbine),
                 published(3049.751122, "-", "Penney & Atiemo-Obeng (2004)"), exact_form);
  check_relative(nusselt(1e5, 7, wall_film::flat_turbine),
                 published(2720.048298, "-", "Penney & Atiemo-Obeng (2004)"), exact_form);
  check_relative(nusselt(1e5, 7, wall_film::propeller),
                 published(2060.64265, "-", "Penney & Atiemo-Obeng (2004)"), exact_form);
}

TEST_CASE("turbines at the floor") {
  check_relative(nusselt(1e5, 7, floor_film::disc_turbine),
                 published(2060.64265, "-", "Penney & Atiemo-Obeng (2004)"), exact_form);
  check_relative(nusselt(1e5, 7, floor_film::flat_turbine),
                 published(1648.51412, "-", "Penney & Atiemo-Obeng (2004)"), exact_form);
  check_relative(nusselt(1e5, 7, floor_film::pitched_turbine),
                 published(4450.988124, "-", "Penney & Atiemo-Obeng (2004)"), exact_form);
}

TEST_CASE("constants recalled from the list of Geankoplis") {
  check_relative(
      nusselt(126.4911064, 1000, AgitatedConstants{0.53, two_thirds, 0.24}),
      published(133.5516313, "-", "Geankoplis, section 4.13, pitched turbine (from memory)"),
      exact_form);
  check_relative(
      nusselt(3464.101615, 1000, AgitatedConstants{0.54, two_thirds, 0.14}),
      published(1236.291382, "-", "Geankoplis, section 4.13, disc turbine (from memory)"),
      exact_form);
  check_relative(nusselt(3464.101615, 1000, AgitatedConstants{0.36, two_thirds, 0.18}),
                 published(824.1942546, "-", "Geankoplis, section 4.13, anchor (from memory)"),
                 exact_form);
  check_relative(
      nusselt(894.427191, 1000, AgitatedConstants{0.633, 0.5, 0.18}),
      published(189.3111557, "-", "Geankoplis, section 4.13, helical ribbon (from memory)"),
      exact_form);
}

TEST_CASE("film of water stirred by a hydrofoil") {
  const Fluid<double> water{1000.0, 4200.0, 0.6, 1e-3, 0.0};
  const double reynolds = agitator_reynolds_number(water, 2.0, 2.0 / 3.0);
  const double film = nusselt(reynolds, prandtl_number(water), wall_film::hydrofoil) * 0.6 / 2.0;
  check_relative(
      film, published(1600.0, "W/(m2 K)", "Penney & Atiemo-Obeng (2004), worked example, 2 digits"),
      0.035);
}

TEST_CASE("worked example of a jacketed baffled vessel") {
  const Fluid<double> liquid{961.0, 2500.0, 0.173, 1.0, 0.0};
  const double reynolds = agitator_reynolds_number(liquid, 100.0 / 60.0, 0.61);
  check_relative(reynolds, published(596.0, "-", "Geankoplis, example 4.13-1 (from memory)"), 5e-3);
  check_relative(prandtl_number(liquid),
                 published(14450.0, "-", "Geankoplis, example 4.13-1 (from memory)"), 1e-3);
  const FilmGroups<double> groups{reynolds, prandtl_number(liquid), 1.0 / 0.084};
  check_relative(agitated_nusselt(groups, wall_film::disc_turbine) * 0.173 / 1.83,
                 published(170.6, "W/(m2 K)", "Geankoplis, example 4.13-1 (from memory)"), 0.01);
}

TEST_CASE("worked example of a jacketed vessel with a paddle") {
  // Feet, pounds, hours and Btu as in the source; the chart gives j = 1100 directly.
  const Fluid<double> batch{62.5, 1.0, 0.38, 1.06, 0.0};
  check_relative(agitator_reynolds_number(batch, 7500.0, 0.6),
                 published(160000.0, "-", "Kern, Process Heat Transfer (1950), example 20.1"),
                 0.01);
  const FilmGroups<double> groups{160000.0, prandtl_number(batch), 1.0};
  check_relative(
      agitated_nusselt(groups, AgitatedConstants{1100.0, 0.0, 0.14}) * 0.38 / 1.01,
      published(588.0, "Btu/(h ft2 F)", "Kern, Process Heat Transfer (1950), example 20.1"), 0.01);
}

TEST_CASE("film rises with speed and never jumps from one regime to the next") {
  const auto anchor = [](double re) { return nusselt(re, 10.0, wall_film::anchor); };
  const auto ribbon = [](double re) { return nusselt(re, 10.0, wall_film::helical_ribbon); };
  sweep::rising(0.0, 400.0, anchor);
  sweep::rising(0.0, 1e6, anchor);
  sweep::rising(0.0, 400.0, ribbon);
  sweep::without_jump(70.0, 140.0, 1e-3, anchor);
  sweep::without_jump(9.0, 18.0, 1e-3, ribbon);
  sweep::without_jump(150.0, 280.0, 1e-3, ribbon);
  sweep::positive(0.0, 1.0, anchor);
}

TEST_CASE("a cold wall slows the film, a hot one helps it") {
  const FilmGroups<double> hot_wall{1e4, 20.0, 2.0};
  const FilmGroups<double> even{1e4, 20.0, 1.0};
  CHECK(agitated_nusselt(hot_wall, wall_film::paddle) > agitated_nusselt(even, wall_film::paddle));
}
