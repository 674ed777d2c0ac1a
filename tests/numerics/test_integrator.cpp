#include <cmath>
#include <limits>

#include "kettlecast/base/errors.hpp"
#include "kettlecast/numerics/integrator.hpp"
#include "message.hpp"
#include "published.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

const Observer unseen = [](double, double, const DenseOutput&) {};

IntegratorOptions with_tolerance(double tolerance) {
  IntegratorOptions options;
  options.tolerance = tolerance;
  return options;
}

/// One-component problem from t = 0; returns x at `end`.
double solve(const std::function<double(double, double)>& rate, double start, double end,
             const IntegratorOptions& options) {
  Integrator integrator(
      [&](const State& x, State& dxdt, double t) { dxdt.assign(1, rate(t, x[0])); },
      {{"x"}, {1e-9}}, options);
  State x{start};
  integrator.advance(0.0, end, x, {}, unseen);
  return x[0];
}

Integrator falling_ball() {
  return Integrator(
      [](const State& x, State& dxdt, double) {
        dxdt = {x[1], -9.81};
      },
      {{"ball.height", "ball.speed"}, {1.0, 1.0}}, with_tolerance(1e-9));
}

/// x' = -x from 1: crosses `level` downwards at ln(1/level).
Watch falls_to(double level) {
  return {[level](double, const State& x) { return x[0] - level; }, Crossing::falling};
}

Integrator decay(double tolerance) {
  return Integrator([](const State& x, State& dxdt, double) { dxdt = {-x[0]}; }, {{"x"}, {1.0}},
                    with_tolerance(tolerance));
}

const IntegrationFailure failure_of(const std::function<void()>& run) {
  try {
    run();
  } catch (const IntegrationFailure& failure) {
    return failure;
  }
  return {"none was thrown", -1.0, ""};
}

}  // namespace

TEST_CASE("problems with a known solution are met within a hundred tolerances") {
  const double tolerance = 1e-9;
  const auto options = with_tolerance(tolerance);
  // DETEST class A: Hull, Enright, Fellen and Sedgwick, SIAM J. Numer. Anal. 9 (1972) 603 (from
  // memory); the values are the exact solutions exp(-20), 1/sqrt(21) and exp(sin 20).
  check_relative(solve([](double, double y) { return -y; }, 1.0, 20.0, options),
                 published(2.061153727e-09, "-", "DETEST A1, exact solution"), 1e-7);
  check_relative(solve([](double, double y) { return -y * y * y / 2.0; }, 1.0, 20.0, options),
                 published(0.2182178902, "-", "DETEST A2, exact solution"), 1e-7);
  check_relative(solve([](double t, double y) { return y * std::cos(t); }, 1.0, 20.0, options),
                 published(2.491650272, "-", "DETEST A3, exact solution"), 1e-7);
}

TEST_CASE("a stiff component is followed to its smooth solution") {
  // Prothero and Robinson, Math. Comp. 28 (1974) 145: the exact solution is cos t. With a stiffness
  // of 1e4 instead of 1e6 to keep an explicit method within a second.
  const double stiffness = 1e4;
  const double end =
      solve([&](double t, double y) { return -stiffness * (y - std::cos(t)) - std::sin(t); }, 1.0,
            10.0, with_tolerance(1e-6));
  check_relative(end, published(-0.8390715291, "-", "exact solution cos 10"), 1e-4);
}

TEST_CASE("the error falls with the fifth power of the step") {
  // Over a fixed interval with fixed steps, the global error of a method of order 5 falls 32 times
  // when the step is halved (Dormand and Prince 1980). A loose tolerance leaves max_step in charge.
  const auto error = [](double step) {
    IntegratorOptions options;
    options.tolerance = 1e-2;
    options.max_step = options.first_step = step;
    // The scale of 1e6 makes every step acceptable.
    Integrator integrator(
        [](const State& x, State& dxdt, double) {
          dxdt = {x[1], -x[0]};
        },
        {{"x", "v"}, {1e6, 1e6}}, options);
    State x{1.0, 0.0};
    integrator.advance(0.0, 8.0, x, {}, unseen);
    return std::hypot(x[0] - std::cos(8.0), x[1] + std::sin(8.0));
  };
  const double order = std::log2(error(0.2) / error(0.1));
  CHECK_THAT(order, WithinAbs(5.0, 0.3));
}

TEST_CASE("a short pulse between two break points is not jumped over") {
  double source = 0.0;
  Integrator integrator([&](const State&, State& dxdt, double) { dxdt = {source}; },
                        {{"pulse.sum"}, {1.0}}, {});
  State x{0.0};
  integrator.advance(0.0, 500.0, x, {}, unseen);
  source = 1.0;
  integrator.advance(500.0, 510.0, x, {}, unseen);
  source = 0.0;
  integrator.advance(510.0, 1000.0, x, {}, unseen);
  CHECK_THAT(x[0], WithinAbs(10.0, 1e-12));
}

TEST_CASE("an event on a decay is located to a millisecond") {
  for (double tolerance : {1e-6, 1e-9}) {
    auto integrator = decay(tolerance);
    State x{1.0};
    const Stop stop = integrator.advance(0.0, 10.0, x, {falls_to(0.25)}, unseen);
    CHECK(stop.watch == 0);
    CHECK_THAT(stop.time, WithinAbs(std::log(4.0), 1e-3));
    CHECK(x[0] <= 0.25);
  }
}

TEST_CASE("a bouncing ball hits the floor on time") {
  // Exact: sqrt(2 h / g), then 2 e^n times that between bounces; h = 1 m, g = 9.81 m/s2, e = 0.7.
  auto integrator = falling_ball();
  State x{1.0, 0.0};
  const Watch floor{[](double, const State& s) { return s[0]; }, Crossing::falling};
  double time = 0.0;
  for (double expected : {0.451523641, 1.083656738, 1.526149907}) {
    const Stop stop = integrator.advance(time, 5.0, x, {floor}, unseen);
    CHECK(stop.watch == 0);
    CHECK_THAT(stop.time, WithinAbs(expected, 1e-3));
    time = stop.time;
    x = {1e-12, -0.7 * x[1]};
  }
}

TEST_CASE("a value that only touches its level fires once or not at all") {
  // y = 1 - cos t touches 2 at t = pi and does not cross.
  Integrator integrator([](const State&, State& dxdt, double t) { dxdt = {std::sin(t)}; },
                        {{"y"}, {1.0}}, with_tolerance(1e-9));
  State x{0.0};
  const Watch touch{[](double, const State& s) { return s[0] - 2.0; }, Crossing::rising};
  double time = 0.0;
  int fired = 0;
  while (time < 6.0) {
    const Stop stop = integrator.advance(time, 6.0, x, {touch}, unseen);
    time = stop.time;
    if (stop.watch == 0) {
      ++fired;
      CHECK_THAT(stop.time, WithinAbs(3.141592654, 1e-2));
    }
  }
  CHECK(fired <= 1);
}

TEST_CASE("of two events in one step the earlier one stops the run") {
  auto integrator = decay(1e-6);
  State x{1.0};
  // 1e-3 apart in level at 0.5: 2 ms apart in time, far less than a step.
  const Stop stop = integrator.advance(0.0, 10.0, x, {falls_to(0.499), falls_to(0.5)}, unseen);
  CHECK(stop.watch == 1);
  CHECK_THAT(stop.time, WithinAbs(std::log(2.0), 1e-3));
  const Stop next = integrator.advance(stop.time, 10.0, x, {falls_to(0.499)}, unseen);
  CHECK_THAT(next.time, WithinAbs(-std::log(0.499), 1e-3));
}

TEST_CASE("a value that stands on its level at the start does not fire") {
  auto integrator = decay(1e-6);
  State x{1.0};
  const Stop stop = integrator.advance(0.0, 1.0, x, {falls_to(1.0)}, unseen);
  CHECK(stop.watch == -1);
  CHECK(stop.time == 1.0);
}

TEST_CASE("the observer sees every part of the run once, with the state inside each step") {
  auto integrator = decay(1e-8);
  State x{1.0};
  double seen = 0.0, worst = 0.0;
  bool gapless = true;
  integrator.advance(0.0, 5.0, x, {}, [&](double begin, double end, const DenseOutput& at) {
    gapless = gapless && begin == seen;
    seen = end;
    State inside;
    for (double share : {0.1, 0.5, 0.9}) {
      const double time = begin + share * (end - begin);
      at(time, inside);
      worst = std::fmax(worst, std::fabs(inside[0] - std::exp(-time)));
    }
  });
  CHECK(gapless);
  CHECK(seen == 5.0);
  CHECK(worst < 1e-6);  // dense output is of order 4: 100 x tolerance
}

TEST_CASE("a rate that is not a number fails with component and time") {
  Integrator integrator(
      [](const State&, State& dxdt, double t) {
        dxdt = {1.0, t > 1.0 ? std::numeric_limits<double>::quiet_NaN() : 1.0};
      },
      {{"floor.temperature", "liquid.water"}, {1.0, 1.0}}, {});
  State x{0.0, 0.0};
  const auto failure = failure_of([&] { integrator.advance(0.0, 2.0, x, {}, unseen); });
  CHECK(failure.component == "liquid.water");
  CHECK(failure.time > 0.5);
  CHECK(failure.time <= 1.0);
  CHECK(failure.phase.empty());
  CHECK_THAT(failure.what(), mentions("not a finite number") && mentions("liquid.water"));
  // The last good state lies on the exact solution x = t.
  CHECK_THAT(x[0], WithinAbs(failure.time, 1e-9));
  CHECK_THAT(x[1], WithinAbs(failure.time, 1e-9));
}

TEST_CASE("a start that is not a number fails at once") {
  auto integrator = decay(1e-6);
  State x{std::numeric_limits<double>::quiet_NaN()};
  const auto failure = failure_of([&] { integrator.advance(3.0, 4.0, x, {}, unseen); });
  CHECK(failure.component == "x");
  CHECK(failure.time == 3.0);
}

TEST_CASE("a solution that runs away stops with too small a step") {
  // x' = x^2 from 1 has the solution 1 / (1 - t): it has no value at t = 1.
  Integrator integrator([](const State& x, State& dxdt, double) { dxdt = {x[0] * x[0]}; },
                        {{"x"}, {1.0}}, {});
  State x{1.0};
  const auto failure = failure_of([&] { integrator.advance(0.0, 2.0, x, {}, unseen); });
  CHECK_THAT(failure.what(), mentions("too small") || mentions("not a finite"));
  CHECK_THAT(failure.time, WithinAbs(1.0, 1e-3));
}

TEST_CASE("a run of too many steps stops") {
  IntegratorOptions options;
  options.max_steps = 10;
  options.max_step = 0.1;
  Integrator integrator([](const State& x, State& dxdt, double) { dxdt = {-x[0]}; }, {{"x"}, {1.0}},
                        options);
  State x{1.0};
  const auto failure = failure_of([&] { integrator.advance(0.0, 100.0, x, {}, unseen); });
  CHECK_THAT(failure.what(), mentions("more than 10 steps"));
}

TEST_CASE("books are not part of the error control") {
  // A component without a scale may be wild without shortening the steps of the others.
  const auto steps = [](double book_scale) {
    Integrator integrator(
        [](const State& x, State& dxdt, double t) {
          dxdt = {-x[0], std::sin(50.0 * t)};
        },
        {{"x", "book"}, {1.0, book_scale}}, {});
    State x{1.0, 0.0};
    integrator.advance(0.0, 10.0, x, {}, unseen);
    return integrator.steps();
  };
  CHECK(5 * steps(0.0) < steps(1e-3));
}

TEST_CASE("options out of range are refused by name") {
  const auto make = [](double tolerance, double max_step) {
    IntegratorOptions options;
    options.tolerance = tolerance;
    options.max_step = max_step;
    Integrator([](const State&, State&, double) {}, {{"x"}, {1.0}}, options);
  };
  CHECK_THROWS_AS(make(0.0, 1.0), InvalidArgument);
  CHECK_THROWS_WITH(make(0.5, 1.0), mentions("tolerance must be between"));
  CHECK_THROWS_WITH(make(1e-6, 0.0), mentions("max_step must be between"));
}
