#include "kettlecast/transfer/fluid.hpp"
#include "kettlecast/transfer/power_law.hpp"
#include "kettlecast/transfer/ribbon.hpp"
#include "kettlecast/transfer/stirring.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;

namespace {

constexpr Impeller every_impeller[] = {Impeller::anchor,         Impeller::paddle,
                                       Impeller::helical_ribbon, Impeller::disc_turbine,
                                       Impeller::flat_turbine,   Impeller::pitched_turbine,
                                       Impeller::hydrofoil,      Impeller::propeller};

double turbulent(Impeller impeller) { return power_number(1e6, stirring_constants(impeller)); }

}  // namespace

TEST_CASE("power numbers of turbulent flow") {
  check_relative(turbulent(Impeller::disc_turbine),
                 published(5.2, "-", "reference sheet MET-F845; other sources 5.5 and 6"), 0.10);
  check_relative(turbulent(Impeller::disc_turbine),
                 published(5.75, "-", "McCabe, Smith & Harriott, table of K_T (from memory)"),
                 0.12);
  check_relative(turbulent(Impeller::pitched_turbine),
                 published(1.27, "-", "McCabe, Smith & Harriott, table of K_T (from memory)"),
                 0.02);
  check_relative(
      turbulent(Impeller::hydrofoil),
      published(0.3, "-", "Fluid Mechanics, Heat Transfer, and Mass Transfer (2011), p. 166"),
      0.02);
}

TEST_CASE("power numbers of laminar flow fall as 1 / Re") {
  check_relative(0.1 * power_number(0.1, stirring_constants(Impeller::disc_turbine)),
                 published(70.0, "-", "reference sheet MET-F845"), 0.01);
  check_relative(
      0.1 * power_number(0.1, stirring_constants(Impeller::propeller)),
      published(41.0, "-", "Fluid Mechanics, Heat Transfer, and Mass Transfer (2011), p. 166"),
      0.01);
}

TEST_CASE("six blades in caustic") {
  const Fluid<double> caustic{1498.0, 0.0, 0.0, 12e-3, 0.0};
  check_relative(agitator_reynolds_number(caustic, 1.5, 0.61),
                 published(69600.0, "-", "McCabe, Smith & Harriott, worked example (from memory)"),
                 0.01);
  check_relative(stirring_power(5.8, 1498.0, 1.5, 0.61),
                 published(2470.0, "W", "McCabe, Smith & Harriott, worked example (from memory)"),
                 0.01);
}

TEST_CASE("power is the power number times rho N^3 d^5, and zero at rest") {
  for (const Impeller impeller : every_impeller) {
    INFO(name_of(impeller));
    const StirringConstants constants = stirring_constants(impeller);
    for (const double speed : {0.01, 0.3, 5.0}) {
      const double reynolds = 1050.0 * speed * 0.5 * 0.5 / 0.8;
      CHECK_THAT(stirring_power(constants, 1050.0, 0.8, speed, 0.5),
                 Catch::Matchers::WithinRel(
                     stirring_power(power_number(reynolds, constants), 1050.0, speed, 0.5), 1e-12));
    }
    CHECK(stirring_power(constants, 1050.0, 0.8, 0.0, 0.5) == 0.0);
    sweep::rising(0.0, 5.0,
                  [&](double speed) { return stirring_power(constants, 1050.0, 0.8, speed, 0.5); });
    const auto number = [&](double power) {
      return power_number(std::pow(10.0, power), constants);
    };
    sweep::positive(-2.0, 6.0, number);
    sweep::without_jump(-2.0, 6.0, 0.02, number);
    sweep::falling(-2.0, 3.0, number);
  }
}

TEST_CASE("mean over on and off") {
  CHECK_THAT(mean_over_cycle(900.0, 300.0, 0.25), Catch::Matchers::WithinRel(450.0, 1e-14));
  CHECK(mean_over_cycle(50.0, 0.0, 1.0) == 50.0);
  CHECK(mean_over_cycle(50.0, 7.0, 0.0) == 7.0);
}

TEST_CASE("power-law liquid under agitators") {
  const PowerLaw liquid{20.0, 0.5};
  const auto check = [&](Impeller impeller, double viscosity, double reynolds) {
    const double constant = stirring_constants(impeller).shear;
    const char source[] = "Metzner & Otto (1957), arithmetic on its equations";
    check_relative(apparent_viscosity(liquid, shear_rate(constant, 1.0)),
                   published(viscosity, "Pa s", source), 1e-4);
    check_relative(power_law_reynolds_number(liquid, 1050.0, constant, 1.0, 0.5),
                   published(reynolds, "-", source), 1e-4);
  };
  check(Impeller::disc_turbine, 5.897678246, 44.50904051);
  check(Impeller::pitched_turbine, 6.488856845, 40.45396689);
  check(Impeller::helical_ribbon, 3.651483717, 71.88858567);
  CHECK(power_law_reynolds_number(liquid, 1050.0, 25.0, 0.0, 0.5) == 0.0);
  sweep::falling(0.0, 50.0, [&](double rate) { return apparent_viscosity(liquid, rate); });
  sweep::positive(0.0, 50.0, [&](double rate) { return apparent_viscosity(liquid, rate); });
  sweep::rising(0.0, 3.0, [&](double speed) {
    return power_law_reynolds_number(liquid, 1050.0, 25.0, speed, 0.5);
  });
}

TEST_CASE("helical ribbon in laminar flow") {
  const char source[] = "Handbook of Industrial Mixing (2004), example 9-6, as in fluids";
  check_relative(ribbon_laminar_constant(RibbonGeometry{1.9, 2.0, 1.9, 1.9, 0.19}, 2.0),
                 published(357.39749, "-", source), 1e-6);
  check_relative(ribbon_mixing_time(357.4, 4.0 / 60.0), published(650.980654, "s", source), 1e-6);
  sweep::rising(1.0, 2.0, [](double blades) {
    return ribbon_laminar_constant(RibbonGeometry{1.9, 2.0, 1.9, 1.9, 0.19}, blades);
  });
}
