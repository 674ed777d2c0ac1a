#pragma once

#include <algorithm>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include "kettlecast/simulate/forecast.hpp"

/// Made-up kettles, foods and phases for tests of whole runs. None of the numbers is an expected
/// value; compositions are rounded from food tables.
namespace batch {

using namespace kettlecast;

inline Food water() {
  Food food;
  food.name = "water";
  return food;
}

inline Food oil() {
  Food food;
  food.name = "oil";
  food.composition = {0.0, 0.0, 1.0, 0.0, 0.0, 0.0};
  food.freezing_point = 258.15;
  return food;
}

inline Food carrot() {
  Food food;
  food.name = "carrot";
  food.composition = {0.878, 0.010, 0.002, 0.072, 0.029, 0.009};
  food.freezing_point = 271.75;
  food.juice_fraction = 0.2;
  return food;
}

inline Addition liquid(const Food& food, double mass, double temperature) {
  Addition addition;
  addition.name = food.name;
  addition.food = food;
  addition.mass = mass;
  addition.temperature = temperature;
  return addition;
}

inline Addition pieces(const Food& food, double mass, double temperature, double size) {
  Addition addition = liquid(food, mass, temperature);
  addition.shape = Shape::sphere;
  addition.piece_size = size;
  return addition;
}

/// A kettle for stews: 0.8 m wide, 226 L, 18 kW floor, 6 kW jacket, scraped anchor.
inline Kettle stew_kettle(ControllerKind control = ControllerKind::on_off) {
  Kettle kettle;
  kettle.name = "stew";
  kettle.diameter = 0.80;
  kettle.height = 0.45;
  kettle.floor_power = 18e3;
  kettle.jacket.power = 6e3;
  kettle.jacket.height = 0.25;
  kettle.agitator = AgitatorKind::scraped_anchor;
  kettle.agitator_diameter = 0.76;
  kettle.controller.kind = control;
  return kettle;
}

/// A column of water, 0.2 m wide: its free surface is so small that it hardly loses heat.
inline Kettle column(double room) {
  Kettle kettle;
  kettle.name = "column";
  kettle.diameter = 0.20;
  kettle.height = 2.0;
  kettle.floor_power = 5e3;
  kettle.floor_thickness = 0.005;
  kettle.wall_thickness = 0.001;
  kettle.agitator = AgitatorKind::scraped_anchor;
  kettle.agitator_diameter = 0.19;
  kettle.surroundings.temperature = room;
  return kettle;
}

/// All heat reaches the floor, nothing is lost but from the free surface, the liquid is one.
inline Coefficients without_losses() {
  return Coefficients()
      .with("floor.efficiency", 1.0)
      .with("floor.loss", 0.0)
      .with("wall.loss", 0.0)
      .with("evaporation.factor", 0.02)
      .with("evaporation.lid_factor", 0.0)
      .with("elements.heat_capacity", 0.005)
      .with("elements.lag", 0.5)
      .with("liquid.turnover", 0.05)
      .with("liquid.mixing_turns", 0.2)
      .with("agitator.heat_capacity", 1.0)
      .with("agitator.power_factor", 1e-4)
      .with("probe.lag", 0.2)
      .with("floor_sensor.lag", 0.2);
}

/// A stirred phase under a lid that lasts a given time at a share of the full heat: its set point
/// is too high to be reached.
inline Phase heat_for(double duration, double share) {
  Phase phase;
  phase.name = "heat";
  phase.regulated = share > 0.0 ? Regulated::probe : Regulated::none;
  phase.set_point = share > 0.0 ? 573.15 : 0.0;
  phase.heat_limit = share;
  phase.ends = {{EndKind::elapsed, duration, Regulated::probe}};
  phase.agitation.speed = 2.0;
  phase.cover = Cover::lid;
  return phase;
}

/// An open phase that holds the probe at a set point, stirred at half a turn per second.
inline Phase hold(double set_point, double duration, std::vector<Addition> additions = {}) {
  Phase phase;
  phase.name = "hold";
  phase.regulated = Regulated::probe;
  phase.set_point = set_point;
  phase.ends = {{EndKind::held, duration, Regulated::probe}};
  phase.agitation.speed = 0.5;
  phase.additions = std::move(additions);
  return phase;
}

/// Browning in oil, liquid, frozen pieces, simmering under a lid, reducing in the open.
inline Recipe stew() {
  Phase brown =
      hold(433.15, 120.0, {liquid(oil(), 2.0, 293.15), pieces(carrot(), 8.0, 278.15, 0.015)});
  brown.name = "brown";
  brown.regulated = Regulated::floor;
  brown.additions[1].delay = 200.0;
  brown.additions[1].pour_time = 30.0;
  Phase simmer =
      hold(364.15, 600.0, {liquid(water(), 40.0, 288.15), pieces(carrot(), 20.0, 255.15, 0.02)});
  simmer.name = "simmer";
  simmer.cover = Cover::lid;
  simmer.jacket = JacketUse::heat;
  simmer.additions[0].pour_time = 60.0;
  simmer.additions[1].delay = 90.0;
  simmer.agitation = {0.5, 40.0, 20.0};
  Phase reduce = hold(376.15, 0.0);
  reduce.name = "reduce";
  reduce.ends = {{EndKind::mass_lost, 1.0, Regulated::probe}};
  return {"stew", {brown, simmer, reduce}};
}

inline Forecast run(const Kettle& kettle, const Recipe& recipe,
                    const Coefficients& coefficients = {}, const Start& start = {},
                    const Options& options = {}) {
  return simulate(kettle, coefficients, recipe, start, options);
}

/// Values of one column of a trace.
inline std::vector<double> values_of(const Trace& trace, const std::string& name) {
  const auto found = std::find(trace.names.begin(), trace.names.end(), name);
  if (found == trace.names.end()) throw std::logic_error("no column " + name);
  const auto offset = static_cast<std::size_t>(found - trace.names.begin());
  std::vector<double> values;
  for (std::size_t row = 0; row < trace.rows(); ++row) {
    values.push_back(trace.values[row * trace.columns() + offset]);
  }
  return values;
}

}  // namespace batch
