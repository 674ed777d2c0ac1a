#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

#include "kettlecast/base/errors.hpp"
#include "kettlecast/control/loop_sums.hpp"
#include "kettlecast/control/switching.hpp"
#include "kettlecast/control/thermostat_cycle.hpp"
#include "kettlecast/numerics/integrator.hpp"
#include "published.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

constexpr double pi = 3.14159265358979323846;

ThermostatLoop loop_of(double off, double on, double time_constant, double dead_time) {
  ThermostatLoop loop;
  loop.off_level = off;
  loop.on_level = on;
  loop.time_constant = time_constant;
  loop.dead_time = dead_time;
  return loop;
}

ThermostatLoop banded(ThermostatLoop loop, double set_point, double half_band) {
  loop.low = set_point - half_band;
  loop.high = set_point + half_band;
  return loop;
}

/// Last of several cycles, stepped with the switch of the library and a queue for the dead time.
ThermostatCycle stepped(const ThermostatLoop& loop, double step) {
  Hysteresis heat{loop.low, loop.high, true};
  std::vector<char> under_way(static_cast<std::size_t>(std::lround(loop.dead_time / step)), 1);
  const double keep = std::exp(-step / loop.time_constant);
  double signal = loop.low, last_on = 0.0, last_off = 0.0;
  ThermostatCycle cycle;
  for (long i = 0, switches = 0; switches < 13; ++i) {
    char& slot = under_way[static_cast<std::size_t>(i) % under_way.size()];
    const double level = slot != 0 ? loop.on_level : loop.off_level;
    slot = heat.on ? 1 : 0;
    signal = level + (signal - level) * keep;
    const bool before = heat.on;
    heat.settle(signal);
    const double time = step * static_cast<double>(i);
    if (switches >= 10) cycle.highest = std::max(cycle.highest, signal);
    if (switches >= 10) cycle.lowest = std::min(cycle.lowest, signal);
    if (before == heat.on) continue;
    if (heat.on) cycle.off_time = time - last_off;
    if (heat.on) cycle.period = time - last_on;
    if (!heat.on) cycle.on_time = time - last_on;
    (heat.on ? last_on : last_off) = time;
    if (++switches == 10) cycle.highest = cycle.lowest = signal;
  }
  return cycle;
}

PiLoop pi_loop(double gain, double integral_time, double weight) {
  PiLoop loop;
  loop.time_constant = 100.0;
  loop.gain = gain;
  loop.integral_time = integral_time;
  loop.set_point_weight = weight;
  return loop;
}

struct Integrated {
  double highest = 0.0, peak_time = 0.0, error_sum = 0.0;
};

/// Unit step of the set point or of the load on a plant of gain 1 and 100 s.
Integrated integrated(const PiLoop& loop, double set_point, double load) {
  Integrator run(
      [&](const State& x, State& dxdt, double) {
        const double error = set_point - x[0];
        const double output = loop.gain * (loop.set_point_weight * set_point - x[0]) + x[1] + load;
        dxdt = {(output - x[0]) / 100.0, loop.gain * error / loop.integral_time, error};
      },
      {{"plant", "integral", "error"}, {1.0, 1.0, 1.0}}, {1e-10, 5.0});
  State x{0.0, 0.0, 0.0}, inside;
  Integrated found;
  run.advance(0.0, 20000.0, x, {}, [&](double begin, double end, const DenseOutput& at) {
    for (int i = 1; i <= 50; ++i) {
      const double time = begin + (end - begin) * i / 50.0;
      at(time, inside);
      if (inside[0] > found.highest) found = {inside[0], time, 0.0};
    }
  });
  found.error_sum = x[2];
  return found;
}

}  // namespace

TEST_CASE("the cycle of a thermostat with dead time is that of a stepped switch") {
  const double step = 0.005;
  for (const ThermostatLoop& loop : {banded(loop_of(20.0, 220.0, 600.0, 30.0), 90.0, 1.0),
                                     banded(loop_of(25.0, 400.0, 1200.0, 45.0), 175.0, 3.0),
                                     banded(loop_of(20.0, 120.0, 50.0, 200.0), 100.0, 5.0)}) {
    const ThermostatCycle sum = thermostat_cycle(loop), run = stepped(loop, step);
    const double steepest = (loop.on_level - loop.off_level) / loop.time_constant;
    CHECK_THAT(run.highest, WithinAbs(sum.highest, 2.0 * step * steepest));
    CHECK_THAT(run.lowest, WithinAbs(sum.lowest, 2.0 * step * steepest));
    CHECK_THAT(run.on_time, WithinAbs(sum.on_time, 4.0 * step));
    CHECK_THAT(run.off_time, WithinAbs(sum.off_time, 4.0 * step));
    CHECK_THAT(run.period, WithinAbs(sum.period, 8.0 * step));
    CHECK_THAT(sum.duty, WithinRel(sum.on_time / (sum.on_time + sum.off_time), 1e-14));
  }
}

TEST_CASE("thermostat on a plant of 600 s with a dead time of 30 s") {
  const auto cycle = thermostat_cycle(banded(loop_of(20.0, 220.0, 600.0, 30.0), 90.0, 1.0));
  check_relative(cycle.highest, published(97.29140424, "degC", "exact switching, stepped too"),
                 1e-9);
  check_relative(cycle.lowest, published(85.63483029, "degC", "exact switching, stepped too"),
                 1e-9);
  check_relative(cycle.on_time, published(54.44930172, "s", "relay formula, Berner (2017)"), 1e-9);
  check_relative(cycle.period, published(152.5350486, "s", "exact switching, stepped too"), 1e-9);
  check_relative(cycle.duty, published(0.3569625618, "-", "exact switching of exponentials"), 1e-9);
}

TEST_CASE("without dead time a thermostat stays in its band") {
  const auto cycle = thermostat_cycle(banded(loop_of(20.0, 220.0, 600.0, 0.0), 90.0, 1.0));
  check_relative(cycle.period, published(26.37497477, "s", "exact switching of exponentials"),
                 1e-9);
  CHECK_THAT(cycle.highest, WithinAbs(91.0, 1e-12));
  CHECK_THAT(cycle.lowest, WithinAbs(89.0, 1e-12));
  CHECK(thermostat_cycle(banded(loop_of(20.0, 220.0, 600.0, 0.0), 90.0, 0.0)).duty == 0.0);
}

TEST_CASE("thermostats that never cycle are refused") {
  const auto plant = loop_of(20.0, 80.0, 600.0, 30.0);
  CHECK_THROWS_AS(thermostat_cycle(banded(plant, 80.0, 1.0)), InvalidArgument);
  CHECK_THROWS_AS(thermostat_cycle(banded(plant, 20.0, 1.0)), InvalidArgument);
  CHECK_THROWS_AS(thermostat_cycle(banded(plant, 50.0, -1.0)), InvalidArgument);
  CHECK_THROWS_AS(thermostat_cycle(banded(loop_of(20.0, 80.0, 0.0, 1.0), 50.0, 1.0)),
                  InvalidArgument);
  CHECK_THROWS_AS(thermostat_cycle(banded(loop_of(20.0, 80.0, 600.0, -1.0), 50.0, 1.0)),
                  InvalidArgument);
}

TEST_CASE("PI on a first-order plant with set-point weight 0") {
  const PiResponse answer = pi_response(pi_loop(2.0, 50.0, 0.0));
  const double root = std::sqrt(1.0 - 0.75 * 0.75);
  check_relative(answer.natural_frequency, published(0.02, "rad/s", "textbook second order"),
                 1e-12);
  check_relative(answer.damping, published(0.75, "-", "textbook second order"), 1e-12);
  check_relative(answer.overshoot, published(0.02837544175, "-", "exp(-pi zeta/sqrt(1-zeta^2))"),
                 1e-9);
  check_relative(answer.peak_time.value(), published(237.4820823, "s", "pi/(wn sqrt(1-zeta^2))"),
                 1e-9);
  CHECK_THAT(answer.overshoot, WithinRel(std::exp(-pi * 0.75 / root), 1e-12));
}

TEST_CASE("the peak of a PI loop is that of the integrated loop") {
  // Gain and integral time of swinging, critically damped (4 G tau / (1 + G)^2) and creeping loops.
  for (const PiLoop& loop :
       {pi_loop(2.0, 50.0, 0.0), pi_loop(2.0, 50.0, 0.4), pi_loop(2.0, 50.0, 1.0),
        pi_loop(20.0, 10.0, 1.0), pi_loop(1.0, 100.0, 1.0), pi_loop(3.0, 75.0, 1.0),
        pi_loop(5.0, 90.0, 1.0), pi_loop(8.0, 60.0, 1.0)}) {
    const PiResponse answer = pi_response(loop);
    const Integrated run = integrated(loop, 1.0, 0.0);
    INFO("damping " << answer.damping);
    CHECK_THAT(std::max(0.0, run.highest - 1.0), WithinAbs(answer.overshoot, 2e-6));
    if (answer.overshoot > 1e-3) {
      CHECK_THAT(run.peak_time, WithinRel(answer.peak_time.value(), 1e-2));
    }
  }
}

TEST_CASE("a creeping loop has no peak without a slow zero") {
  const PiResponse answer = pi_response(pi_loop(3.0, 200.0, 0.0));
  CHECK(answer.damping > 1.0);
  CHECK(answer.overshoot == 0.0);
  CHECK_FALSE(answer.peak_time.has_value());
}

TEST_CASE("integrated error of a load") {
  const PiLoop loop = pi_loop(2.0, 50.0, 0.0);
  check_relative(load_error_integral(loop, 1.0),
                 published(-25.0, "s", "final value theorem: -Ti / Kc"), 1e-12);
  CHECK_THAT(integrated(loop, 0.0, 1.0).error_sum, WithinAbs(-25.0, 1e-6));
}

TEST_CASE("ultimate gain and period") {
  const UltimateCycle cycle = ultimate_cycle(1.0, 100.0, 20.0);
  check_relative(cycle.frequency, published(0.0844341345, "rad/s", "tan(w L) = -w tau"), 1e-9);
  check_relative(cycle.gain, published(8.502424988, "-", "sqrt(1 + (w tau)^2)"), 1e-9);
  check_relative(cycle.period, published(74.41522726, "s", "2 pi / w"), 1e-9);
}

TEST_CASE("the ultimate frequency solves the phase condition for any plant") {
  for (const double ratio : {0.0, 1e-6, 1e-2, 0.5, 1.0, 7.0, 300.0, 1e6}) {
    const double dead_time = 20.0, time_constant = ratio * dead_time;
    const UltimateCycle cycle = ultimate_cycle(2.0, time_constant, dead_time);
    const double w = cycle.frequency;
    INFO("tau / L " << ratio);
    CHECK_THAT(w * dead_time + std::atan(w * time_constant), WithinAbs(pi, 1e-12));
    CHECK(w * dead_time > pi / 2.0);
    CHECK_THAT(w * dead_time, WithinAbs(pi, pi / 2.0));
    CHECK_THAT(cycle.gain * 2.0, WithinRel(std::hypot(1.0, w * time_constant), 1e-13));
  }
  CHECK_THROWS_AS(ultimate_cycle(1.0, 100.0, 0.0), InvalidArgument);
  CHECK_THROWS_AS(ultimate_cycle(0.0, 100.0, 1.0), InvalidArgument);
  CHECK_THROWS_AS(pi_response(pi_loop(-1.0, 10.0, 0.0)), InvalidArgument);
  CHECK_THROWS_AS(pi_response(pi_loop(1.0, 10.0, 1.5)), InvalidArgument);
}
