// Slopes of replays and forecasts: against closed forms across events, and against quotients of
// differences for every lever.
#include <cmath>
#include <functional>

#include "batch.hpp"
#include "catch.hpp"
#include "kettlecast/base/errors.hpp"
#include "kettlecast/simulate/sensitivity.hpp"
#include "message.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

constexpr double mass = 58.0;

Lever by(const std::string& name) {
  return {LeverKind::coefficient, static_cast<std::size_t>(coefficient_named(name))};
}

double degrees(double celsius) { return 273.15 + celsius; }

/// Heats a column of water from 40 to 60 degC by its probe, lets it stand, heats it for a minute.
Recipe heat_to_sixty() {
  Phase heat = batch::heat_for(7200.0, 1.0);
  heat.additions = {batch::liquid(batch::water(), mass, degrees(40.0))};
  heat.set_point = degrees(60.0);
  heat.ends = {{EndKind::above, degrees(60.0), Regulated::probe}};
  return {"heat", {heat, batch::heat_for(600.0, 0.0), batch::heat_for(60.0, 1.0)}};
}

/// How results of a forecast change with one lever.
struct Slopes {
  double duration, first, energy, last_start;
};

Slopes column_slopes(const Lever& lever) {
  const auto found = simulate_slopes(batch::column(degrees(60.0)), batch::without_losses(),
                                     heat_to_sixty(), {degrees(40.0), degrees(40.0)}, {lever});
  return {found.duration[0], found.slopes[0].duration[0], found.slopes[0].energy[0],
          found.slopes[2].start[0]};
}

/// Logged signals for half an hour with a pour, agitation and a lid.
RunPlan plan() {
  RunPlan plan;
  for (double time = 0.0; time <= 1800.0; time += 30.0) {
    plan.signals.time.push_back(time);
    plan.signals.floor_heat.push_back(time < 900.0 || time > 1400.0 ? 1.0 : 0.0);
    plan.signals.jacket_heat.push_back(time > 600.0 ? 1.0 : 0.0);
    plan.signals.agitator_speed.push_back(time < 1100.0 ? 0.5 : 0.0);
  }
  Addition water = batch::liquid(batch::water(), 30.0, 288.15);
  water.pour_time = 40.0;
  plan.pours = {{5.0, water}, {400.0, batch::pieces(batch::carrot(), 10.0, 278.15, 0.02)}};
  plan.settings = {{0.0, Cover::open, 371.15}, {1000.0, Cover::lid, 371.15}};
  // Off the times of pours, at which slopes by their delay have two sides.
  for (double time = 17.0; time <= 1800.0; time += 20.0) plan.output_times.push_back(time);
  return plan;
}

/// Largest |a - b| and largest |b|.
std::pair<double, double> apart(const std::vector<double>& a, const std::vector<double>& b) {
  double difference = 0.0, size = 0.0;
  for (std::size_t i = 0; i < b.size(); ++i) {
    difference = std::max(difference, std::fabs(a[i] - b[i]));
    size = std::max(size, std::fabs(b[i]));
  }
  return {difference, size};
}

}  // namespace

TEST_CASE("a heat-up without losses has the slopes of its closed form") {
  // t = C (T1 - T0) / (eta P): dt/d eta = -t/eta, dt/dT1 = C/(eta P) = t / 20 K. The time to the
  // set point is an event, what follows is two phases later.
  const auto forecast = batch::run(batch::column(degrees(60.0)), heat_to_sixty(),
                                   batch::without_losses(), {degrees(40.0), degrees(40.0)});
  const double time = forecast.phases[0].duration;
  const auto by_efficiency = column_slopes(by("floor.efficiency"));
  // 1e-2: the floor is ahead of the water by more where more power passes it.
  CHECK_THAT(by_efficiency.first, WithinRel(-time, 1e-2));
  CHECK_THAT(by_efficiency.duration, WithinRel(by_efficiency.first, 1e-12));
  CHECK_THAT(by_efficiency.last_start, WithinRel(by_efficiency.first, 1e-12));
  // E = eta P t, whatever the losses: dE/d eta = P (t + dt/d eta).
  CHECK_THAT(by_efficiency.energy,
             WithinAbs(5e3 * (time + by_efficiency.first), 1e-5 * forecast.phases[0].energy));
}

TEST_CASE("colder and more water lengthen a heat-up as its closed form says") {
  // Water takes 4180 J/(kg K) between 40 and 60 degC (IAPWS-IF97, mean), metal the rest of the
  // heat.
  const double of_water = mass * 4180.0 / 5e3;
  const auto warmer = column_slopes({LeverKind::addition_temperature, 0});
  CHECK_THAT(warmer.first, WithinRel(-of_water, 2e-3));
  // d t / d ln m = m cp dT / P and the wall that more water wets.
  const auto more = column_slopes({LeverKind::addition_mass, 0});
  CHECK_THAT(more.first, WithinRel(20.0 * of_water, 2e-2));
  // A phase of a fixed time does not wait for hands.
  Recipe late = heat_to_sixty();
  late.phases[0].additions[0].delay = 60.0;
  late.phases[0].heat_limit = 1e-6;
  late.phases[0].ends = {{EndKind::elapsed, 600.0, Regulated::probe}};
  const auto found =
      simulate_slopes(batch::column(degrees(60.0)), batch::without_losses(), late,
                      {degrees(40.0), degrees(40.0)}, {{LeverKind::addition_delay, 0}});
  CHECK(found.slopes[0].duration[0] == 0.0);
}

TEST_CASE("replays have the slopes of quotients of differences, for every coefficient") {
  const Kettle kettle = batch::stew_kettle();
  const Coefficients middle;
  Options fine;
  fine.tolerance = 1e-9;
  std::vector<Lever> levers;
  for (const auto& card : coefficient_cards()) levers.push_back(by(std::string(card.name)));
  const auto found = replay_slopes(kettle, middle, plan(), levers, fine);
  for (std::size_t k = 0; k < levers.size(); ++k) {
    const auto& card = coefficient_cards()[k];
    const std::string name(card.name);
    const double unit = card.positive ? card.spread * card.value : card.spread;
    const double step = 1e-3 * unit;
    const auto above = replay(kettle, middle.with(name, card.value + step), plan(), fine);
    const auto below = replay(kettle, middle.with(name, card.value - step), plan(), fine);
    std::vector<double> quotient, slope;
    for (std::size_t i = 0; i < above.probe_reading.size(); ++i) {
      quotient.push_back((above.probe_reading[i] - below.probe_reading[i]) / 2e-3);
      slope.push_back(found.probe_reading[i * levers.size() + k] * unit);
      quotient.push_back((above.floor_reading[i] - below.floor_reading[i]) / 2e-3);
      slope.push_back(found.floor_reading[i * levers.size() + k] * unit);
    }
    const auto [difference, size] = apart(slope, quotient);
    INFO(name << ": up to " << size << " K per spread");
    // 1e-4 of the slope, and the 1e-3 of a spread in which results bend.
    CHECK(difference < 1e-3 * size + 1e-4);
  }
}

TEST_CASE("forecasts have the slopes of quotients of differences, for levers of the recipe") {
  const Kettle kettle = batch::stew_kettle();
  Options fine;
  fine.tolerance = 1e-9;
  fine.output_interval = 3600.0;
  const auto total = [&](const Recipe& recipe) {
    return batch::run(kettle, recipe, {}, {}, fine).duration;
  };
  const auto quotient = [&](double step, const std::function<void(Recipe&, double)>& change) {
    Recipe above = batch::stew(), below = batch::stew();
    change(above, step);
    change(below, -step);
    return (total(above) - total(below)) / (2.0 * step);
  };
  const auto total_from = [&](double warmer) {
    const Start start{295.15 + warmer, 295.15 + warmer};
    return batch::run(kettle, batch::stew(), {}, start, fine).duration;
  };
  // Additions in order: oil, carrot, water, carrot.
  const std::vector<Lever> levers{
      {LeverKind::addition_delay, 1}, {LeverKind::addition_temperature, 2},
      {LeverKind::addition_mass, 2},  {LeverKind::addition_mass, 3},
      {LeverKind::set_point, 1},      {LeverKind::start, 0}};
  const auto found = simulate_slopes(kettle, {}, batch::stew(), {}, levers, fine);
  const std::vector<double> expected{
      quotient(1e-2, [](Recipe& r, double d) { r.phases[0].additions[1].delay += d; }),
      quotient(1e-2, [](Recipe& r, double d) { r.phases[1].additions[0].temperature += d; }),
      quotient(1e-4, [](Recipe& r, double d) { r.phases[1].additions[0].mass *= 1.0 + d; }),
      quotient(1e-4, [](Recipe& r, double d) { r.phases[1].additions[1].mass *= 1.0 + d; }),
      quotient(1e-3, [](Recipe& r, double d) { r.phases[1].set_point += d; }),
      (total_from(0.01) - total_from(-0.01)) / 0.02};
  for (std::size_t k = 0; k < levers.size(); ++k) {
    INFO("lever " << k);
    CHECK_THAT(found.duration[k], WithinRel(expected[k], 5e-3) || WithinAbs(expected[k], 5e-3));
  }
}

TEST_CASE("a pour that starts with its phase has the slope of a later one") {
  const Kettle kettle = batch::stew_kettle();
  Options fine;
  fine.tolerance = 1e-9;
  fine.output_interval = 3600.0;
  for (const double pour_time : {0.0, 30.0}) {
    Recipe plan = batch::stew();
    plan.phases[1].additions[0].pour_time = pour_time;
    Recipe moved = plan;
    moved.phases[1].additions[0].delay += 1e-2;
    const double quotient = (batch::run(kettle, moved, {}, {}, fine).duration -
                             batch::run(kettle, plan, {}, {}, fine).duration) /
                            1e-2;
    const auto found =
        simulate_slopes(kettle, {}, plan, {}, {{LeverKind::addition_delay, 2}}, fine);
    INFO("poured over " << pour_time << " s");
    CHECK_THAT(found.duration[0], WithinAbs(quotient, 0.02));
  }
}

TEST_CASE("a forecast in slopes reports what the plain one reports") {
  const auto plain = batch::run(batch::stew_kettle(), batch::stew());
  const auto found = simulate_slopes(batch::stew_kettle(), {}, batch::stew(), {},
                                     {by("floor.efficiency"), by("probe.lag")});
  REQUIRE(found.phases.size() == plain.phases.size());
  for (std::size_t i = 0; i < plain.phases.size(); ++i) {
    CHECK_THAT(found.phases[i].duration, WithinAbs(plain.phases[i].duration, 0.05));
    CHECK(found.phases[i].ended == plain.phases[i].ended);
    CHECK(found.slopes[i].duration.size() == 2);
  }
}

TEST_CASE("slopes by many levers do not depend on how they are grouped") {
  std::vector<Lever> many;
  for (const auto& card : coefficient_cards()) many.push_back(by(std::string(card.name)));
  const auto together = replay_slopes(batch::stew_kettle(), {}, plan(), many);
  const auto alone = replay_slopes(batch::stew_kettle(), {}, plan(), {many[11]});
  for (std::size_t i = 0; i < plan().output_times.size(); ++i) {
    // Steps differ with the slopes they carry, within the tolerance of slopes.
    CHECK_THAT(together.probe_reading[i * many.size() + 11],
               WithinAbs(alone.probe_reading[i], 0.05));
  }
}

TEST_CASE("a lever that does not exist is refused with what there is") {
  CHECK_THROWS_WITH(
      simulate_slopes(batch::stew_kettle(), {}, batch::stew(), {}, {{LeverKind::set_point, 3}}),
      mentions("index 3, there are 3"));
  CHECK_THROWS_AS(replay_slopes(batch::stew_kettle(), {}, plan(), {{LeverKind::addition_mass, 2}}),
                  InvalidArgument);
}

TEST_CASE("a plan in closed loop reads what the forecast shows") {
  RunPlan loop;
  loop.closed_loop = batch::stew().phases;
  const auto forecast = batch::run(batch::stew_kettle(), batch::stew());
  const auto times = batch::values_of(forecast.trace, "time");
  const auto probes = batch::values_of(forecast.trace, "probe.reading");
  std::vector<double> expected;
  for (std::size_t i = 0; i < times.size(); i += 20) {
    loop.output_times.push_back(times[i]);
    expected.push_back(probes[i]);
  }
  loop.output_times.push_back(forecast.duration + 600.0);
  expected.push_back(probes.back());  // after the end the reading stays
  const auto shown = replay(batch::stew_kettle(), {}, loop);
  const auto [difference, size] = apart(shown.probe_reading, expected);
  CHECK(difference < 0.05);  // stops for output do not change steps, but times are rounded
}
