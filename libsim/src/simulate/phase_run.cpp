#include "phase_run.hpp"

#include <algorithm>
#include <cmath>

namespace kettlecast {
namespace {

// Two times closer than this are one instant [s].
constexpr double instant = 1e-7;

EndReason reason_of(EndKind kind) {
  switch (kind) {
    case EndKind::held:
      return EndReason::held;
    case EndKind::elapsed:
      return EndReason::elapsed;
    case EndKind::mass_lost:
    case EndKind::share_lost:
      return EndReason::mass_lost;
    default:
      return EndReason::signal;
  }
}

bool watches_signal(const EndRule& rule) {
  return rule.kind == EndKind::above || rule.kind == EndKind::below;
}

/// Length of one cycle of the agitator [s]; 0: it turns on and on.
double cycle_of(const Agitation& stir) {
  return stir.off_time > 0.0 || stir.reversing ? stir.on_time + stir.off_time : 0.0;
}

double mass_of(const std::vector<Addition>& additions) {
  double mass = 0.0;
  for (const auto& addition : additions) mass += addition.mass;
  return mass;
}

/// Value that crosses zero upwards when a signal rule is met.
double towards_end(const EndRule& rule, const State& x) {
  const double value = reading_of(rule.signal, x);
  return rule.kind == EndKind::above ? value - rule.value : rule.value - value;
}

}  // namespace

PhaseRun::PhaseRun(BatchRun& run, const Phase& phase, std::size_t first_addition,
                   HeaterSwitch heater)
    : run_(run),
      phase_(phase),
      first_addition_(first_addition),
      controller_(run.model().kettle().controller),
      by_jacket_(heats_by_jacket(run.model().kettle())),
      heater_(heater),
      start_(run.time()),
      pour_started_(phase.additions.size(), false),
      mass_held_(run.model().product_mass(run.state()) + mass_of(phase.additions)),
      vapour_before_(run.state()[slot::vapour_mass]),
      heater_before_(run.state()[slot::heater_energy]) {}

bool PhaseRun::proportional() const {
  return regulates() && controller_.kind == ControllerKind::proportional_integral;
}

/// Whether the heat must stay on, because it came on so recently.
bool PhaseRun::held_on() const {
  return demand_.on && run_.time() - heater_.on_since < controller_.minimum_on_time - instant;
}

/// Mass of water lost in this phase beyond what ends it [kg].
double PhaseRun::lost_beyond(const EndRule& rule, const State& x) const {
  const double wanted = rule.kind == EndKind::share_lost ? rule.value * mass_held_ : rule.value;
  return x[slot::vapour_mass] - vapour_before_ - wanted;
}

/// When the set point may first count as reached, since the start of the phase [s].
double PhaseRun::ready_after() const {
  if (phase_.additions.empty()) return 0.0;
  return loaded_after(phase_) + controller_.settle_after_pour;
}

void PhaseRun::prepare_switches() {
  const double band = controller_.dead_band;
  demand_ = {phase_.set_point - band, phase_.set_point, heater_.on};
  floor_ceiling_ = {phase_.floor_limit - band, phase_.floor_limit, true};
  difference_ceiling_ = {phase_.difference_limit - band, phase_.difference_limit, true};
}

void PhaseRun::settle_switches() {
  const State& x = run_.state();
  if (!held_on()) demand_.settle(signal(x));
  floor_ceiling_.settle(reading_of(Regulated::floor, x));
  difference_ceiling_.settle(reading_of(Regulated::difference, x));
  const bool was_on = heater_.on;
  heater_.on = regulates() && demand_.on && floor_ceiling_.on && difference_ceiling_.on;
  if (heater_.on && !was_on) heater_.on_since = run_.time();
}

void PhaseRun::apply_inputs() {
  auto& inputs = run_.inputs();
  const bool heats = phase_.jacket == JacketUse::heat;
  inputs.jacket_heat = heats ? phase_.jacket_share : 0.0;
  inputs.jacket_limit = heats || !by_jacket_ ? phase_.jacket_limit : no_limit;
  inputs.cooling = phase_.jacket == JacketUse::cool ? 1.0 : 0.0;
  inputs.cool_limit = phase_.jacket_cool_limit;
  if (!proportional() && (regulates() || !by_jacket_)) {
    controlled_heat(inputs) = heater_.on ? highest_heat() : 0.0;
  }
  inputs.cover = phase_.cover;
  apply_agitation(inputs);
}

void PhaseRun::apply_agitation(Inputs& inputs) const {
  const auto& stir = phase_.agitation;
  const double cycle = cycle_of(stir);
  const bool turning = cycle <= 0.0 || std::fmod(elapsed() + instant, cycle) < stir.on_time;
  const bool odd = cycle > 0.0 && std::fmod(elapsed() + instant, 2.0 * cycle) >= cycle;
  inputs.agitator_speed = turning ? stir.speed : 0.0;
  inputs.reversed = stir.reversing && odd;
}

void PhaseRun::install_proportional_control() {
  if (!proportional()) {
    run_.set_feedback(nullptr);
    return;
  }
  run_.set_feedback([this](const State& x, Inputs& inputs, double& extra_rate) {
    const double error = phase_.set_point - signal(x);
    const bool allowed = floor_ceiling_.on && difference_ceiling_.on;
    const PiOutput output = pi_output(controller_.gain, error, x.back(), highest_heat());
    controlled_heat(inputs) = allowed ? output.applied : 0.0;
    extra_rate = pi_integral_rate(controller_.gain, error, output, controller_.integral_time);
  });
}

void PhaseRun::pour_due() {
  for (std::size_t i = 0; i < phase_.additions.size(); ++i) {
    const auto& addition = phase_.additions[i];
    if (!pour_started_[i] && elapsed() >= addition.delay - instant) {
      pour_started_[i] = true;
      run_.start_pour(first_addition_ + i);
    }
    if (elapsed() >= addition.delay + addition.pour_time - instant) {
      run_.end_pour(first_addition_ + i);
    }
  }
}

void PhaseRun::note_reached() {
  if (reached_ || !regulates() || elapsed() < ready_after() - instant) return;
  if (signal(run_.state()) >= phase_.set_point - controller_.reached_within) reached_ = elapsed();
}

bool PhaseRun::rule_met(const EndRule& rule) const {
  const bool ready = elapsed() >= ready_after() - instant;
  switch (rule.kind) {
    case EndKind::held:
      return reached_ && elapsed() >= *reached_ + rule.value - instant;
    case EndKind::elapsed:
      return elapsed() >= rule.value - instant;
    case EndKind::mass_lost:
    case EndKind::share_lost:
      return ready && lost_beyond(rule, run_.state()) >= 0.0;
    default:
      return ready && towards_end(rule, run_.state()) >= 0.0;
  }
}

std::optional<EndReason> PhaseRun::end_met() const {
  for (const auto& rule : phase_.ends) {
    if (rule_met(rule)) return reason_of(rule.kind);
  }
  if (elapsed() >= phase_.time_limit - instant) return EndReason::timed_out;
  return std::nullopt;
}

double PhaseRun::next_agitator_change() const {
  const auto& stir = phase_.agitation;
  const double cycle = cycle_of(stir);
  if (cycle <= 0.0) return no_limit;
  const double begun = std::floor((elapsed() + instant) / cycle) * cycle;
  const double off = begun + stir.on_time;
  return off > elapsed() + instant ? off : begun + cycle;
}

/// Next break point of the phase [s since the start of the run].
double PhaseRun::next_break() const {
  double next = std::min(phase_.time_limit, next_agitator_change());
  const auto consider = [&](double when) {
    if (when > elapsed() + instant) next = std::min(next, when);
  };
  for (const auto& addition : phase_.additions) {
    consider(addition.delay);
    consider(addition.delay + addition.pour_time);
  }
  consider(ready_after());
  consider(heater_.on_since + controller_.minimum_on_time - start_);
  for (const auto& rule : phase_.ends) {
    if (rule.kind == EndKind::elapsed) consider(rule.value);
    if (rule.kind == EndKind::held && reached_) consider(*reached_ + rule.value);
  }
  return start_ + next;
}

void PhaseRun::watch_switch(const Hysteresis& band, Regulated what, Alarm alarm) {
  if (!std::isfinite(band.threshold())) return;
  watches_.push_back({[what, level = band.threshold()](double, const State& x) {
                        return reading_of(what, x) - level;
                      },
                      band.on ? Crossing::rising : Crossing::falling});
  alarms_.push_back({alarm, 0});
}

void PhaseRun::watch_ends() {
  if (elapsed() < ready_after() - instant) return;
  for (std::size_t i = 0; i < phase_.ends.size(); ++i) {
    const EndRule& rule = phase_.ends[i];
    if (rule.kind == EndKind::held || rule.kind == EndKind::elapsed) continue;
    watches_.push_back({[this, &rule](double, const State& x) {
                          return watches_signal(rule) ? towards_end(rule, x) : lost_beyond(rule, x);
                        },
                        Crossing::rising});
    alarms_.push_back({Alarm::end_rule, i});
  }
}

void PhaseRun::collect_watches() {
  watches_.clear();
  alarms_.clear();
  if (regulates() && !proportional() && !held_on()) {
    watch_switch(demand_, phase_.regulated, Alarm::heater);
  }
  watch_switch(floor_ceiling_, Regulated::floor, Alarm::floor_limit);
  watch_switch(difference_ceiling_, Regulated::difference, Alarm::difference_limit);
  if (regulates() && !reached_ && elapsed() >= ready_after() - instant) {
    const double level = phase_.set_point - controller_.reached_within;
    watches_.push_back(
        {[this, level](double, const State& x) { return signal(x) - level; }, Crossing::rising});
    alarms_.push_back({Alarm::reached, 0});
  }
  watch_ends();
}

/// A located crossing is a fact even if rounding leaves the value a hair short of its level.
void PhaseRun::act_on(const WatchedAlarm& fired) {
  switch (fired.alarm) {
    case Alarm::heater:
      demand_.on = !demand_.on;
      break;
    case Alarm::floor_limit:
      floor_ceiling_.on = !floor_ceiling_.on;
      break;
    case Alarm::difference_limit:
      difference_ceiling_.on = !difference_ceiling_.on;
      break;
    case Alarm::reached:
      reached_ = elapsed();
      break;
    case Alarm::end_rule:
      fired_rule_ = fired.rule;
      break;
  }
}

PhaseReport PhaseRun::report(EndReason reason, const PeakTracker& peaks) const {
  PhaseReport result;
  result.name = phase_.name;
  result.start = start_;
  result.duration = elapsed();
  result.loaded = loaded_after(phase_);
  result.time_to_reach = reached_;
  result.ended = reason;
  peaks.report(phase_.set_point, result);
  result.evaporated = run_.state()[slot::vapour_mass] - vapour_before_;
  result.energy = run_.state()[slot::heater_energy] - heater_before_;
  return result;
}

PhaseReport PhaseRun::run(Recorder& recorder, int index) {
  PeakTracker peaks(run_, phase_.regulated);
  prepare_switches();
  install_proportional_control();
  std::optional<EndReason> end;
  for (;;) {
    pour_due();
    settle_switches();
    note_reached();
    apply_inputs();
    if (elapsed() == 0.0) recorder.write(index, run_.time(), run_.state());
    if (reached_) peaks.start_overshoot();
    peaks.look(run_.state());
    end = fired_rule_ ? reason_of(phase_.ends[*fired_rule_].kind) : end_met();
    if (end) break;
    collect_watches();
    const int fired = run_.advance(next_break(), watches_,
                                   [&](double begin, double until, const DenseOutput& at) {
                                     recorder(index, begin, until, at);
                                     peaks(begin, until, at);
                                   });
    if (fired >= 0) act_on(alarms_[static_cast<std::size_t>(fired)]);
  }
  recorder.write(index, run_.time(), run_.state());
  run_.set_feedback(nullptr);
  return report(*end, peaks);
}

}  // namespace kettlecast
