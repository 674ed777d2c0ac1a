#include <cmath>

#include "kettlecast/transfer/horizontal_cylinder.hpp"
#include "kettlecast/transfer/horizontal_plates.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;

namespace {
constexpr double prandtl = 5.54;
constexpr double rayleigh = 5.54 * 3.21e8;

template <class Function>
auto of_decades(Function nusselt) {
  return [=](double decades) { return nusselt(std::pow(10.0, decades)); };
}
}  // namespace

TEST_CASE("hot plate facing up by three sources") {
  check_relative(plate_up_mcadams_nusselt(rayleigh),
                 published(181.73121, "-", "McAdams, as computed by the package ht"), 1e-6);
  check_relative(plate_up_mcadams_nusselt(0.01 * 3.21e8),
                 published(22.857041558, "-", "McAdams, as computed by the package ht"), 1e-6);
  check_relative(plate_up_vdi_nusselt(1e4, 1e9),
                 published(0.766 * std::pow(1e4, 0.2), "-", "VDI Heat Atlas F2, eq. 7, Pr large"),
                 1e-4);
  check_relative(plate_up_raithby_nusselt(1e10, 0.71),
                 published(0.14 * std::cbrt(1e10), "-",
                           "Raithby & Hollands (1998), C_t = 0.140 of air in their table"),
                 2e-3);
}

TEST_CASE("hot plate facing down by three sources") {
  check_relative(plate_facing_down_nusselt(rayleigh),
                 published(55.44564799, "-", "McAdams, as computed by the package ht"), 1e-6);
  check_relative(plate_down_vdi_nusselt(rayleigh, prandtl),
                 published(39.16864972, "-", "VDI Heat Atlas, as computed by the package ht"),
                 1e-6);
  check_relative(plate_down_raithby_nusselt(rayleigh, prandtl),
                 published(35.95799245, "-", "Raithby & Hollands, as computed by the package ht"),
                 1e-6);
}

TEST_CASE("published forms of a plate facing up stay within a third of each other") {
  // Water on a plate of a kettle: 10^5 to 10^10.
  for (double decades = 5.0; decades <= 10.0; decades += 0.25) {
    const double ra = std::pow(10.0, decades);
    const double mcadams = plate_up_mcadams_nusselt(ra);
    CHECK_THAT(plate_up_vdi_nusselt(ra, prandtl), Catch::Matchers::WithinRel(mcadams, 0.34));
    CHECK_THAT(plate_up_raithby_nusselt(ra, prandtl), Catch::Matchers::WithinRel(mcadams, 0.20));
  }
}

TEST_CASE("plates have no jumps and no negative films") {
  const auto up = of_decades([](double ra) { return plate_up_raithby_nusselt(ra, prandtl); });
  const auto vdi = of_decades([](double ra) { return plate_up_vdi_nusselt(ra, prandtl); });
  const auto mcadams = of_decades([](double ra) { return plate_up_mcadams_nusselt(ra); });
  const auto down = of_decades([](double ra) { return plate_down_vdi_nusselt(ra, prandtl); });
  const auto lower = of_decades([](double ra) { return plate_down_raithby_nusselt(ra, prandtl); });
  sweep::rising(0.0, 11.0, up);
  sweep::rising(0.0, 11.0, mcadams);
  sweep::rising(0.0, 11.0, down);
  sweep::rising(0.0, 11.0, lower);
  sweep::without_jump(0.0, 11.0, 0.04, vdi);
  sweep::without_jump(0.0, 11.0, 0.02, mcadams);
  sweep::positive(-1e8, 1e8, [](double ra) { return plate_up_raithby_nusselt(ra, prandtl); });
  sweep::positive(-1e8, 1e8, [](double ra) { return plate_up_vdi_nusselt(ra, prandtl); });
  sweep::positive(-1e8, 1e8, [](double ra) { return plate_down_vdi_nusselt(ra, prandtl); });
  sweep::positive(-1e8, 1e8, [](double ra) { return plate_down_raithby_nusselt(ra, prandtl); });
}

TEST_CASE("horizontal cylinder by three sources") {
  const double ra = 0.69 * 2.63e9;
  check_relative(horizontal_cylinder_nusselt(ra, 0.69),
                 published(139.13493970, "-", "Churchill & Chu, as computed by the package ht"),
                 1e-6);
  check_relative(horizontal_cylinder_kuehn_nusselt(ra, 0.69),
                 published(122.99323526, "-", "Kuehn & Goldstein, as computed by the package ht"),
                 1e-6);
  check_relative(horizontal_cylinder_morgan_nusselt(ra),
                 published(151.38819972, "-", "Morgan, as computed by the package ht"), 1e-6);
}

TEST_CASE("horizontal cylinders have no jumps") {
  const auto morgan = of_decades([](double ra) { return horizontal_cylinder_morgan_nusselt(ra); });
  sweep::rising(-3.0, 12.0, morgan);
  sweep::without_jump(-3.0, 12.0, 0.04, morgan);
  sweep::rising(-3.0, 12.0,
                of_decades([](double ra) { return horizontal_cylinder_nusselt(ra, 0.7); }));
  sweep::rising(-3.0, 12.0,
                of_decades([](double ra) { return horizontal_cylinder_kuehn_nusselt(ra, 0.7); }));
  sweep::positive(-1e6, 1e6, [](double ra) { return horizontal_cylinder_nusselt(ra, 0.7); });
}
