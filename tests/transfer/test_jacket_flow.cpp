#include "kettlecast/transfer/fluid.hpp"
#include "kettlecast/transfer/jacket_flow.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;

namespace {

constexpr Fluid<double> water{995.7, 4178.1, 0.615, 798e-6, 0.303e-3};

/// Film of the worked example: 2.5 kg/s around a vessel of 0.6 m in a jacket of 0.65 m.
double film(double buoyant_velocity, double viscosity_ratio) {
  const double gap = 0.025, length = lehrer_length(gap);
  const double velocity = lehrer_velocity(2.5 / water.density, gap, 0.6, 0.025, buoyant_velocity);
  const double reynolds = water.density * velocity * length / water.viscosity;
  return lehrer_nusselt(reynolds, prandtl_number(water), viscosity_ratio) * water.conductivity /
         length;
}

}  // namespace

TEST_CASE("plain jacket with a tangential inlet") {
  check_relative(film(0.0, 798.0 / 355.0),
                 published(2922.128, "W/(m2 K)", "VDI Heat Atlas (2010), worked example (Lehrer)"),
                 1e-6);
  check_relative(
      film(0.0, 1.0),
      published(2608.86027, "W/(m2 K)", "same, without the factor for the wall, as in ht"), 1e-6);
}

TEST_CASE("plain jacket with a radial inlet, helped or hindered by buoyancy") {
  const double velocity = lehrer_buoyant_velocity(water.expansivity, 0.6, 20.0);
  check_relative(film(velocity, 798.0 / 355.0),
                 published(3269.43896, "W/(m2 K)", "like the VDI example, bottom inlet, as in ht"),
                 1e-6);
  check_relative(film(-velocity, 798.0 / 355.0),
                 published(2566.11987, "W/(m2 K)", "like the VDI example, top inlet, as in ht"),
                 1e-6);
  CHECK_THAT(lehrer_buoyant_velocity(water.expansivity, 0.6, -20.0),
             Catch::Matchers::WithinRel(-velocity, 1e-14));
}

TEST_CASE("jacket film rises with the flow and stays finite without one") {
  const auto nusselt = [](double reynolds) { return lehrer_nusselt(reynolds, 7.0, 1.0); };
  sweep::positive(0.0, 1e5, nusselt);
  sweep::rising(0.0, 1e5, nusselt);
  sweep::positive(-1e3, 10.0, nusselt);
  sweep::rising(-30.0, 30.0,
                [](double warming) { return lehrer_buoyant_velocity(0.3e-3, 0.6, warming); });
}

TEST_CASE("resistances of a jacketed wall") {
  // Films and dirt in Btu, hours, feet and degF as in the source.
  const double clean = overall_coefficient(588.0, 1500.0, 0.0, 1.0, 0.0);
  check_relative(
      clean, published(422.4137931, "Btu/(h ft2 F)", "Kern (1950), example 20.1, computed"), 1e-8);
  const double design = overall_coefficient(588.0, 1500.0, 0.0, 1.0, 0.005);
  check_relative(
      design, published(135.734072, "Btu/(h ft2 F)", "Kern (1950), example 20.1, computed"), 1e-8);
  check_absolute(150.0 + driving_difference(32600.0, design, 3.44),
                 published(220.0, "degF", "Kern (1950), example 20.1"), 2.0);
  // 10 mm of steel of 16 W/(m K) alone.
  CHECK_THAT(overall_coefficient(1e12, 1e12, 0.01, 16.0, 0.0),
             Catch::Matchers::WithinRel(1600.0, 1e-8));
}
