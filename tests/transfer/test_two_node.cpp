#include <cmath>
#include <limits>

#include "kettlecast/transfer/two_node.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

using Kettle = TwoNodeKettle<double>;
using State = TwoNodeState<double>;
constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr char integrated[] = "event-driven integration at 1e-12 and eigenvalues agree";

const Kettle example{20e3, 418e3, 1500.0, 0.0, 10.0, 20.0};  // degC

/// Classical Runge-Kutta with fixed steps: knows no eigenvalues.
State stepped(const Kettle& kettle, double power, State at, double time, int steps) {
  const auto rate = [&](const State& s) {
    const double passed = kettle.conductance * (s.floor - s.liquid);
    return State{
        (power - passed - kettle.floor_loss * (s.floor - kettle.surroundings)) /
            kettle.floor_capacity,
        (passed - kettle.liquid_loss * (s.liquid - kettle.surroundings)) / kettle.liquid_capacity};
  };
  const auto moved = [](const State& s, const State& k, double h) {
    return State{s.floor + h * k.floor, s.liquid + h * k.liquid};
  };
  const double h = time / steps;
  for (int i = 0; i < steps; ++i) {
    const State a = rate(at), b = rate(moved(at, a, 0.5 * h)), c = rate(moved(at, b, 0.5 * h)),
                d = rate(moved(at, c, h));
    at.floor += h / 6.0 * (a.floor + 2.0 * (b.floor + c.floor) + d.floor);
    at.liquid += h / 6.0 * (a.liquid + 2.0 * (b.liquid + c.liquid) + d.liquid);
  }
  return at;
}

}  // namespace

TEST_CASE("floor and liquid, switched off when the liquid reaches 90 degC") {
  const State start{20.0, 20.0};
  const auto modes = two_node_modes(example, 20e3, start);
  check_relative(modes.fast, published(-0.07858961, "1/s", integrated), 1e-7);
  check_relative(modes.slow, published(-2.28307e-05, "1/s", integrated), 1e-5);
  const double off = two_node_time_to(example, 20e3, start, 90.0);
  check_relative(off, published(1573.218255, "s", integrated), 1e-8);
  const State then = two_node_after(example, 20e3, start, off);
  check_relative(then.floor, published(102.7456436, "degC", integrated), 1e-8);
  CHECK_THAT(then.liquid, WithinAbs(90.0, 1e-10));
  const auto peak = two_node_peak(example, 0.0, then);
  check_relative(peak.temperature, published(90.49213442, "degC", integrated), 1e-9);
  check_relative(peak.temperature - 90.0, published(0.4921344151, "K", integrated), 1e-7);
  check_relative(peak.time, published(42.5679851, "s", integrated), 1e-7);
  check_relative(two_node_overshoot_bound(example, then), published(0.5819928575, "K", integrated),
                 1e-8);
}

TEST_CASE("the exact solution agrees with small steps") {
  const Kettle cases[] = {example,
                          {20e3, 20e3, 1e-3, 5.0, 5.0, 20.0},  // eigenvalues equal within 2e-4
                          {20e3, 20e3, 1e-9, 5.0, 5.0, 20.0},  // and within 2e-10
                          {1e2, 1e6, 400.0, 2.0, 10.0, 20.0},  // a factor of 4e5 apart
                          {3e5, 1e4, 200.0, 50.0, 1.0, 20.0},  // a floor heavier than the liquid
                          {20e3, 418e3, 1500.0, 0.0, 0.0, 20.0}};  // nothing lost
  for (const auto& kettle : cases) {
    for (double power : {0.0, 5e3}) {
      const State exact = two_node_after(kettle, power, State{80.0, 30.0}, 500.0);
      const State small = stepped(kettle, power, State{80.0, 30.0}, 500.0, 20000);
      CHECK_THAT(exact.floor, WithinRel(small.floor, 1e-9));
      CHECK_THAT(exact.liquid, WithinRel(small.liquid, 1e-9));
    }
  }
}

TEST_CASE("without losses heat only moves") {
  const Kettle tight{20e3, 418e3, 1500.0, 0.0, 0.0, 20.0};
  const State hot{120.0, 90.0};
  const State later = two_node_after(tight, 0.0, hot, 30.0);
  const double bound = two_node_overshoot_bound(tight, hot);
  CHECK_THAT(20e3 * (later.floor - 120.0) + 418e3 * (later.liquid - 90.0), WithinAbs(0.0, 1e-6));
  CHECK(two_node_modes(tight, 0.0, hot).slow == 0.0);
  const auto peak = two_node_peak(tight, 0.0, hot);
  CHECK(peak.time == infinity);
  CHECK_THAT(peak.temperature, WithinRel(90.0 + bound, 1e-12));
  // Total heat over total capacity, once the fast mode has died.
  const State warm = two_node_after(tight, 20e3, State{20.0, 20.0}, 1000.0);
  CHECK_THAT(20e3 * (warm.floor - 20.0) + 418e3 * (warm.liquid - 20.0),
             WithinRel(20e3 * 1000.0, 1e-12));
}

TEST_CASE("without losses the switch-off time follows from the heat") {
  const Kettle tight{20e3, 418e3, 1500.0, 0.0, 0.0, 20.0};
  const double off = two_node_time_to(tight, 20e3, State{20.0, 20.0}, 90.0);
  // Once steady, the floor is ahead by P C_2 / (G (C_1 + C_2)), and all heat is in the two.
  const double ahead = 20e3 * 418e3 / (1500.0 * 438e3);
  CHECK_THAT(off, WithinRel((438e3 * 70.0 + 20e3 * ahead) / 20e3, 1e-9));
  CHECK(two_node_peak(tight, 20e3, State{20.0, 20.0}).temperature == infinity);
}

TEST_CASE("times to a temperature that is there, far, or never reached") {
  CHECK(two_node_time_to(example, 20e3, State{20.0, 20.0}, 20.0) == 0.0);
  CHECK(two_node_time_to(example, 0.0, State{20.0, 20.0}, 21.0) == infinity);
  // At rest P = L (T - T_r): 100 W keep 30 degC.
  CHECK(two_node_time_to(example, 100.0, State{20.0, 20.0}, 30.1) == infinity);
  const double near_rest = two_node_time_to(example, 100.0, State{20.0, 20.0}, 29.99);
  CHECK_THAT(two_node_after(example, 100.0, State{20.0, 20.0}, near_rest).liquid,
             WithinRel(29.99, 1e-10));
  // A cold floor first draws the liquid down; it comes back up later.
  const State sunk{20.0, 80.0};
  const double back = two_node_time_to(example, 20e3, sunk, 81.0);
  CHECK_THAT(two_node_after(example, 20e3, sunk, back).liquid, WithinRel(81.0, 1e-10));
  CHECK(two_node_after(example, 20e3, sunk, 5.0).liquid < 80.0);
  CHECK(two_node_peak(example, 0.0, sunk).temperature == 80.0);
  // After switch-off the overshoot passes a temperature between start and peak once upwards.
  const State off{102.7456436, 90.0};
  const double passing = two_node_time_to(example, 0.0, off, 90.4);
  CHECK(passing < two_node_peak(example, 0.0, off).time);
  CHECK_THAT(two_node_after(example, 0.0, off, passing).liquid, WithinRel(90.4, 1e-10));
}

TEST_CASE("overshoot over its range") {
  const auto overshoot = [](double capacity) {
    Kettle kettle = example;
    kettle.floor_capacity = capacity;
    const State start{20.0, 20.0};
    const double off = two_node_time_to(kettle, 20e3, start, 90.0);
    const State then = two_node_after(kettle, 20e3, start, off);
    const double peak = two_node_peak(kettle, 0.0, then).temperature - 90.0;
    CHECK(peak < two_node_overshoot_bound(kettle, then));
    return peak;
  };
  sweep::positive(500.0, 2e5, overshoot);
  sweep::rising(500.0, 2e5, overshoot);
  sweep::rising(0.0, 4000.0, [](double time) {
    return two_node_after(example, 20e3, State{20.0, 20.0}, time).floor;
  });
}
