#include <cmath>

#include "kettlecast/transfer/simple_boiling.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;

namespace {
double floor_at(double excess) {
  return simple_boiling_coefficient(excess, constants::atmosphere, simple_boiling::floor);
}
double wall_at(double excess) {
  return simple_boiling_coefficient(excess, constants::atmosphere, simple_boiling::wall);
}
}  // namespace

TEST_CASE("water boiling in a jacketed kettle with its inside at 107.65 degC") {
  check_relative(wall_at(7.65),
                 published(3559.192144, "W/(m2 K)",
                           "Geankoplis, data of example 4.8-1, equations from memory"),
                 5e-3);
  check_relative(
      simple_boiling_heat_flux(7.65, constants::atmosphere, simple_boiling::wall),
      published(27227.8199, "W/m2", "Geankoplis, data of example 4.8-1, equations from memory"),
      5e-3);
  check_relative(floor_at(7.65),
                 published(2489.196015, "W/(m2 K)",
                           "Geankoplis, data of example 4.8-1, equations from memory"),
                 5e-3);
}

TEST_CASE("laws of gentle boiling hold below the join") {
  check_relative(floor_at(1.0), published(1043.0, "W/(m2 K)", "Geankoplis, 4.8 (from memory)"),
                 1e-12);
  check_relative(wall_at(1.0), published(537.0, "W/(m2 K)", "Geankoplis, 4.8 (from memory)"),
                 1e-12);
  check_relative(floor_at(6.0),
                 published(1043.0 * std::cbrt(6.0), "W/(m2 K)", "Geankoplis, 4.8 (from memory)"),
                 1e-12);
}

TEST_CASE("the two laws of each surface agree where they meet, near the flux of the source") {
  for (const PowerLaws<2>& laws : {simple_boiling::floor, simple_boiling::wall}) {
    const double join = laws.joins[0];
    const double gentle = laws.laws[0].factor * std::pow(join, laws.laws[0].power);
    const double steep = laws.laws[1].factor * std::pow(join, laws.laws[1].power);
    CHECK_THAT(gentle, Catch::Matchers::WithinRel(steep, 1e-4));
  }
  check_relative(simple_boiling_heat_flux(7.1196, constants::atmosphere, simple_boiling::floor),
                 published(16e3, "W/m2", "Geankoplis, 4.8, change of law (from memory)"), 0.12);
  check_relative(simple_boiling_heat_flux(4.3688, constants::atmosphere, simple_boiling::wall),
                 published(3e3, "W/m2", "Geankoplis, 4.8, change of law (from memory)"), 0.05);
}

TEST_CASE("pressure raises the coefficient by its power of 0.4") {
  const double at_2_bar =
      simple_boiling_coefficient(7.65, 2.0 * constants::atmosphere, simple_boiling::floor);
  check_relative(at_2_bar / floor_at(7.65),
                 published(1.319508, "-", "Geankoplis, 4.8-9 (from memory), 2^0.4"), 1e-6);
}

TEST_CASE("simple boiling is zero without excess and rises without jumps") {
  CHECK(floor_at(0.0) == 0.0);
  CHECK(wall_at(-3.0) == 0.0);
  sweep::rising(0.01, 15.0, floor_at);
  sweep::rising(0.01, 15.0, wall_at);
  sweep::without_jump(0.5, 15.0, 0.02, floor_at);
  sweep::without_jump(0.5, 15.0, 0.02, wall_at);
}
