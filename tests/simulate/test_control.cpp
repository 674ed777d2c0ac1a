#include <cmath>

#include "batch.hpp"
#include "catch.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinAbs;

namespace {

double highest(const std::vector<double>& values) {
  return *std::max_element(values.begin(), values.end());
}

/// Largest floor reading less probe reading of a forecast [K].
double widest_difference(const Forecast& forecast) {
  const auto floor = batch::values_of(forecast.trace, "floor_sensor.reading");
  const auto probe = batch::values_of(forecast.trace, "probe.reading");
  double widest = -1e9;
  for (std::size_t i = 0; i < floor.size(); ++i) widest = std::fmax(widest, floor[i] - probe[i]);
  return widest;
}

Options fine() {
  Options options;
  options.output_interval = 0.5;
  return options;
}

/// Floor held at a temperature over water, with as little lag as there can be.
Forecast floor_held(double dead_band, double heat_limit) {
  Kettle kettle = batch::stew_kettle();
  kettle.controller.dead_band = dead_band;
  Phase phase = batch::hold(345.0, 600.0, {batch::liquid(batch::water(), 40.0, 300.0)});
  phase.regulated = Regulated::floor;
  phase.heat_limit = heat_limit;
  const auto coefficients = Coefficients()
                                .with("elements.heat_capacity", 0.005)
                                .with("elements.lag", 0.5)
                                .with("floor_sensor.lag", 0.2);
  return batch::run(kettle, {"floor", {phase}}, coefficients, {}, fine());
}

}  // namespace

TEST_CASE("a thermostat keeps the reading inside its band, but for the lag of the sensor") {
  const double band = 3.0;
  const auto forecast = floor_held(band, 1.0);
  const auto& report = forecast.phases[0];
  REQUIRE(report.time_to_reach);
  // After the switch the reading runs on for the lags of elements and sensor, 0.7 s, and the
  // thermal wave through half the floor. The floor alone (7854 x 487 J/(m3 K), 15 mm) would rise
  // by 0.85 x 18 kW / 28.8 kJ/K = 0.53 K/s; the wave takes L^2/a = 3.8 s at most.
  const double rate = 0.85 * 18e3 / (7854.0 * 487.0 * 0.015 * 3.14159265358979 * 0.16);
  const double slack = rate * (0.7 + 3.8);
  CHECK(report.overshoot_reading.value() <= slack);
  const auto time = batch::values_of(forecast.trace, "time");
  const auto floor = batch::values_of(forecast.trace, "floor_sensor.reading");
  double lowest = 1e9;
  for (std::size_t i = 0; i < time.size(); ++i) {
    if (time[i] > *report.time_to_reach) lowest = std::fmin(lowest, floor[i]);
  }
  CHECK(lowest >= 345.0 - band - slack);
  CHECK(lowest < 345.0 - band + slack);
}

TEST_CASE("the heat is off above the set point, on below the band, and keeps its state between") {
  const auto forecast = floor_held(3.0, 0.7);
  const auto heat = batch::values_of(forecast.trace, "floor.heat");
  const auto floor = batch::values_of(forecast.trace, "floor_sensor.reading");
  int wrong = 0, switches = 0;
  // The last row of the trace belongs to the end of the phase.
  // The first one is written before the heat comes on.
  for (std::size_t i = 2; i + 1 < heat.size(); ++i) {
    if (floor[i] > 345.0 + 1e-3) wrong += heat[i] != 0.0;
    if (floor[i] < 342.0 - 1e-3) wrong += heat[i] != 0.7;
    switches += heat[i] != heat[i - 1];
    if (heat[i] != heat[i - 1]) {
      // A switch happens within the half second before a row, near one end of the band.
      const double edge = heat[i] == 0.0 ? 345.0 : 342.0;
      CHECK_THAT(floor[i], WithinAbs(edge, 0.5));
    }
  }
  CHECK(wrong == 0);
  CHECK(switches >= 3);
}

TEST_CASE("the share of heat never exceeds the limit of the phase") {
  for (auto control : {ControllerKind::on_off, ControllerKind::proportional_integral}) {
    Phase phase = batch::hold(340.0, 200.0, {batch::liquid(batch::water(), 30.0, 290.0)});
    phase.heat_limit = 0.4;
    const auto forecast =
        batch::run(batch::stew_kettle(control), {"limit", {phase}}, {}, {}, fine());
    const auto heat = batch::values_of(forecast.trace, "floor.heat");
    CHECK_THAT(highest(heat), WithinAbs(0.4, 1e-12));
    CHECK(*std::min_element(heat.begin(), heat.end()) >= 0.0);
  }
}

TEST_CASE("the ceilings on floor and difference hold with both controllers") {
  for (auto control : {ControllerKind::on_off, ControllerKind::proportional_integral}) {
    Phase phase = batch::hold(360.0, 60.0, {batch::liquid(batch::water(), 30.0, 290.0)});
    const auto free = batch::run(batch::stew_kettle(control), {"free", {phase}}, {}, {}, fine());
    const double unlimited = highest(batch::values_of(free.trace, "floor_sensor.reading"));
    phase.floor_limit = unlimited - 10.0;
    const auto capped =
        batch::run(batch::stew_kettle(control), {"capped", {phase}}, {}, {}, fine());
    // Runs on after the switch by the heat stored in elements (0.3 J/(K W), 12 s): full power for
    // one lag into elements and floor, 15.3 kW x 12 s / (5.4 + 28.8) kJ/K = 5.4 K at most.
    const double run_on = 0.85 * 18e3 * 12.0 / (5.4e3 + 28.8e3);
    CHECK(highest(batch::values_of(capped.trace, "floor_sensor.reading")) <=
          unlimited - 10.0 + run_on);
    CHECK(capped.duration > free.duration);
    phase.floor_limit = no_limit;
    const double widest = widest_difference(free);
    phase.difference_limit = 0.7 * widest;
    const auto gentle =
        batch::run(batch::stew_kettle(control), {"gentle", {phase}}, {}, {}, fine());
    CHECK(widest_difference(gentle) <= 0.7 * widest + run_on);
    CHECK(widest_difference(gentle) < widest);
    CHECK(gentle.duration > free.duration);
  }
}

TEST_CASE("a difference between floor and probe can be regulated") {
  Phase phase = batch::hold(12.0, 300.0, {batch::liquid(batch::water(), 40.0, 290.0)});
  phase.regulated = Regulated::difference;
  const auto forecast = batch::run(batch::stew_kettle(), {"difference", {phase}}, {}, {}, fine());
  CHECK(forecast.phases[0].ended == EndReason::held);
  CHECK(forecast.phases[0].peak_reading < 12.0 + 6.0);
}

TEST_CASE("a PI controller holds the probe without an error in the long run") {
  Phase phase = batch::hold(345.0, 5400.0, {batch::liquid(batch::water(), 30.0, 300.0)});
  const auto forecast =
      batch::run(batch::stew_kettle(ControllerKind::proportional_integral), {"hold", {phase}});
  // Integral action leaves no offset; what is left is the slow drift of the evaporating batch.
  CHECK_THAT(batch::values_of(forecast.trace, "probe.reading").back(), WithinAbs(345.0, 0.1));
}

TEST_CASE("the heat stays on for its shortest time") {
  Kettle kettle = batch::stew_kettle();
  kettle.controller.minimum_on_time = 45.0;
  kettle.controller.dead_band = 0.1;
  Phase phase = batch::hold(330.0, 1200.0, {batch::liquid(batch::water(), 20.0, 320.0)});
  const auto forecast = batch::run(kettle, {"short", {phase}}, {}, {}, fine());
  const auto heat = batch::values_of(forecast.trace, "floor.heat");
  const auto time = batch::values_of(forecast.trace, "time");
  double on_since = 0.0, shortest = 1e9;
  for (std::size_t i = 1; i < heat.size(); ++i) {
    if (heat[i] > heat[i - 1]) on_since = time[i];
    if (heat[i] < heat[i - 1]) shortest = std::fmin(shortest, time[i] - on_since);
  }
  CHECK(shortest >= 45.0 - 0.5);
  CHECK(shortest < 1e8);
}

TEST_CASE("the jacket stays below its limit") {
  Phase phase = batch::hold(340.0, 600.0, {batch::liquid(batch::water(), 40.0, 290.0)});
  phase.jacket = JacketUse::heat;
  phase.jacket_limit = 345.0;
  const auto forecast = batch::run(batch::stew_kettle(), {"jacket", {phase}});
  CHECK(highest(batch::values_of(forecast.trace, "jacket.temperature")) <= 345.0);
  CHECK(highest(batch::values_of(forecast.trace, "jacket.temperature")) > 335.0);
}

TEST_CASE("the heat in the trace adds up to the energy of the books") {
  for (auto control : {ControllerKind::on_off, ControllerKind::proportional_integral}) {
    const Phase phase = batch::hold(345.0, 1200.0, {batch::liquid(batch::water(), 30.0, 300.0)});
    const auto forecast = batch::run(batch::stew_kettle(control), {"sum", {phase}}, {}, {}, fine());
    const auto time = batch::values_of(forecast.trace, "time");
    const auto heat = batch::values_of(forecast.trace, "floor.heat");
    double sum = 0.0;
    int switches = 1;  // on at the start
    for (std::size_t i = 1; i < time.size(); ++i) {
      sum += 0.5 * (heat[i] + heat[i - 1]) * (time[i] - time[i - 1]);
      switches += std::fabs(heat[i] - heat[i - 1]) > 0.5;
    }
    // 0.85 of 18 kW; each switch is known to half of half a second, the rest to 1e-4.
    const double energy = forecast.balance.heater_energy;
    CHECK_THAT(0.85 * 18e3 * sum, WithinAbs(energy, 0.85 * 18e3 * 0.25 * switches + 1e-4 * energy));
  }
}
