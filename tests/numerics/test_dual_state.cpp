// Slopes of states that the integrator carries, across events and ends that move.
#include "catch.hpp"
#include "kettlecast/numerics/dual_state.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

using Dual1 = Dual<1>;
using States = std::vector<Dual1>;

Dual1 with_slope(double value, double slope) {
  Dual1 u(value);
  u.slope[0] = slope;
  return u;
}

/// A tank that fills at the rate p until it holds `full` and then drains at twice the rate.
struct Tank {
  Dual1 rate;
  bool fills = true;

  void rates(const States& x, States& dxdt) const {
    dxdt.assign(x.size(), fills ? rate : -2.0 * rate);
  }
};

/// The tank at `end`, with its event on the way.
States run(Tank& tank, const Dual1& full, double end) {
  Integrator integrator(
      [&](const State& packed, State& dxdt, double) {
        States x, rates;
        unpack(packed, x);
        tank.rates(x, rates);
        pack(rates, dxdt);
      },
      {{"held", "slope"}, {1.0, 1.0}}, {});
  State packed{0.0, 0.0};
  const auto value = [&](const States& x) { return x[0] - full; };
  const Watch watch{[&](double, const State& x) { return x[0] - full.value; }, Crossing::rising};
  const Stop stop =
      integrator.advance(0.0, end, packed, {watch}, [](double, double, const DenseOutput&) {});
  States x, rates;
  unpack(packed, x);
  tank.rates(x, rates);
  Dual1 time = crossing_slopes(value, x, rates);
  time.value = stop.time;
  follow(rates, time, x);
  tank.fills = false;
  pack(x, packed);
  integrator.advance(stop.time, end, packed, {}, [](double, double, const DenseOutput&) {});
  unpack(packed, x);
  tank.rates(x, rates);
  follow(rates, end - time - (end - stop.time), x);
  return x;
}

}  // namespace

TEST_CASE("packed states come back and lead with their values") {
  const States x{with_slope(1.0, 4.0), with_slope(2.0, 5.0)};
  State packed;
  pack(x, packed);
  CHECK(packed == State{1.0, 2.0, 4.0, 5.0});
  States back;
  unpack(packed, back);
  CHECK(back[1].value == 2.0);
  CHECK(back[1].slope[0] == 5.0);
}

TEST_CASE("slopes jump at an event as the exact solution does") {
  // x = p t up to full = 1 at t = 1/p, then x = 1 - 2 p (t - 1/p) = 3 - 2 p t: dx/dp = -2 t.
  Tank tank{with_slope(0.25, 1.0)};
  const auto x = run(tank, Dual1(1.0), 5.0);
  CHECK_THAT(x[0].value, WithinAbs(3.0 - 2.0 * 0.25 * 5.0, 1e-4));
  CHECK_THAT(x[0].slope[0], WithinAbs(-2.0 * 5.0, 1e-4));
}

TEST_CASE("slopes by the level of an event are those of the exact solution") {
  // x = f - 2 p (t - f/p) = 3 f - 2 p t: dx/df = 3.
  Tank tank{Dual1(0.25)};
  const auto x = run(tank, with_slope(1.0, 1.0), 5.0);
  CHECK_THAT(x[0].slope[0], WithinAbs(3.0, 1e-9));
}

TEST_CASE("a value that does not move gives its crossing no slopes") {
  const States x{with_slope(1.0, 2.0)};
  const auto value = [](const States& at) { return at[0] - 1.0; };
  CHECK(crossing_slopes(value, x, {Dual1(0.0)}).slope[0] == 0.0);
  CHECK_FALSE(has_slopes(Dual1(3.0)));
  CHECK(has_slopes(x[0]));
}
