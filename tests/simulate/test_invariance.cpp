// What must not change a forecast, and in which direction what does must change it.
#include <cmath>

#include "batch.hpp"
#include "catch.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

double time_to_reach(double mass, double temperature, double power) {
  Kettle kettle = batch::stew_kettle();
  kettle.floor_power = power;
  const auto forecast = batch::run(
      kettle,
      {"heat", {batch::hold(350.0, 0.0, {batch::liquid(batch::water(), mass, temperature)})}});
  return forecast.phases[0].time_to_reach.value();
}

}  // namespace

TEST_CASE("phase ends do not depend on the tolerance") {
  Options loose, tight;
  tight.tolerance = 0.5 * loose.tolerance;
  for (auto control : {ControllerKind::on_off, ControllerKind::proportional_integral}) {
    const auto kettle = batch::stew_kettle(control);
    const auto one = batch::run(kettle, batch::stew(), {}, {}, loose);
    const auto other = batch::run(kettle, batch::stew(), {}, {}, tight);
    for (std::size_t i = 0; i < one.phases.size(); ++i) {
      INFO(one.phases[i].name);
      CHECK_THAT(one.phases[i].duration, WithinAbs(other.phases[i].duration, 0.05));
      CHECK(one.phases[i].ended == other.phases[i].ended);
    }
  }
}

TEST_CASE("a forecast does not depend on how often it is written down") {
  Options often, seldom;
  often.output_interval = 1.0;
  seldom.output_interval = 47.0;
  const auto one = batch::run(batch::stew_kettle(), batch::stew(), {}, {}, often);
  const auto other = batch::run(batch::stew_kettle(), batch::stew(), {}, {}, seldom);
  CHECK(one.phases == other.phases);
  CHECK(one.balance == other.balance);
  CHECK(one.trace.rows() > 10 * other.trace.rows());
}

TEST_CASE("the same forecast twice is the same to the last bit") {
  const auto one = batch::run(batch::stew_kettle(), batch::stew());
  const auto other = batch::run(batch::stew_kettle(), batch::stew());
  CHECK(one.phases == other.phases);
  CHECK(one.trace.values == other.trace.values);
}

TEST_CASE("times in the trace rise") {
  const auto time = batch::values_of(batch::run(batch::stew_kettle(), batch::stew()).trace, "time");
  int wrong = 0;
  for (std::size_t i = 1; i < time.size(); ++i) wrong += !(time[i] > time[i - 1]);
  CHECK(wrong == 0);
}

TEST_CASE("one addition or the same in two halves, in any order, are one batch") {
  const auto carrots = batch::pieces(batch::carrot(), 10.0, 280.0, 0.02);
  auto half = carrots;
  half.mass = 5.0;
  auto other_half = half;
  other_half.name = "more carrot";
  const auto water = batch::liquid(batch::water(), 30.0, 290.0);
  const auto run = [&](std::vector<Addition> additions) {
    return batch::run(batch::stew_kettle(),
                      {"batch", {batch::hold(350.0, 300.0, std::move(additions))}});
  };
  const auto whole = run({water, carrots});
  const auto halves = run({half, water, other_half});
  CHECK_THAT(halves.phases[0].duration, WithinAbs(whole.phases[0].duration, 0.05));
  CHECK_THAT(halves.balance.heater_energy, WithinRel(whole.balance.heater_energy, 1e-4));
  // Equal halves stay equal.
  const auto one = batch::values_of(halves.trace, "carrot.core_temperature");
  const auto two = batch::values_of(halves.trace, "more carrot.core_temperature");
  double apart = 0.0;
  for (std::size_t i = 0; i < one.size(); ++i) apart = std::fmax(apart, std::fabs(one[i] - two[i]));
  CHECK(apart < 1e-6);
}

TEST_CASE("more product, colder product or less power is never faster") {
  double last = 0.0;
  for (double mass : {10.0, 20.0, 40.0, 80.0, 160.0}) {
    const double time = time_to_reach(mass, 290.0, 18e3);
    CHECK(time > last);
    last = time;
  }
  last = 0.0;
  for (double temperature : {330.0, 310.0, 290.0, 276.0}) {
    const double time = time_to_reach(40.0, temperature, 18e3);
    CHECK(time > last);
    last = time;
  }
  last = 0.0;
  for (double power : {30e3, 24e3, 18e3, 12e3}) {
    const double time = time_to_reach(40.0, 290.0, power);
    CHECK(time > last);
    last = time;
  }
}

TEST_CASE("frozen pieces take longer than chilled ones") {
  const auto time = [](double temperature) {
    const auto forecast =
        batch::run(batch::stew_kettle(),
                   {"pieces",
                    {batch::hold(350.0, 0.0,
                                 {batch::liquid(batch::water(), 30.0, 290.0),
                                  batch::pieces(batch::carrot(), 15.0, temperature, 0.02)})}});
    return forecast.phases[0].time_to_reach.value();
  };
  CHECK(time(255.15) > time(277.15) + 60.0);
}

TEST_CASE("a lid saves heat and water") {
  const auto run = [](Cover cover) {
    auto phase = batch::hold(360.0, 900.0, {batch::liquid(batch::water(), 30.0, 290.0)});
    phase.cover = cover;
    return batch::run(batch::stew_kettle(), {"cover", {phase}}).phases[0];
  };
  CHECK(run(Cover::lid).energy < run(Cover::open).energy);
  CHECK(run(Cover::lid).evaporated < run(Cover::open).evaporated);
  CHECK(run(Cover::oil_film).evaporated < run(Cover::lid).evaporated);
}
