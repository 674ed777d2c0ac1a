#include <cmath>

#include "kettlecast/control/switching.hpp"
#include "kettlecast/numerics/integrator.hpp"
#include "published.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinAbs;

namespace {

struct Cycle {
  double on_time, period, highest;
};

/// A thermostat on a first-order plant between 20 and 220 degC with 600 s: second full cycle.
Cycle run_thermostat(double low, double high) {
  Hysteresis heat{low, high, true};
  Integrator plant([&](const State& x, State& dxdt,
                       double) { dxdt = {((heat.on ? 220.0 : 20.0) - x[0]) / 600.0}; },
                   {{"plant.temperature"}, {100.0}}, {});
  State x{20.0};
  double time = 0.0, switched_on = 0.0;
  Cycle cycle{};
  for (int switches = 0; switches < 6; ++switches) {
    const Watch watch{[&](double, const State& s) { return s[0] - heat.threshold(); },
                      heat.on ? Crossing::rising : Crossing::falling};
    const Stop stop =
        plant.advance(time, 1e4, x, {watch}, [](double, double, const DenseOutput&) {});
    if (heat.on) cycle.on_time = stop.time - switched_on;
    if (!heat.on) cycle.period = stop.time - switched_on;
    if (!heat.on) switched_on = stop.time;
    cycle.highest = std::fmax(switches == 0 ? 0.0 : cycle.highest, x[0]);
    time = stop.time;
    heat.on = !heat.on;
  }
  return cycle;
}

}  // namespace

TEST_CASE("a switch keeps its state inside the band") {
  Hysteresis heat{353.15, 355.15, false};
  heat.settle(354.0);
  CHECK_FALSE(heat.on);
  heat.settle(353.15);
  CHECK(heat.on);
  CHECK(heat.threshold() == 355.15);
  heat.settle(354.0);
  CHECK(heat.on);
  heat.settle(355.15);
  CHECK_FALSE(heat.on);
  CHECK(heat.threshold() == 353.15);
}

TEST_CASE("a thermostat on a first-order plant cycles as the exact exponentials say") {
  // 90 +- 1 degC: on tau ln(131/129), off tau ln(71/69); the plant never leaves the band.
  const Cycle cycle = run_thermostat(89.0, 91.0);
  CHECK_THAT(cycle.on_time, WithinAbs(600.0 * std::log(131.0 / 129.0), 1e-3));
  check_absolute(cycle.period, published(26.37497477, "s", "exact switching of exponentials"),
                 1e-3);
  check_absolute(cycle.highest, published(91.0, "degC", "exact switching of exponentials"), 1e-3);
}

TEST_CASE("a PI output is held between nothing and its limit") {
  const PiOutput inside = pi_output(0.1, 2.0, 0.3, 1.0);
  CHECK(inside.wanted == 0.1 * 2.0 + 0.3);
  CHECK(inside.applied == inside.wanted);
  CHECK(pi_output(0.1, 20.0, 0.3, 0.8).applied == 0.8);
  CHECK(pi_output(0.1, -20.0, 0.3, 0.8).applied == 0.0);
}

TEST_CASE("the integral part does not wind up at a limit") {
  // Held at its limit, the integral settles where wanted less applied equals gain x error
  // (Astrom and Hagglund, PID Controllers, 1995, 3.5): a stationary point of the rate.
  const double gain = 0.1, error = 30.0, limit = 1.0, integral_time = 200.0;
  const double settled = limit;  // gain * error + settled - limit = gain * error
  const PiOutput output = pi_output(gain, error, settled, limit);
  CHECK_THAT(pi_integral_rate(gain, error, output, integral_time), WithinAbs(0.0, 1e-15));
  CHECK(pi_integral_rate(gain, error, pi_output(gain, error, 2.0, limit), integral_time) < 0.0);
}

TEST_CASE("away from its limits the integral part adds up the error") {
  const PiOutput output = pi_output(0.1, 2.0, 0.3, 1.0);
  CHECK_THAT(pi_integral_rate(0.1, 2.0, output, 100.0), WithinAbs(0.1 * 2.0 / 100.0, 1e-15));
}

TEST_CASE("a PI loop makes up for a load with an integrated error of Ti over gain") {
  // Plant 100 s, gain 1; controller gain 2, Ti 50 s; unit load at the plant input. In steady state
  // the integral equals minus the load: integral of the error = -Ti / gain = -25 (exact).
  const double gain = 2.0, integral_time = 50.0;
  Integrator loop(
      [&](const State& x, State& dxdt, double) {
        const double error = 0.0 - x[0];
        // Lifted by 50 so that the limits 0..100 stay out of the way.
        const PiOutput output = pi_output(gain, error, x[1] + 50.0, 100.0);
        dxdt = {(output.applied - 50.0 + 1.0 - x[0]) / 100.0,
                pi_integral_rate(gain, error, output, integral_time), error};
      },
      {{"plant", "integral", "error"}, {1.0, 1.0, 1.0}}, {});
  State x{0.0, 0.0, 0.0};
  loop.advance(0.0, 3000.0, x, {}, [](double, double, const DenseOutput&) {});
  check_absolute(x[2], published(-25.0, "s", "final value theorem, integral of error -Ti/Kc"),
                 1e-3);
  CHECK_THAT(x[0], WithinAbs(0.0, 1e-4));
}
