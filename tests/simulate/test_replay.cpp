#include <cmath>

#include "batch.hpp"
#include "catch.hpp"
#include "kettlecast/base/errors.hpp"
#include "kettlecast/simulate/replay.hpp"
#include "message.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinAbs;

namespace {

/// The drive signals of a forecast as a log would hold them; read every tenth row and at the end.
RunPlan logged(const Forecast& forecast, const Recipe& recipe, const Kettle& kettle) {
  RunPlan plan;
  plan.signals = {batch::values_of(forecast.trace, "time"),
                  batch::values_of(forecast.trace, "floor.heat"),
                  batch::values_of(forecast.trace, "jacket.heat"),
                  batch::values_of(forecast.trace, "agitator.speed")};
  for (std::size_t i = 0; i < recipe.phases.size(); ++i) {
    const auto& phase = recipe.phases[i];
    const double start = forecast.phases[i].start;
    plan.settings.push_back({start, phase.cover, phase.jacket_limit});
    for (const auto& addition : phase.additions)
      plan.pours.push_back({start + addition.delay, addition});
  }
  plan.surroundings = kettle.surroundings;
  for (std::size_t i = 0; i + 1 < plan.signals.time.size(); i += 10)
    plan.output_times.push_back(plan.signals.time[i]);
  plan.output_times.push_back(forecast.duration);
  return plan;
}

RunPlan short_plan() {
  RunPlan plan;
  plan.signals = {{0.0, 10.0}, {0.0, 1.0}, {0.0, 0.0}, {0.0, 0.0}};
  plan.output_times = {10.0};
  return plan;
}

}  // namespace

TEST_CASE("the replay of a forecast's own signals shows its readings") {
  const double interval = 0.25;
  Options options;
  options.output_interval = interval;
  const Kettle kettle = batch::stew_kettle();
  const Recipe recipe = batch::stew();
  const auto forecast = batch::run(kettle, recipe, {}, {}, options);
  const auto plan = logged(forecast, recipe, kettle);
  const auto again = replay(kettle, {}, plan, options);
  const auto floor = batch::values_of(forecast.trace, "floor_sensor.reading");
  const auto probe = batch::values_of(forecast.trace, "probe.reading");
  const auto heat = batch::values_of(forecast.trace, "floor.heat");
  int switches = 0;
  double worst_floor = 0.0, worst_probe = 0.0;
  for (std::size_t i = 1; i < heat.size(); ++i) switches += heat[i] != heat[i - 1];
  for (std::size_t i = 0; i + 1 < plan.output_times.size(); ++i) {
    worst_floor = std::fmax(worst_floor, std::fabs(again.floor_reading[i] - floor[10 * i]));
    worst_probe = std::fmax(worst_probe, std::fabs(again.probe_reading[i] - probe[10 * i]));
  }
  // Each switch is known to half an interval. Bound: all of them wrong the same way. Floor (28.8
  // kJ/K) and the smallest batch, 2 kg of oil and 8 kg of pieces (some 30 kJ/K), take 15.3 kW.
  const double energy = switches * 0.5 * interval * 0.85 * 18e3;
  INFO("switches " << switches << " floor " << worst_floor << " K, probe " << worst_probe << " K");
  CHECK(worst_floor < energy / 28.8e3);
  CHECK(worst_probe < energy / 30e3);
  // The jacket (6 kW) comes on with its phase and goes off with it.
  CHECK_THAT(again.balance.heater_energy,
             WithinAbs(forecast.balance.heater_energy, energy + 2.0 * 0.5 * interval * 6e3));
  CHECK(std::fabs(again.balance.heat_residual) < 1e-6);
  CHECK(std::fabs(again.balance.mass_residual) < 1e-6);
}

TEST_CASE("a sample holds from halfway before its time to halfway after it") {
  // Heat logged as off, off, on, off with 10 s in between: on from 15 s to 25 s.
  RunPlan plan;
  plan.signals = {
      {0.0, 10.0, 20.0, 30.0}, {0.0, 0.0, 1.0, 0.0}, {0.0, 0.0, 0.0, 0.0}, {0.0, 0.0, 0.0, 0.0}};
  const auto heat_until = [&](double time) {
    plan.output_times = {time};
    return replay(batch::stew_kettle(), Coefficients().with("floor.efficiency", 1.0), plan)
        .balance.heater_energy;
  };
  CHECK_THAT(heat_until(20.0), WithinAbs(18e3 * 5.0, 0.1));
  CHECK_THAT(heat_until(40.0), WithinAbs(18e3 * 10.0, 0.1));
}

TEST_CASE("readings come at the times asked for, whatever their number") {
  RunPlan plan = short_plan();
  plan.pours = {{0.0, batch::liquid(batch::water(), 20.0, 330.0)}};
  plan.output_times = {0.0, 2.5, 10.0};
  const auto few = replay(batch::stew_kettle(), {}, plan);
  plan.output_times = {0.0, 1.0, 2.5, 3.0, 7.7, 10.0};
  const auto many = replay(batch::stew_kettle(), {}, plan);
  REQUIRE(few.probe_reading.size() == 3);
  REQUIRE(many.probe_reading.size() == 6);
  CHECK(few.probe_reading[1] == many.probe_reading[2]);
  CHECK(few.probe_reading[2] == many.probe_reading[5]);
}

TEST_CASE("a plan that cannot be replayed is refused with the reason") {
  const Kettle kettle = batch::stew_kettle();
  const auto refused = [&](const RunPlan& plan, const char* reason) {
    CHECK_THROWS_AS(replay(kettle, {}, plan), InvalidArgument);
    CHECK_THROWS_WITH(replay(kettle, {}, plan), mentions(reason));
  };
  RunPlan plan = short_plan();
  plan.signals.time = {10.0, 0.0};
  refused(plan, "signal times must rise; entry 1");
  plan = short_plan();
  plan.signals.floor_heat = {0.0};
  refused(plan, "as many values as times");
  plan = short_plan();
  plan.signals.floor_heat = {0.0, 18000.0};
  refused(plan, "floor_heat must be between");
  plan = short_plan();
  plan.output_times = {};
  refused(plan, "at least two samples");
  plan = short_plan();
  plan.output_times = {5.0, std::nan("")};
  refused(plan, "output times must rise; entry 1");
  plan = short_plan();
  plan.surroundings.temperature = 23.0;
  refused(plan, "temperature must be between");
}

TEST_CASE("a kettle at rest in its room shows what it showed, whatever its sensors are off by") {
  // Zeroth law: floor and product at the temperature of the room have no reason to change. Readings
  // off by the offsets are no other temperatures.
  const Kettle kettle = batch::stew_kettle();
  const double room = kettle.surroundings.temperature;
  const auto offsets = Coefficients().with("floor_sensor.offset", 3.0).with("probe.offset", -2.0);
  RunPlan plan;
  plan.signals = {{0.0, 600.0}, {0.0, 0.0}, {0.0, 0.0}, {0.0, 0.0}};
  plan.surroundings = kettle.surroundings;
  plan.output_times = {0.0, 60.0, 600.0};
  plan.start = {room + 3.0, room - 2.0, true};
  const auto as_read = replay(kettle, offsets, plan);
  plan.start = {room, room};
  const auto as_is = replay(kettle, offsets, plan);
  for (std::size_t i = 0; i < plan.output_times.size(); ++i) {
    for (const auto& shown : {as_read, as_is}) {
      CHECK_THAT(shown.floor_reading[i], WithinAbs(room + 3.0, 1e-6));
      CHECK_THAT(shown.probe_reading[i], WithinAbs(room - 2.0, 1e-6));
    }
  }
}
