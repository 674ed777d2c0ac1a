// Floor shapes and tilt seen through the kettle: levels, areas, and what the heat makes of them.
#include <cmath>

#include "instant.hpp"
#include "kettlecast/base/constants.hpp"
#include "published.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

constexpr double pi = constants::pi;
constexpr double radius = 0.4;
/// Density of water at 60 degC, which levels are reckoned with (IAPWS-IF97) [kg/m3].
constexpr double density = 983.2;

Kettle shaped(FloorShape floor, double tilt = 0.0, double depth = 0.0) {
  Kettle kettle = batch::stew_kettle();
  kettle.floor_shape = floor;
  kettle.floor_depth = depth;
  kettle.tilt = tilt;
  return kettle;
}

Instant watered(const Kettle& kettle, double volume, double temperature = 330.0) {
  return {kettle,
          {batch::liquid(batch::water(), density * volume, temperature)},
          {temperature, temperature}};
}

/// Volume of a cap of height h of a sphere: pi h^2 (3 r - h) / 3.
double cap(double height) { return pi * height * height * (3.0 * radius - height) / 3.0; }

}  // namespace

TEST_CASE("product in a hemispherical floor is a cap of its sphere") {
  for (double height : {0.05, 0.1, 0.2, 0.3, 0.39}) {
    auto now = watered(shaped(FloorShape::hemispherical), cap(height));
    const auto& scene = now.scene();
    INFO("height " << height << " m");
    CHECK_THAT(now.model.level(now.state), WithinRel(height, 1e-8));
    // Wetted 2 pi R h of the 2 pi R^2 of the floor; a disc of radius sqrt(2 R h - h^2) is free.
    CHECK_THAT(scene.coverage, WithinRel(height / radius, 1e-8));
    CHECK_THAT(scene.surface_area, WithinRel(pi * height * (2.0 * radius - height), 1e-8));
    // None of the straight wall is in the product, but for 2 cm of splashing.
    CHECK_THAT(scene.wall_contact, WithinRel(height / radius * 2.0 * pi * radius * 0.02, 1e-8));
  }
}

TEST_CASE("above a round floor the kettle goes on as a cylinder") {
  const double ball = 2.0 / 3.0 * pi * std::pow(radius, 3);
  auto now = watered(shaped(FloorShape::hemispherical), ball + 0.1 * pi * radius * radius);
  CHECK_THAT(now.model.level(now.state), WithinRel(radius + 0.1, 1e-9));
  CHECK_THAT(now.scene().wall_contact, WithinRel(2.0 * pi * radius * 0.12, 1e-9));
  CHECK_THAT(now.scene().coverage, WithinAbs(1.0, 1e-12));
}

TEST_CASE("an upright flat kettle is a cylinder") {
  for (double level : {0.01, 0.1, 0.3}) {
    auto now = watered(shaped(FloorShape::flat), pi * radius * radius * level);
    const auto& scene = now.scene();
    const double girth = 2.0 * pi * radius;
    CHECK_THAT(now.model.level(now.state), WithinRel(level, 1e-12));
    CHECK_THAT(scene.surface_area, WithinRel(pi * radius * radius, 1e-12));
    CHECK_THAT(scene.wet_area, WithinRel(girth * (level + 0.02), 1e-12));
    CHECK_THAT(scene.wall_contact, WithinRel(scene.wet_area, 1e-12));
    CHECK_THAT(scene.wet_area + scene.dry_area, WithinRel(girth * 0.45, 1e-12));
    CHECK(scene.coverage == 1.0);
  }
}

TEST_CASE("a tilted kettle with its floor covered keeps its level on the axis") {
  auto upright = watered(shaped(FloorShape::flat), 0.06);
  auto tilted = watered(shaped(FloorShape::flat, 0.15), 0.06);
  // tan 0.15 x 0.4 m = 6 cm on either side of 12 cm: the floor stays covered.
  CHECK_THAT(tilted.model.level(tilted.state),
             WithinRel(upright.model.level(upright.state), 1e-12));
  CHECK_THAT(tilted.scene().surface_area,
             WithinRel(upright.scene().surface_area / std::cos(0.15), 1e-12));
  CHECK_THAT(tilted.scene().wet_area, WithinRel(upright.scene().wet_area, 1e-12));
}

TEST_CASE("half a floor is bare in a tilted kettle that holds the hoof of Archimedes") {
  // A surface through the middle of the floor cuts off 2/3 R^3 tan(tilt).
  const double tilt = 0.4;
  auto now =
      watered(shaped(FloorShape::flat, tilt), 2.0 / 3.0 * std::pow(radius, 3) * std::tan(tilt));
  CHECK_THAT(now.scene().coverage, WithinRel(0.5, 1e-6));
  CHECK_THAT(now.model.level(now.state), WithinAbs(0.0, 1e-6));
  // The bare half of a floor that gets 70 K hotter convects 6 W/(m2 K) more to the headspace
  // (common practice, no source) and radiates 0.35 sigma T^4 (Incropera, table A.11, from memory).
  const double before = now.rates()[slot::lost_energy];
  now.state[slot::floor_upper] = 400.0;
  const double bare = 0.5 * pi * radius * radius;
  const double radiated = 0.35 * 5.670374419e-8 * (std::pow(400.0, 4) - std::pow(330.0, 4));
  CHECK_THAT(now.rates()[slot::lost_energy] - before,
             WithinRel(bare * (6.0 * 70.0 + radiated), 1e-6));
}

TEST_CASE("a kettle hardly tilted behaves as an upright one") {
  const auto rates = [](const Kettle& kettle) {
    auto now = watered(kettle, 0.05);
    now.state[slot::floor_upper] = 350.0;
    now.state[slot::wall_wet] = 325.0;
    now.inputs.floor_heat = 0.5;
    now.inputs.agitator_speed = 0.5;
    return now.rates();
  };
  for (auto floor : {FloorShape::flat, FloorShape::dished, FloorShape::hemispherical}) {
    const auto upright = rates(shaped(floor)), tilted = rates(shaped(floor, 1e-6));
    for (std::size_t i = 0; i < upright.size(); ++i) {
      // Lengths differ by tilt times radius over level at most, some 1e-6.
      CHECK_THAT(tilted[i], WithinAbs(upright[i], 1e-5 * std::fabs(upright[i]) + 1e-9));
    }
  }
}

TEST_CASE("the floor holds heat by its area: pi R^2 flat, twice that as half a ball") {
  const auto held = [](FloorShape floor, double depth) {
    Instant cold(shaped(floor, 0.0, depth), {}, {300.0, 300.0});
    Instant warm(shaped(floor, 0.0, depth), {}, {301.0, 300.0});
    return warm.model.stored_energy(warm.state) - cold.model.stored_energy(cold.state);
  };
  // Carbon steel, Incropera and DeWitt, table A.1: 7854 kg/m3, 487 J/(kg K); 15 mm. Elements:
  // 0.3 J/(K W) of 18 kW.
  const auto by_hand = [](double area) { return 7854.0 * 487.0 * 0.015 * area + 0.3 * 18e3; };
  const double disc = pi * radius * radius;
  CHECK_THAT(held(FloorShape::flat, 0.0), WithinRel(by_hand(disc), 1e-6));
  CHECK_THAT(held(FloorShape::hemispherical, 0.0), WithinRel(by_hand(2.0 * disc), 1e-6));
  CHECK_THAT(held(FloorShape::dished, 0.1), WithinRel(by_hand(disc + pi * 0.01), 1e-6));
}

TEST_CASE("heat and mass balance at every instant in every floor shape, upright and tilted") {
  for (auto floor : {FloorShape::flat, FloorShape::dished, FloorShape::hemispherical}) {
    for (double tilt : {0.0, 0.02, 0.3, 0.8}) {
      for (double water : {0.01, 2.0, 12.0, 40.0}) {
        Kettle kettle = shaped(floor, tilt);
        kettle.agitator_diameter = 0.7;
        Instant now(kettle,
                    {batch::liquid(batch::water(), water, 340.0),
                     batch::pieces(batch::carrot(), 6.0, 280.0, 0.02)},
                    {380.0, 320.0});
        now.inputs.floor_heat = 0.7;
        now.inputs.jacket_heat = 0.7;
        now.inputs.agitator_speed = 0.5;
        now.inputs.pour_rate = {0.1, 0.05};
        INFO("floor " << static_cast<int>(floor) << ", tilt " << tilt << ", water " << water);
        now.check_books();
      }
    }
  }
}
