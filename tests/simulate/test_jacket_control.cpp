// Levels of a jacket, and kettles whose controller acts on the jacket.
#include <cmath>

#include "batch.hpp"
#include "catch.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

Options fine() {
  Options options;
  options.output_interval = 0.5;
  return options;
}

Phase jacket_for(double duration, double share) {
  Phase phase = batch::heat_for(duration, 0.0);
  phase.additions = {batch::liquid(batch::water(), 60.0, 290.0)};
  phase.jacket = JacketUse::heat;
  phase.jacket_share = share;
  return phase;
}

/// A kettle without floor elements: an electric, a steam or a hot-water jacket.
Kettle by_jacket(JacketKind kind, ControllerKind control = ControllerKind::on_off) {
  Kettle kettle = batch::stew_kettle(control);
  kettle.floor_power = 0.0;
  kettle.jacket.kind = kind;
  kettle.jacket.power = kind == JacketKind::liquid ? 0.0 : 20e3;
  kettle.jacket.steam_pressure = kind == JacketKind::steam ? 1e5 : 0.0;
  if (kind == JacketKind::liquid) kettle.jacket.heating = {1.0, 368.15, 0.0};
  return kettle;
}

constexpr JacketKind kinds[] = {JacketKind::electric, JacketKind::steam, JacketKind::liquid};

Phase water_at(double set_point, double duration) {
  return batch::hold(set_point, duration, {batch::liquid(batch::water(), 40.0, 300.0)});
}

}  // namespace

TEST_CASE("the energy of a jacket goes with its level") {
  const auto energy = [](double share) {
    return batch::run(batch::stew_kettle(), {"level", {jacket_for(600.0, share)}})
        .balance.heater_energy;
  };
  // 85 % of 6 kW, far below its limit: not throttled.
  CHECK_THAT(energy(1.0), WithinRel(0.85 * 6e3 * 600.0, 1e-6));
  CHECK_THAT(energy(0.5), WithinRel(0.5 * 0.85 * 6e3 * 600.0, 1e-6));
  CHECK(energy(0.0) == 0.0);
}

TEST_CASE("a higher level is never slower") {
  double last = 1e9;
  for (double share : {0.3, 0.6, 1.0}) {
    Phase phase = jacket_for(1.0, share);
    phase.ends = {{EndKind::above, 300.0, Regulated::probe}};
    const double time = batch::run(batch::stew_kettle(), {"level", {phase}}).duration;
    CHECK(time < last);
    last = time;
  }
}

TEST_CASE("without floor elements the controller heats by the jacket, of every kind") {
  for (JacketKind kind : kinds) {
    for (auto control : {ControllerKind::on_off, ControllerKind::proportional_integral}) {
      const auto forecast =
          batch::run(by_jacket(kind, control), {"hold", {water_at(340.0, 60.0)}}, {}, {}, fine());
      INFO("kind " << static_cast<int>(kind));
      CHECK(forecast.phases[0].ended == EndReason::held);
      CHECK(std::fabs(forecast.balance.heat_residual) < 1e-6);
      for (double heat : batch::values_of(forecast.trace, "floor.heat")) CHECK(heat == 0.0);
      const auto heat = batch::values_of(forecast.trace, "jacket.heat");
      CHECK(*std::max_element(heat.begin(), heat.end()) == 1.0);
    }
  }
}

TEST_CASE("an on/off jacket is off above the set point and on below the band") {
  for (JacketKind kind : kinds) {
    Kettle kettle = by_jacket(kind);
    kettle.controller.dead_band = 1.0;
    const auto forecast = batch::run(kettle, {"hold", {water_at(340.0, 2400.0)}}, {}, {}, fine());
    const auto heat = batch::values_of(forecast.trace, "jacket.heat");
    const auto probe = batch::values_of(forecast.trace, "probe.reading");
    int wrong = 0, switches = 0;
    // The first row is written before the heat comes on, the last when the phase is over.
    for (std::size_t i = 2; i + 1 < heat.size(); ++i) {
      if (probe[i] > 340.0 + 1e-3) wrong += heat[i] != 0.0;
      if (probe[i] < 339.0 - 1e-3) wrong += heat[i] != 1.0;
      switches += heat[i] != heat[i - 1];
    }
    INFO("kind " << static_cast<int>(kind));
    CHECK(wrong == 0);
    CHECK(switches >= 3);
  }
}

TEST_CASE("a PI controller on a jacket leaves no error in the long run") {
  for (JacketKind kind : kinds) {
    const auto kettle = by_jacket(kind, ControllerKind::proportional_integral);
    const auto forecast = batch::run(kettle, {"hold", {water_at(345.0, 5400.0)}});
    INFO("kind " << static_cast<int>(kind));
    CHECK_THAT(batch::values_of(forecast.trace, "probe.reading").back(), WithinAbs(345.0, 0.1));
  }
}

TEST_CASE("the level of a jacket bounds what its controller asks for") {
  for (auto control : {ControllerKind::on_off, ControllerKind::proportional_integral}) {
    Phase phase = water_at(340.0, 60.0);
    phase.cover = Cover::lid;
    phase.jacket = JacketUse::heat;
    phase.jacket_share = 0.5;
    const auto half =
        batch::run(by_jacket(JacketKind::electric, control), {"half", {phase}}, {}, {}, fine());
    const auto heat = batch::values_of(half.trace, "jacket.heat");
    CHECK_THAT(*std::max_element(heat.begin(), heat.end()), WithinAbs(0.5, 1e-12));
    CHECK(half.phases[0].ended == EndReason::held);
    // A limit of the phase is a share of that level.
    phase.heat_limit = 0.8;
    const auto less =
        batch::run(by_jacket(JacketKind::electric, control), {"less", {phase}}, {}, {}, fine());
    const auto lower = batch::values_of(less.trace, "jacket.heat");
    CHECK_THAT(*std::max_element(lower.begin(), lower.end()), WithinAbs(0.4, 1e-12));
  }
}

TEST_CASE("a jacket that is controlled still keeps to its limit") {
  Phase phase = water_at(335.0, 60.0);
  phase.cover = Cover::lid;
  phase.jacket = JacketUse::heat;
  phase.jacket_limit = 350.0;
  const auto forecast =
      batch::run(by_jacket(JacketKind::electric), {"limit", {phase}}, {}, {}, fine());
  const auto jacket = batch::values_of(forecast.trace, "jacket.temperature");
  CHECK(*std::max_element(jacket.begin(), jacket.end()) <= 350.0 + 1e-3);
  CHECK(*std::max_element(jacket.begin(), jacket.end()) > 345.0);
}

TEST_CASE("a phase that regulates nothing uses the jacket at its level") {
  const auto forecast =
      batch::run(by_jacket(JacketKind::electric), {"level", {jacket_for(300.0, 0.4)}});
  CHECK_THAT(forecast.balance.heater_energy, WithinRel(0.4 * 0.85 * 20e3 * 300.0, 1e-6));
}
