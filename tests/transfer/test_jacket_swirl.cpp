#include "kettlecast/transfer/jacket_swirl.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;

namespace {

constexpr JacketShape jacket{0.025, 0.6, 0.6, 0.025};
constexpr double twice_gap = 0.05;

/// Film of the worked example, 2.5 kg/s of water; help: 1 where buoyancy helps, -1 where not.
double film(double velocity, double density, double density_at_wall, double help) {
  const double viscosity = 798e-6, conductivity = 0.615,
               prandtl = 4178.1 * viscosity / conductivity;
  const double grashof = help * constants::gravity * density *
                         std::fabs(density - density_at_wall) * twice_gap * twice_gap * twice_gap /
                         (viscosity * viscosity);
  const double reynolds = buoyant_reynolds(density * velocity * twice_gap / viscosity, grashof,
                                           jacket.height / twice_gap);
  const double ratio = twice_gap / jacket_path(jacket.vessel_diameter, jacket.height);
  return stein_schmidt_nusselt(reynolds, prandtl, ratio, 798.0 / 355.0) * conductivity / twice_gap;
}

}  // namespace

TEST_CASE("plain jacket by Stein and Schmidt") {
  const double swirl = swirl_velocity(2.5 / 995.7, jacket, 798e-6 / 995.7);
  check_relative(film(swirl, 995.7, 971.8, 1.0),
                 published(5695.204, "W/(m2 K)", "VDI Heat Atlas (2010) example, as in ht"), 1e-5);
  check_relative(film(swirl, 995.7, 971.8, -1.0),
                 published(5675.842, "W/(m2 K)", "like the VDI example, top inlet, as in ht"),
                 1e-5);
  const double radial = radial_velocity(2.5 / 995.7, jacket);
  check_relative(film(radial, 995.7, 971.8, 1.0),
                 published(1217.144969, "W/(m2 K)", "like it, radial inlet, as in ht"), 1e-6);
}

TEST_CASE("friction of a smooth channel") {
  check_relative(smooth_friction_factor(1e5),
                 published(0.0180, "-", "Moody chart, smooth tube at Re 1e5"), 0.01);
  check_relative(smooth_friction_factor(100.0), published(0.64, "-", "Hagen & Poiseuille, 64/Re"),
                 1e-6);
  const auto friction = [](double power) { return smooth_friction_factor(std::pow(10.0, power)); };
  sweep::positive(0.0, 7.0, friction);
  sweep::falling(0.0, 7.0, friction);
  sweep::without_jump(0.0, 7.0, 0.01, friction);
}

TEST_CASE("swirl film rises with the flow and stays finite without one") {
  const auto nusselt = [](double reynolds) {
    return stein_schmidt_nusselt(reynolds, 7.0, 0.05, 1.0);
  };
  sweep::positive(0.0, 1e5, nusselt);
  sweep::rising(0.0, 1e5, nusselt);
  sweep::without_jump(2e3, 3e3, 1e-3, nusselt);
  const auto swirl = [](double flow) { return swirl_velocity(flow, jacket, 8e-7); };
  sweep::rising(0.0, 0.01, swirl);
  CHECK(swirl(0.0) == 0.0);
  sweep::rising(0.0, 0.01, [](double flow) { return radial_velocity(flow, jacket); });
}
