// Jackets, shapes, solutes, thick liquids, stirring heat and spread sizes inside one kettle.

#include <cmath>

#include "batch.hpp"
#include "kettlecast/base/constants.hpp"
#include "kettlecast/kettle/films.hpp"
#include "kettlecast/transfer/stirring.hpp"
#include "published.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

using Model = KettleModel<double>;

Food white_sugar() {
  Food food;
  food.name = "sugar";
  food.composition = {0.0, 0.0, 0.0, 1.0, 0.0, 0.0};
  food.freezing_point = 234.15;
  food.sugar = 1.0;
  return food;
}

Food table_salt() {
  Food food;
  food.name = "salt";
  food.composition = {0.0, 0.0, 0.0, 0.0, 0.0, 1.0};
  food.freezing_point = 234.15;
  food.salt = 1.0;
  return food;
}

/// A liquid with a power law, as thick as a sauce.
Food sauce() {
  Food food = batch::water();
  food.name = "sauce";
  food.consistency.consistency = 8.0;
  food.consistency.flow_index = 0.4;
  food.consistency.reference_temperature = 330.0;
  return food;
}

Kettle steam_kettle(double gauge) {
  Kettle kettle = batch::stew_kettle();
  kettle.floor_power = 0.0;
  kettle.floor_thickness = 0.004;
  kettle.floor_metal = MetalKind::stainless_steel;
  kettle.jacket.kind = JacketKind::steam;
  kettle.jacket.power = 80e3;
  kettle.jacket.under_floor = true;
  kettle.jacket.steam_pressure = gauge;
  kettle.jacket.cooling = {0.5, 285.15, 0.2};
  return kettle;
}

struct Poured {
  Model model;
  std::vector<double> x;
};

Poured poured(const Kettle& kettle, const std::vector<Addition>& additions, double start = 300.0) {
  Model model(kettle, Coefficients().values(), additions);
  auto x = model.initial_state({start + 30.0, start});
  for (std::size_t i = 0; i < additions.size(); ++i) model.pour(i, additions[i].mass, x);
  return {std::move(model), std::move(x)};
}

/// What is stored per second, by central difference along the rates [W], less what the books say.
double unbalanced(Poured& at, const Inputs& inputs) {
  std::vector<double> rates;
  at.model.rates(inputs, at.x, rates);
  const double step = 1e-3;
  auto ahead = at.x, behind = at.x;
  for (std::size_t i = 0; i < at.x.size(); ++i) {
    ahead[i] += step * rates[i];
    behind[i] -= step * rates[i];
  }
  const double stored =
      (at.model.stored_energy(ahead) - at.model.stored_energy(behind)) / (2.0 * step);
  return stored -
         (rates[slot::heater_energy] + rates[slot::stirring_energy] + rates[slot::poured_energy] -
          rates[slot::cooling_energy] - rates[slot::lost_energy] - rates[slot::vapour_energy]);
}

Inputs busy(double cooling) {
  Inputs inputs;
  inputs.floor_heat = 0.5;
  inputs.jacket_heat = 0.7;
  inputs.jacket_limit = 420.0;
  inputs.cooling = cooling;
  inputs.agitator_speed = 0.6;
  return inputs;
}

}  // namespace

TEST_CASE("heat books close at every instant for every jacket, floor and product") {
  Addition frozen = batch::pieces(batch::carrot(), 6.0, 255.15, 0.02);
  frozen.size_spread = 0.25;
  const std::vector<Addition> additions{
      batch::liquid(batch::water(), 20.0, 350.0), batch::liquid(white_sugar(), 10.0, 295.0),
      batch::liquid(table_salt(), 0.5, 295.0), batch::liquid(sauce(), 15.0, 330.0), frozen};
  for (JacketKind kind : {JacketKind::electric, JacketKind::steam, JacketKind::liquid}) {
    for (FloorShape floor : {FloorShape::flat, FloorShape::dished, FloorShape::hemispherical}) {
      for (double tilt : {0.0, 0.3}) {
        Kettle kettle = steam_kettle(1e5);
        kettle.jacket.kind = kind;
        if (kind == JacketKind::liquid) {
          kettle.jacket.power = 0.0;
          kettle.jacket.heating = {0.4, 363.15, 0.0};
        }
        kettle.floor_shape = floor;
        kettle.tilt = tilt;
        for (double cooling : {0.0, 1.0}) {
          Poured at = poured(kettle, additions);
          // Rounding of 1e8 J over the 2 ms of the difference.
          CHECK_THAT(unbalanced(at, busy(cooling)), WithinAbs(0.0, 0.1));
        }
      }
    }
  }
}

TEST_CASE("a steam jacket comes to the saturation temperature of its steam and not beyond") {
  const auto jacket_of = [](double gauge, double air) {
    Kettle kettle = steam_kettle(gauge);
    kettle.jacket.air_share = air;
    Phase boil = batch::hold(400.0, 0.0, {batch::liquid(batch::water(), 60.0, 290.0)});
    boil.ends = {{EndKind::elapsed, 1800.0, Regulated::probe}};
    const auto run = batch::run(kettle, {"boil", {boil}});
    return batch::values_of(run.trace, "jacket.temperature");
  };
  const auto hottest = [](const std::vector<double>& values) {
    return *std::max_element(values.begin(), values.end());
  };
  const auto steam_5 = published(108.391 + constants::ice_point, "K",
                                 "IAPWS-IF97 saturation at 5 psig over 101.325 kPa");
  const auto steam_15 = published(120.955 + constants::ice_point, "K",
                                  "IAPWS-IF97 saturation at 15 psig over 101.325 kPa");
  // The supply is throttled over the last 2 K.
  CHECK(hottest(jacket_of(5 * 6894.757, 0.0)) <= steam_5.value + 0.01);
  CHECK(hottest(jacket_of(5 * 6894.757, 0.0)) > steam_5.value - 2.0);
  CHECK(hottest(jacket_of(15 * 6894.757, 0.0)) <= steam_15.value + 0.01);
  CHECK(hottest(jacket_of(15 * 6894.757, 0.0)) > steam_15.value - 2.0);
  // Dalton: 10 % of air leave the steam 90 % of the pressure, 117.7 degC (IAPWS-IF97, 184.3 kPa).
  CHECK_THAT(hottest(jacket_of(15 * 6894.757, 0.1)), WithinAbs(117.7 + 273.15, 2.0));
}

TEST_CASE("cold water in the jacket takes flow x specific heat x warming, and no more") {
  Poured at = poured(steam_kettle(1e5), {batch::liquid(batch::water(), 60.0, 350.0)}, 350.0);
  Inputs inputs;
  inputs.cooling = 1.0;
  inputs.agitator_speed = 0.5;
  at.x[slot::jacket] = 305.15;
  std::vector<double> rates;
  at.model.rates(inputs, at.x, rates);
  // 20 % propylene glycol at 12 degC: 4.02 kJ/(kg K) in handbook tables, within 2 % (from memory).
  CHECK_THAT(rates[slot::cooling_energy], WithinRel(0.5 * 4020.0 * 20.0, 0.02));
  at.x[slot::jacket] = 285.15;
  at.model.rates(inputs, at.x, rates);
  CHECK_THAT(rates[slot::cooling_energy], WithinAbs(0.0, 1e-9));
  inputs.cool_limit = 320.0;
  at.x[slot::jacket] = 310.0;
  at.model.rates(inputs, at.x, rates);
  CHECK(rates[slot::cooling_energy] == 0.0);
}

TEST_CASE("a controller without floor elements switches the jacket, on and off or in proportion") {
  for (ControllerKind control : {ControllerKind::on_off, ControllerKind::proportional_integral}) {
    Kettle kettle = steam_kettle(1e5);
    kettle.controller.kind = control;
    const Phase warm = batch::hold(335.0, 900.0, {batch::liquid(batch::water(), 60.0, 290.0)});
    const auto run = batch::run(kettle, {"warm", {warm}});
    CHECK(run.phases[0].ended == EndReason::held);
    const auto probe = batch::values_of(run.trace, "probe.reading");
    CHECK_THAT(probe.back(), WithinAbs(335.0, 6.0));
    for (double heat : batch::values_of(run.trace, "floor.heat")) CHECK(heat == 0.0);
    CHECK(run.balance.heater_energy > 60.0 * 4180.0 * 40.0);
    CHECK_THAT(run.balance.heat_residual, WithinAbs(0.0, 1e-8));
  }
}

TEST_CASE("half a hemisphere of water stands at the level and wets the area of its cap") {
  Kettle kettle = batch::stew_kettle();
  kettle.floor_shape = FloorShape::hemispherical;
  const double radius = 0.4, height = 0.2;
  const double cap = constants::pi * height * height * (3.0 * radius - height) / 3.0;
  // Levels take water at 983.2 kg/m3.
  Poured at = poured(kettle, {batch::liquid(batch::water(), cap * 983.2, 300.0)});
  const auto& scene = at.model.scene_at(at.x);
  CHECK_THAT(scene.level, WithinAbs(height, 1e-6));
  CHECK_THAT(scene.coverage, WithinRel(height / radius, 1e-6));  // 2 pi R h of 2 pi R R
  const double rim = std::sqrt(radius * radius - (radius - height) * (radius - height));
  CHECK_THAT(scene.surface_area, WithinRel(constants::pi * rim * rim, 1e-6));
}

TEST_CASE("syrup and brine in the kettle boil where print says") {
  const auto boiling_point = [](const std::vector<Addition>& additions, double pressure) {
    Kettle kettle = batch::stew_kettle();
    kettle.surroundings.pressure = pressure;
    Poured at = poured(kettle, additions);
    return at.model.scene_at(at.x).boiling_point - constants::ice_point;
  };
  const auto syrup = [](double share) {
    return std::vector<Addition>{batch::liquid(batch::water(), 20.0 * (1.0 - share), 300.0),
                                 batch::liquid(white_sugar(), 20.0 * share, 300.0)};
  };
  CHECK_THAT(boiling_point(syrup(0.60), 101325.0),
             WithinAbs(published(103.0, "degC", "Brown (1912), 60 % sucrose at 1 atm").value, 0.5));
  CHECK_THAT(boiling_point(syrup(0.84), 101325.0),
             WithinAbs(published(116.3, "degC", "Brown (1912), 84 % sucrose at 1 atm").value, 1.3));
  const std::vector<Addition> brine{batch::liquid(batch::water(), 16.0, 300.0),
                                    batch::liquid(table_salt(), 4.0, 300.0)};
  CHECK_THAT(boiling_point(brine, 101325.0) - 99.974,
             WithinAbs(published(5.1, "K", "NaCl 20 %, handbook chart, from memory").value, 0.4));
  // At 2000 m all of it boils lower, by about as much as water: 99.974 - 93.317 = 6.66 K.
  CHECK_THAT(boiling_point(syrup(0.60), 101325.0) - boiling_point(syrup(0.60), 79501.4),
             WithinAbs(6.66, 0.15));
}

TEST_CASE("a power-law liquid has the viscosity of Metzner and Otto's shear rate") {
  Poured at = poured(batch::stew_kettle(), {batch::liquid(sauce(), 60.0, 330.0)}, 330.0);
  auto scene = at.model.scene_at(at.x);
  for (double speed : {0.2, 0.8}) {
    scene.thick.shear_rate = agitator_shear_rate(at.model.kettle(), speed);
    CHECK_THAT(scene.thick.shear_rate, WithinRel(25.0 * speed, 1e-12));  // k_s of an anchor
    const double viscosity = liquid_viscosity(scene.pool, scene.thick, 330.0);
    // 0.1 1/s is added to the shear rate in the root of squares.
    CHECK_THAT(viscosity, WithinRel(8.0 * std::pow(25.0 * speed, 0.4 - 1.0), 1e-3));
  }
}

TEST_CASE("what has thickened stays thick in the cold") {
  Food egg = batch::water();
  egg.consistency = sauce().consistency;
  egg.consistency.thickens_from = 335.0;
  egg.consistency.thickens_until = 345.0;
  egg.consistency.thickening_factor = 20.0;
  egg.consistency.thickening_rate = 0.02;
  egg.name = "custard";
  Kettle kettle = steam_kettle(1e5);
  Phase warm = batch::hold(350.0, 300.0, {batch::liquid(egg, 40.0, 290.0)});
  Phase cool = batch::hold(300.0, 0.0);
  cool.regulated = Regulated::none;
  cool.jacket = JacketUse::cool;
  cool.ends = {{EndKind::below, 310.0, Regulated::probe}};
  const auto run = batch::run(kettle, {"custard", {warm, cool}});
  CHECK(run.phases[1].ended == EndReason::signal);
  // Water at the same temperatures cools faster: the thickened film conducts less.
  warm.additions = {batch::liquid(batch::water(), 40.0, 290.0)};
  const auto thin = batch::run(kettle, {"water", {warm, cool}});
  CHECK(run.phases[1].duration > 1.1 * thin.phases[1].duration);
}

TEST_CASE("the work of the agitator is its power times the time") {
  Kettle kettle = batch::stew_kettle();
  kettle.agitator = AgitatorKind::paddle;
  kettle.agitator_diameter = 0.3;
  kettle.height = 2.0;
  const double depth = 0.8;  // as deep as wide; there the depth counts 2^-1/4 (saturating ramp)
  const double mass = constants::pi * 0.16 * depth * 983.2;
  Poured at = poured(kettle, {batch::liquid(batch::water(), mass, 300.0)});
  Inputs inputs;
  inputs.agitator_speed = 3.0;
  std::vector<double> rates;
  at.model.rates(inputs, at.x, rates);
  // Paddle, two flat blades, turbulent power number 1.70 (McCabe, Smith & Harriott, from memory).
  const double power = 1.70 * 996.5 * 27.0 * std::pow(0.3, 5);
  CHECK_THAT(rates[slot::stirring_energy], WithinRel(power * std::pow(2.0, -0.25), 0.01));
}

TEST_CASE("spread sizes keep the mass, and the largest pieces have the coldest core") {
  Addition spread = batch::pieces(batch::carrot(), 12.0, 278.15, 0.02);
  spread.size_spread = 0.3;
  Phase simmer = batch::hold(363.15, 0.0, {batch::liquid(batch::water(), 40.0, 363.15), spread});
  simmer.ends = {{EndKind::above, 350.0, Regulated::core}};
  const auto run = batch::run(batch::stew_kettle(), {"simmer", {simmer}});
  CHECK(run.phases[0].ended == EndReason::signal);
  CHECK_THAT(run.balance.mass_residual, WithinAbs(0.0, 1e-12));
  const auto small = batch::values_of(run.trace, "carrot.small.core_temperature");
  const auto large = batch::values_of(run.trace, "carrot.large.core_temperature");
  for (std::size_t i = 30; i < small.size(); ++i) CHECK(large[i] < small[i]);
  simmer.additions[1].size_spread = 0.0;
  const auto even = batch::run(batch::stew_kettle(), {"simmer", {simmer}});
  CHECK(even.phases[0].duration < run.phases[0].duration);
}

TEST_CASE("a phase ends when a share of what it holds has boiled off") {
  Phase reduce = batch::hold(385.0, 0.0, {batch::liquid(batch::water(), 30.0, 370.0)});
  reduce.ends = {{EndKind::share_lost, 0.12, Regulated::probe}};
  const auto run = batch::run(batch::stew_kettle(), {"reduce", {reduce}});
  CHECK(run.phases[0].ended == EndReason::mass_lost);
  CHECK_THAT(run.phases[0].evaporated, WithinAbs(0.12 * 30.0, 1e-6));
  CHECK_THAT(run.product_mass, WithinAbs(0.88 * 30.0, 1e-6));
}

TEST_CASE("a reversing agitator turns the other way in every second cycle and heats alike") {
  Phase stir = batch::hold(350.0, 0.0, {batch::liquid(batch::water(), 40.0, 300.0)});
  stir.agitation = {0.5, 20.0, 5.0, true};
  const auto run = batch::run(batch::stew_kettle(), {"stir", {stir}});
  const auto time = batch::values_of(run.trace, "time");
  const auto speed = batch::values_of(run.trace, "agitator.speed");
  for (std::size_t i = 0; i + 1 < time.size(); ++i) {
    const double within = std::fmod(time[i], 50.0);
    const bool between = std::fabs(within - 20.0) > 1e-3 && std::fabs(within - 45.0) > 1e-3 &&
                         within > 1e-3 && std::fabs(within - 25.0) > 1e-3;
    if (!between) continue;
    CHECK(speed[i] == (within < 20.0 ? 0.5 : within < 25.0 ? 0.0 : within < 45.0 ? -0.5 : 0.0));
  }
  stir.agitation.reversing = false;
  CHECK(batch::run(batch::stew_kettle(), {"stir", {stir}}).duration == run.duration);
}

TEST_CASE("half the level of a jacket gives half its heat") {
  Poured at = poured(batch::stew_kettle(), {batch::liquid(batch::water(), 60.0, 300.0)});
  Inputs full, half;
  full.jacket_heat = 1.0;
  half.jacket_heat = 0.5;
  std::vector<double> with_full, with_half;
  at.model.rates(full, at.x, with_full);
  at.model.rates(half, at.x, with_half);
  CHECK_THAT(with_half[slot::heater_energy],
             WithinRel(0.5 * with_full[slot::heater_energy], 1e-12));
}
