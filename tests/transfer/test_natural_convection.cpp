#include <cmath>

#include "kettlecast/transfer/natural_convection.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;

TEST_CASE("vertical wall of Churchill and Chu") {
  check_relative(vertical_wall_nusselt(0.69 * 2.63e9, 0.69),
                 published(147.16185, "-",
                           "Bergman et al., Introduction to Heat Transfer, 6th ed., example 9.2"),
                 1e-6);
}

TEST_CASE("hot plate facing up") {
  check_relative(plate_facing_up_nusselt(5.54 * 3.21e8),
                 published(181.73121, "-", "McAdams, as computed by the package ht"), 1e-6);
}

TEST_CASE("vertical wall in a gas with the simple turbulent rule") {
  // Wall 2 m high at 56 degC in nitrogen at 4 degC; rules for turbulent walls differ by 15 %.
  const double kinematic = 15.63e-6;
  const Fluid<double> gas{1.0, 0.713 * 0.026 / kinematic, 0.026, kinematic, 1.0 / 303.15};
  const double rayleigh = rayleigh_number(gas, 52.0, 2.0);
  const double coefficient = turbulent_wall_nusselt(rayleigh) * 0.026 / 2.0;
  check_relative(
      coefficient,
      published(5.746240504, "W/(m2 K)", "Som, Introduction to Heat Transfer, example 5.7"), 5e-3);
  check_relative(coefficient * 2.0 * 2.5 * 52.0,
                 published(1494.022531, "W", "Som, Introduction to Heat Transfer, example 5.7"),
                 5e-3);
  CHECK_THAT(prandtl_number(gas), Catch::Matchers::WithinRel(0.713, 1e-12));
}

TEST_CASE("Rayleigh number is odd in the temperature difference") {
  const Fluid<double> water{1000.0, 4180.0, 0.6, 1e-3, 2e-4};
  CHECK(rayleigh_number(water, 5.0, 0.1) == -rayleigh_number(water, -5.0, 0.1));
  // g beta dT L^3 / (nu alpha) by hand: 9.80665 * 2e-4 * 5 * 1e-3 / (1e-6 * 0.6/4.18e6).
  CHECK_THAT(rayleigh_number(water, 5.0, 0.1),
             Catch::Matchers::WithinRel(9.80665e-6 / (1e-6 * 0.6 / 4.18e6), 1e-12));
}

TEST_CASE("natural convection grows with the Rayleigh number and has no jumps") {
  const auto of_logarithm = [](auto nusselt) {
    return [=](double power) { return nusselt(std::pow(10.0, power)); };
  };
  const auto up = of_logarithm([](double ra) { return plate_facing_up_nusselt(ra); });
  const auto down = of_logarithm([](double ra) { return plate_facing_down_nusselt(ra); });
  const auto wall = of_logarithm([](double ra) { return vertical_wall_nusselt(ra, 3.0); });
  sweep::rising(0.0, 12.0, up);
  sweep::rising(0.0, 12.0, down);
  sweep::rising(0.0, 12.0, wall);
  sweep::without_jump(0.0, 12.0, 0.01, up);
  // The two rules of McAdams at the change he gives, within the step between them (6 %).
  CHECK_THAT(plate_facing_up_nusselt(1e7),
             Catch::Matchers::WithinRel(0.54 * std::pow(1e7, 0.25), 0.06));
  CHECK_THAT(plate_facing_up_nusselt(1e7), Catch::Matchers::WithinRel(0.15 * std::cbrt(1e7), 0.06));
}

TEST_CASE("a stable layer keeps a small positive film") {
  sweep::positive(-1e9, 1e9, plate_facing_up_nusselt<double>);
  sweep::positive(-1e9, 1e9, plate_facing_down_nusselt<double>);
  sweep::positive(-1e9, 1e9, [](double ra) { return vertical_wall_nusselt(ra, 5.0); });
  CHECK(plate_facing_up_nusselt(-1e6) < plate_facing_up_nusselt(0.0));
  CHECK(plate_facing_up_nusselt(0.0) < 1.0);
}

TEST_CASE("sphere of Churchill") {
  check_relative(sphere_nusselt(0.7 * 1e7, 0.7),
                 published(25.670869, "-", "Heat Exchanger Design Handbook, via package ht"), 1e-6);
  CHECK_THAT(sphere_nusselt(0.0, 0.7), Catch::Matchers::WithinAbs(2.0, 0.05));
  sweep::rising(0.0, 1e6, [](double ra) { return sphere_nusselt(ra, 5.0); });
  sweep::positive(-1e6, 1e6, [](double ra) { return sphere_nusselt(ra, 5.0); });
}

TEST_CASE("laminar form of the vertical wall agrees with the form for all flows") {
  // Both were fitted to the same data; they part where the wall turns turbulent.
  for (double decades = 3.0; decades <= 8.0; decades += 0.5) {
    const double ra = std::pow(10.0, decades);
    CHECK_THAT(vertical_wall_laminar_nusselt(ra, 0.71),
               Catch::Matchers::WithinRel(vertical_wall_nusselt(ra, 0.71), 0.20));
  }
  // Similarity solution of Ostrach: Nu / Ra^(1/4) = 0.515 for air, 0.670 for large Pr.
  check_relative((vertical_wall_laminar_nusselt(1e9, 0.72) - 0.68) / std::pow(1e9, 0.25),
                 published(0.515, "-", "Ostrach (1953), 4/3 0.3568 (4/0.72)^(1/4) / 2^(1/2)"),
                 0.02);
  sweep::rising(0.0, 1e9, [](double ra) { return vertical_wall_laminar_nusselt(ra, 3.0); });
  sweep::rising(1.0, 1e12, turbulent_wall_nusselt<double>);
}
