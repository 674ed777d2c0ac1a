#include <cmath>

#include "batch.hpp"
#include "catch.hpp"
#include "kettlecast/base/errors.hpp"
#include "message.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

Phase water_at(double set_point, double duration, double mass = 30.0) {
  return batch::hold(set_point, duration, {batch::liquid(batch::water(), mass, 290.0)});
}

PhaseReport only(const Phase& phase, const Kettle& kettle = batch::stew_kettle()) {
  return batch::run(kettle, {"one", {phase}}).phases.at(0);
}

double value_at_end(const Forecast& forecast, const char* name) {
  return batch::values_of(forecast.trace, name).back();
}

}  // namespace

TEST_CASE("a hold ends a given time after the set point was reached") {
  const auto report = only(water_at(340.0, 123.0));
  CHECK(report.ended == EndReason::held);
  REQUIRE(report.time_to_reach);
  CHECK_THAT(report.duration, WithinAbs(*report.time_to_reach + 123.0, 1e-6));
}

TEST_CASE("a phase of a given length ends then") {
  Phase phase = water_at(340.0, 0.0);
  phase.ends = {{EndKind::elapsed, 77.0, Regulated::probe}};
  const auto report = only(phase);
  CHECK(report.ended == EndReason::elapsed);
  CHECK_THAT(report.duration, WithinAbs(77.0, 1e-6));
  CHECK_FALSE(report.time_to_reach);
  CHECK_FALSE(report.overshoot);
}

TEST_CASE("a phase ends where a reading rises or falls to its value") {
  Phase up = water_at(350.0, 0.0);
  up.ends = {{EndKind::above, 320.0, Regulated::probe}};
  Phase down = batch::heat_for(1.0, 0.0);
  down.ends = {{EndKind::below, 318.0, Regulated::probe}};
  down.cover = Cover::open;
  const auto forecast = batch::run(batch::stew_kettle(), {"up and down", {up, down}});
  CHECK(forecast.phases[0].ended == EndReason::signal);
  CHECK(forecast.phases[1].ended == EndReason::signal);
  const auto probe = batch::values_of(forecast.trace, "probe.reading");
  const auto phase = batch::values_of(forecast.trace, "phase");
  std::size_t change = 0;
  while (phase[change] < 0.5) ++change;
  // The row at the change belongs to the phase that begins there.
  CHECK_THAT(probe[change], WithinAbs(320.0, 1e-3));
  CHECK_THAT(probe.back(), WithinAbs(318.0, 1e-3));
}

TEST_CASE("a phase ends when a mass of water has left") {
  Phase phase = water_at(385.0, 0.0, 10.0);
  phase.ends = {{EndKind::mass_lost, 0.5, Regulated::probe}};
  const auto forecast = batch::run(batch::stew_kettle(), {"reduce", {phase}});
  CHECK(forecast.phases[0].ended == EndReason::mass_lost);
  CHECK_THAT(forecast.phases[0].evaporated, WithinAbs(0.5, 1e-5));
  CHECK_THAT(forecast.product_mass, WithinAbs(9.5, 1e-5));
}

TEST_CASE("a phase that cannot reach its goal is reported as timed out") {
  Phase phase = water_at(450.0, 10.0);
  phase.time_limit = 600.0;
  const auto report = only(phase);
  CHECK(report.ended == EndReason::timed_out);
  CHECK_THAT(report.duration, WithinAbs(600.0, 1e-6));
  CHECK_FALSE(report.time_to_reach);
}

TEST_CASE("of several ends the first one met counts") {
  Phase phase = water_at(340.0, 30.0);
  phase.ends.push_back({EndKind::elapsed, 40.0, Regulated::probe});
  CHECK(only(phase).ended == EndReason::elapsed);
  phase.ends[1].value = 4000.0;
  CHECK(only(phase).ended == EndReason::held);
}

TEST_CASE("a set point counts only after everything is loaded and has had time to show") {
  // The first water is at the set point from the start; the last pour ends after 400 s.
  Phase phase = water_at(320.0, 0.0);
  phase.additions[0].temperature = 322.0;
  auto late = batch::liquid(batch::water(), 5.0, 322.0);
  late.delay = 390.0;
  late.pour_time = 10.0;
  phase.additions.push_back(late);
  Kettle kettle = batch::stew_kettle();
  kettle.controller.settle_after_pour = 25.0;
  const auto forecast = batch::run(kettle, {"late", {phase}}, {}, {322.0, 322.0});
  const auto& report = forecast.phases[0];
  CHECK_THAT(report.loaded, WithinAbs(400.0, 1e-9));
  REQUIRE(report.time_to_reach);
  CHECK(*report.time_to_reach >= 425.0 - 1e-6);
  const auto probe = batch::values_of(forecast.trace, "probe.reading");
  CHECK(*std::max_element(probe.begin(), probe.end()) > 319.5);
}

TEST_CASE("a pour goes in over its pour time and not before its delay") {
  Phase phase = water_at(340.0, 0.0);
  phase.ends = {{EndKind::elapsed, 100.0, Regulated::probe}};
  phase.additions[0].delay = 20.0;
  phase.additions[0].pour_time = 40.0;
  phase.cover = Cover::oil_film;
  Options options;
  options.output_interval = 10.0;
  const auto forecast = batch::run(batch::stew_kettle(), {"pour", {phase}}, {}, {}, options);
  const auto water = batch::values_of(forecast.trace, "liquid.water");
  REQUIRE(water.size() == 11);
  CHECK_THAT(water[2], WithinAbs(0.0, 1e-9));
  CHECK_THAT(water[4], WithinAbs(15.0, 1e-3));
  CHECK_THAT(water[6], WithinAbs(30.0, 1e-3));
  CHECK_THAT(water[10], WithinAbs(30.0, 1e-3));
}

TEST_CASE("the agitator turns and stands in its cycle") {
  Phase phase = water_at(340.0, 0.0);
  phase.ends = {{EndKind::elapsed, 120.0, Regulated::probe}};
  phase.agitation = {0.6, 20.0, 10.0};
  Options options;
  options.output_interval = 1.0;
  const auto forecast = batch::run(batch::stew_kettle(), {"cycle", {phase}}, {}, {}, options);
  const auto time = batch::values_of(forecast.trace, "time");
  const auto speed = batch::values_of(forecast.trace, "agitator.speed");
  int wrong = 0;
  for (std::size_t i = 0; i < time.size(); ++i) {
    const double in_cycle = std::fmod(time[i], 30.0);
    if (in_cycle < 0.5 || std::fabs(in_cycle - 20.0) < 0.5) continue;
    wrong += speed[i] != (in_cycle < 20.0 ? 0.6 : 0.0);
  }
  CHECK(wrong == 0);
}

TEST_CASE("energy and evaporation of a phase are its own") {
  const auto forecast =
      batch::run(batch::stew_kettle(), {"two", {water_at(330.0, 60.0), batch::hold(350.0, 60.0)}});
  for (const auto& report : forecast.phases) {
    CHECK(report.energy > 0.0);
    CHECK(report.evaporated > 0.0);
  }
  CHECK_THAT(forecast.phases[1].start, WithinAbs(forecast.phases[0].duration, 1e-9));
  CHECK_THAT(value_at_end(forecast, "vapour.mass"),
             WithinRel(forecast.phases[0].evaporated + forecast.phases[1].evaporated, 1e-9));
}

TEST_CASE("impossible input is refused before anything runs") {
  CHECK_THROWS_AS(only(water_at(340.0, 10.0, 500.0)), InvalidArgument);
  CHECK_THROWS_WITH(only(water_at(340.0, 10.0, 500.0)), mentions("additions fill"));
  Phase endless = water_at(340.0, 10.0);
  endless.ends.clear();
  CHECK_THROWS_WITH(only(endless), mentions("never ends"));
  Options options;
  options.output_interval = 0.0;
  const Recipe recipe{"one", {water_at(340.0, 10.0)}};
  CHECK_THROWS_WITH(batch::run(batch::stew_kettle(), recipe, {}, {}, options),
                    mentions("output_interval"));
  CHECK_THROWS_AS(batch::run(batch::stew_kettle(), recipe, {}, {20.0, 20.0}), InvalidArgument);
}

TEST_CASE("a kettle heated with nothing in it is stopped with time, phase and reason") {
  Phase dry = batch::heat_for(3600.0, 1.0);
  dry.name = "forgotten";
  try {
    batch::run(batch::stew_kettle(), {"dry", {dry}});
    FAIL("the dry kettle was not stopped");
  } catch (const IntegrationFailure& failure) {
    CHECK(failure.phase == "forgotten");
    CHECK(failure.component == "floor.temperature");
    CHECK(failure.time > 60.0);
    CHECK(std::string(failure.what()).find("passes 500 degC") != std::string::npos);
  }
}

TEST_CASE("pieces of ice may melt away and their water boil off") {
  const Addition ice = batch::pieces(batch::water(), 0.2, 263.15, 0.02);
  Phase melt = batch::heat_for(1800.0, 0.3);
  melt.additions = {batch::liquid(batch::water(), 5.0, 293.15), ice};
  const auto forecast = batch::run(batch::stew_kettle(), {"ice", {melt}});
  for (double value : forecast.trace.values) CHECK(std::isfinite(value));
}

TEST_CASE("a floor that boils an unstirred pot never gets colder than what it heats") {
  // Second law: all heat comes from the floor, so no node may fall below the coldest start. A
  // floor of poor conduction under still water is where boiling, layers and plate meet.
  Kettle pot = batch::stew_kettle();
  pot.agitator = AgitatorKind::none;
  for (double resistance : {1.0, 5.0, 10.0, 20.0}) {
    for (double turnover : {5e-4, 2e-3, 2e-2}) {
      const auto coefficients = Coefficients()
                                    .with("floor.resistance_factor", resistance)
                                    .with("liquid.turnover", turnover);
      Phase boil = batch::heat_for(2400.0, 1.0);
      boil.agitation.speed = 0.0;
      boil.additions = {batch::liquid(batch::water(), 20.0, 295.15)};
      const auto forecast = batch::run(pot, {"boil", {boil}}, coefficients);
      for (const char* node : {"floor.temperature", "liquid.temperature", "wall.temperature"}) {
        for (double value : batch::values_of(forecast.trace, node)) CHECK(value > 294.0);
      }
      CHECK(batch::values_of(forecast.trace, "liquid.temperature").back() < 376.0);
    }
  }
}

TEST_CASE("the core of a frozen piece in hot water is never colder than it was poured") {
  // Maximum principle of the heat equation: nothing around it is colder.
  for (double size : {0.006, 0.02, 0.05}) {
    Phase thaw = batch::heat_for(2400.0, 0.5);
    thaw.additions = {batch::liquid(batch::water(), 40.0, 360.0),
                      batch::pieces(batch::carrot(), 15.0, 255.15, size)};
    const auto run = batch::run(batch::stew_kettle(), {"thaw", {thaw}});
    for (double core : batch::values_of(run.trace, "carrot.core_temperature")) {
      CHECK(core > 255.15 - 0.01);
    }
  }
}
