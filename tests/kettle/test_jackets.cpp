// Jackets at one instant: where the heat goes, and when it stops.
#include <cmath>

#include "instant.hpp"
#include "kettlecast/base/constants.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinRel;

namespace {

constexpr double psi = 6894.757293;  // [Pa], 1 lbf/in2 (NIST SP 811)
constexpr double pi = constants::pi;

Kettle jacketed(JacketKind kind, bool under_floor = false) {
  Kettle kettle = batch::stew_kettle();
  kettle.jacket = {};
  kettle.jacket.kind = kind;
  kettle.jacket.height = 0.25;
  kettle.jacket.under_floor = under_floor;
  if (kind != JacketKind::liquid) kettle.jacket.power = 20e3;
  if (kind == JacketKind::steam) kettle.jacket.steam_pressure = 15.0 * psi;
  if (kind == JacketKind::liquid) kettle.jacket.heating = {0.5, 363.15, 0.3};
  kettle.jacket.cooling = {0.4, 278.15, 0.2};
  return kettle;
}

Instant filled(const Kettle& kettle, double water, double temperature, double jacket,
               const Coefficients& coefficients = {}) {
  Instant now(kettle,
              {batch::liquid(batch::water(), water, temperature),
               batch::pieces(batch::carrot(), 5.0, temperature - 20.0, 0.02)},
              {temperature + 20.0, temperature - 10.0}, coefficients);
  now.state[slot::jacket] = jacket;
  now.inputs.agitator_speed = 0.4;
  return now;
}

}  // namespace

TEST_CASE("heat and mass balance at every instant with every jacket, heating, cooling and both") {
  for (auto kind : {JacketKind::electric, JacketKind::steam, JacketKind::liquid}) {
    for (bool under_floor : {false, true}) {
      for (double jacket : {276.0, 320.0, 372.0}) {
        for (double cooling : {0.0, 1.0}) {
          for (double water : {0.5, 40.0, 150.0}) {
            auto now = filled(jacketed(kind, under_floor), water, 330.0, jacket);
            now.inputs.jacket_heat = 0.7;
            now.inputs.cooling = cooling;
            now.inputs.pour_rate = {0.1, 0.02};
            INFO("kind " << static_cast<int>(kind) << ", jacket " << jacket << " K, cooling "
                         << cooling << ", water " << water << " kg");
            now.check_books();
          }
        }
      }
    }
  }
}

TEST_CASE("what leaves the jacket arrives in wall, floor and room, watt by watt") {
  // Two kettles that differ in the conductance of the jacket alone: the difference is its heat.
  // Capacities by hand: AISI 304 7900 kg/m3 x 515 J/(kg K), carbon steel 7854 x 487 (Incropera,
  // table A.1), the jacket's own 1e4 J/(m2 K), and a level of 40 kg and 5 kg of carrots.
  for (bool under_floor : {false, true}) {
    const Kettle kettle = jacketed(JacketKind::electric, under_floor);
    const auto poor = Coefficients().with("jacket.conductance", 100.0);
    const auto good = Coefficients().with("jacket.conductance", 300.0);
    auto less = filled(kettle, 40.0, 330.0, 372.0, poor);
    auto more = filled(kettle, 40.0, 330.0, 372.0, good);
    const auto a = less.rates(), b = more.rates();
    const double floor = pi * 0.16, girth = pi * 0.8;
    const double wet = less.scene().wet_area;
    const double wall = 7900.0 * 515.0 * 0.003;
    const double given =
        1e4 * (girth * 0.25 + (under_floor ? floor : 0.0)) * (a[slot::jacket] - b[slot::jacket]);
    const double taken =
        wall * wet * (b[slot::wall_wet] - a[slot::wall_wet]) +
        wall * (girth * 0.45 - wet) * (b[slot::wall_dry] - a[slot::wall_dry]) +
        7854.0 * 487.0 * 0.0075 * floor * (b[slot::floor_lower] - a[slot::floor_lower]);
    // By hand: 200 W/(m2 K) more on each area at its own difference.
    const double by_hand =
        200.0 * (wet * (372.0 - less.state[slot::wall_wet]) +
                 (girth * 0.25 - wet) * (372.0 - less.state[slot::wall_dry]) +
                 (under_floor ? floor * (372.0 - less.state[slot::floor_lower]) : 0.0));
    REQUIRE(wet < girth * 0.25);
    CHECK_THAT(given, WithinRel(by_hand, 1e-9));
    CHECK_THAT(taken, WithinRel(by_hand, 1e-9));
  }
}

TEST_CASE("hot and cold liquid give and take flow times heat capacity times difference") {
  // Water at 90 degC 4.205 kJ/(kg K), at 5 degC 4.205 kJ/(kg K) (IAPWS-IF97, 1 atm).
  Kettle kettle = jacketed(JacketKind::liquid);
  kettle.jacket.heating = {0.5, 363.15, 0.0};
  kettle.jacket.cooling = {0.4, 278.15, 0.0};
  auto hot = filled(kettle, 40.0, 330.0, 340.0);
  hot.inputs.jacket_heat = 0.6;
  CHECK_THAT(hot.rates()[slot::heater_energy],
             WithinRel(0.6 * 0.5 * 4205.0 * (363.15 - 340.0), 2e-3));
  auto cold = filled(kettle, 40.0, 330.0, 320.0);
  cold.inputs.cooling = 0.5;
  CHECK_THAT(cold.rates()[slot::cooling_energy],
             WithinRel(0.5 * 0.4 * 4205.0 * (320.0 - 278.15), 2e-3));
  CHECK(cold.rates()[slot::heater_energy] == 0.0);
}

TEST_CASE("a jacket neither heats beyond its limits nor cools below them") {
  for (auto kind : {JacketKind::electric, JacketKind::steam, JacketKind::liquid}) {
    auto now = filled(jacketed(kind), 40.0, 330.0, 350.01);
    now.inputs.jacket_heat = 1.0;
    now.inputs.jacket_limit = 350.0;
    CHECK(now.rates()[slot::heater_energy] == 0.0);
    now.inputs.jacket_heat = 0.0;
    now.inputs.cooling = 1.0;
    now.inputs.cool_limit = 350.02;
    CHECK(now.rates()[slot::cooling_energy] == 0.0);
    now.inputs.cool_limit = 340.0;
    CHECK(now.rates()[slot::cooling_energy] > 0.0);
  }
  auto steamed = filled(jacketed(JacketKind::steam), 40.0, 330.0, 394.2);  // 121.05 degC
  steamed.inputs.jacket_heat = 1.0;
  steamed.inputs.jacket_limit = 450.0;
  CHECK(steamed.rates()[slot::heater_energy] == 0.0);
}

TEST_CASE("a jacket under the floor does not lose heat there to the room") {
  // At one temperature all over, the floor loses 6 W/(m2 K) less, the shell 6 W/(m2 K) more.
  const auto lost = [](bool under_floor) {
    Kettle kettle = jacketed(JacketKind::electric, under_floor);
    Instant now(kettle, {batch::liquid(batch::water(), 40.0, 350.0)}, {350.0, 350.0});
    return now.rates()[slot::lost_energy];
  };
  CHECK_THAT(lost(true), WithinRel(lost(false), 1e-9));
}
