// Rules of a phase: share lost, core probe, reversing agitator and its break points.
#include <cmath>

#include "batch.hpp"
#include "catch.hpp"
#include "kettlecast/base/errors.hpp"
#include "message.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

Phase boil_until(EndKind kind, double value, std::vector<Addition> additions = {}) {
  Phase phase = batch::hold(385.0, 0.0, std::move(additions));
  phase.ends = {{kind, value, Regulated::probe}};
  return phase;
}

Forecast run(std::vector<Phase> phases, const Options& options = {}) {
  return batch::run(batch::stew_kettle(), {"rules", std::move(phases)}, {}, {}, options);
}

/// Carrots in hot water until the core probe shows a temperature.
Phase cook_to(double core) {
  Phase phase = batch::hold(362.0, 0.0,
                            {batch::liquid(batch::water(), 60.0, 355.0),
                             batch::pieces(batch::carrot(), 4.0, 280.0, 0.03)});
  phase.ends = {{EndKind::above, core, Regulated::core}};
  return phase;
}

/// A phase of two minutes that is stirred in some way.
Phase stirred(const Agitation& agitation) {
  Phase phase = batch::hold(340.0, 0.0, {batch::liquid(batch::water(), 30.0, 290.0)});
  phase.ends = {{EndKind::elapsed, 120.0, Regulated::probe}};
  phase.agitation = agitation;
  return phase;
}

Agitation reversing(double speed, double on_time, double off_time) {
  Agitation agitation{speed, on_time, off_time};
  agitation.reversing = true;
  return agitation;
}

}  // namespace

TEST_CASE("a phase ends when a share of what it holds has left") {
  const auto water = batch::liquid(batch::water(), 10.0, 360.0);
  const auto forecast = run({boil_until(EndKind::share_lost, 0.06, {water})});
  CHECK(forecast.phases[0].ended == EndReason::mass_lost);
  CHECK_THAT(forecast.phases[0].evaporated, WithinAbs(0.6, 1e-5));
}

TEST_CASE("the share counts what was there and what is poured in the phase, late pours too") {
  auto late = batch::liquid(batch::water(), 6.0, 350.0);
  late.delay = 100.0;
  late.pour_time = 30.0;
  const auto forecast =
      run({boil_until(EndKind::mass_lost, 0.5, {batch::liquid(batch::water(), 10.0, 360.0)}),
           boil_until(EndKind::share_lost, 0.1, {late}), boil_until(EndKind::share_lost, 0.1)});
  CHECK_THAT(forecast.phases[1].evaporated, WithinAbs(0.1 * (9.5 + 6.0), 1e-4));
  // The next phase starts from what is left.
  CHECK_THAT(forecast.phases[2].evaporated, WithinAbs(0.1 * 0.9 * 15.5, 1e-4));
  CHECK_THAT(forecast.product_mass, WithinAbs(0.81 * 15.5, 2e-4));
}

TEST_CASE("a share and the mass it makes end a phase at the same time") {
  const auto water = batch::liquid(batch::water(), 12.0, 360.0);
  const auto share = run({boil_until(EndKind::share_lost, 0.05, {water})});
  const auto mass = run({boil_until(EndKind::mass_lost, 0.6, {water})});
  CHECK_THAT(share.duration, WithinAbs(mass.duration, 1e-4));
}

TEST_CASE("a phase that watches its core ends when the coldest piece has come so far") {
  const auto forecast = run({cook_to(345.0)});
  CHECK(forecast.phases[0].ended == EndReason::signal);
  const auto reading = batch::values_of(forecast.trace, "core_probe.reading");
  const auto core = batch::values_of(forecast.trace, "carrot.core_temperature");
  const auto time = batch::values_of(forecast.trace, "time");
  CHECK_THAT(reading.back(), WithinAbs(345.0, 1e-3));
  // A first-order lag of 12 s on a rise: the core is ahead by rate times lag, which falls while it
  // bends; by the rate a lag ago at most and the rate at the end at least.
  const std::size_t n = time.size() - 1;
  const double now = (core[n] - core[n - 2]) / (time[n] - time[n - 2]);
  const double before = (core[n - 8] - core[n - 16]) / (time[n - 8] - time[n - 16]);
  CHECK(core[n] - reading[n] > 12.0 * now);
  CHECK(core[n] - reading[n] < 12.0 * before);
  // The liquid was there long before.
  CHECK(batch::values_of(forecast.trace, "probe.reading").back() > 350.0);
}

TEST_CASE("a core probe without pieces reads what the product probe reads") {
  Phase phase = batch::hold(340.0, 30.0, {batch::liquid(batch::water(), 30.0, 290.0)});
  phase.regulated = Regulated::core;
  const auto by_core = run({phase});
  phase.regulated = Regulated::probe;
  const auto by_probe = run({phase});
  // The product probe feels the headspace through 6 cm of water by e^-40.
  CHECK_THAT(by_core.duration, WithinAbs(by_probe.duration, 1e-3));
}

TEST_CASE("a core can be regulated: it is reached later than the liquid, and held") {
  Phase phase = cook_to(345.0);
  phase.set_point = 335.0;
  phase.ends = {{EndKind::held, 120.0, Regulated::probe}};
  const auto by_probe = run({phase});
  phase.regulated = Regulated::core;
  const auto by_core = run({phase});
  REQUIRE(by_core.phases[0].time_to_reach);
  CHECK(*by_core.phases[0].time_to_reach > *by_probe.phases[0].time_to_reach + 10.0);
  CHECK(by_core.phases[0].ended == EndReason::held);
  // Overshoot is that of the core, which the hot liquid drives on.
  CHECK(by_core.phases[0].overshoot.value() > 0.0);
}

TEST_CASE("a reversing agitator turns the other way in every second cycle") {
  Options options;
  options.output_interval = 1.0;
  for (double off : {0.0, 5.0}) {
    const auto forecast = run({stirred(reversing(0.6, 10.0, off))}, options);
    const auto time = batch::values_of(forecast.trace, "time");
    const auto speed = batch::values_of(forecast.trace, "agitator.speed");
    const double cycle = 10.0 + off;
    int wrong = 0, looked_at = 0;
    for (std::size_t i = 0; i < time.size(); ++i) {
      const double place = std::fmod(time[i], 2.0 * cycle), in_cycle = std::fmod(place, cycle);
      // At a change a row may belong to either side of it.
      if (in_cycle < 0.5 || in_cycle > cycle - 0.5 || std::fabs(in_cycle - 10.0) < 0.5) continue;
      const double sign = place < cycle ? 1.0 : -1.0;
      wrong += speed[i] != (in_cycle < 10.0 ? sign * 0.6 : 0.0);
      ++looked_at;
    }
    CHECK(wrong == 0);
    CHECK(looked_at > 80);
  }
}

TEST_CASE("turning back and forth without a rest heats as turning on and on") {
  const auto steady = run({stirred({0.6, 0.0, 0.0})});
  const auto turning = run({stirred(reversing(0.6, 7.0, 0.0))});
  CHECK_THAT(turning.balance.stirring_energy, WithinRel(steady.balance.stirring_energy, 1e-4));
  CHECK_THAT(batch::values_of(turning.trace, "product.temperature").back(),
             WithinAbs(batch::values_of(steady.trace, "product.temperature").back(), 1e-3));
}

TEST_CASE("no pulse of the agitator is stepped over") {
  // In a kettle where nothing else happens the work is power times the time that it turns.
  Kettle kettle = batch::stew_kettle();
  kettle.surroundings.temperature = 300.0;
  kettle.surroundings.relative_humidity = 1.0;
  const auto work = [&](const Agitation& agitation) {
    Phase phase = batch::heat_for(600.0, 0.0);
    phase.agitation = agitation;
    phase.additions = {batch::liquid(batch::water(), 60.0, 300.0)};
    return batch::run(kettle, {"pulses", {phase}}, {}, {300.0, 300.0}).balance.stirring_energy;
  };
  const double steady = work({0.5, 0.0, 0.0});
  CHECK(steady > 0.0);
  CHECK_THAT(work({0.5, 1.0, 19.0}), WithinRel(steady / 20.0, 1e-4));
  CHECK_THAT(work(reversing(0.5, 1.0, 19.0)), WithinRel(steady / 20.0, 1e-4));
  CHECK_THAT(work(reversing(0.5, 20.0, 5.0)), WithinRel(steady * 0.8, 1e-4));
}

TEST_CASE("rules that cannot be are refused by name") {
  const auto refused = [](const Phase& phase, const char* what) {
    CHECK_THROWS_WITH(run({phase}), mentions(what));
  };
  refused(boil_until(EndKind::share_lost, 0.99), "share lost must be between 0 and 0.95");
  refused(stirred(reversing(0.5, 0.0, 0.0)), "reversing agitation needs an on_time");
  Phase level = stirred({0.5, 0.0, 0.0});
  level.jacket_share = 1.5;
  refused(level, "jacket_share must be between 0 and 1");
}
