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

/// Value that crosses zero upwards when a signal rule is met.
template <class T>
T towards_end(const EndRule& rule, const std::vector<T>& x) {
  const T value = reading_of(rule.signal, x);
  return rule.kind == EndKind::above ? value - rule.value : rule.value - value;
}

}  // namespace

template <class T>
PhaseRun<T>::PhaseRun(BatchRun<T>& run, const Phase& phase, std::size_t first_addition,
                      HeaterSwitch<T> heater)
    : run_(run),
      phase_(phase),
      first_addition_(first_addition),
      controller_(run.model().kettle().controller),
      by_jacket_(heats_by_jacket(run.model().kettle())),
      heater_(heater),
      start_(run.time()),
      set_point_(phase.set_point),
      pour_started_(phase.additions.size(), false),
      pour_ended_(phase.additions.size(), false),
      mass_held_(run.model().product_mass(run.state())),
      vapour_before_(run.state()[slot::vapour_mass]),
      heater_before_(run.state()[slot::heater_energy]) {
  for (std::size_t i = 0; i < phase.additions.size(); ++i) {
    mass_held_ += phase.additions[i].mass * run.model().changes()[first_addition + i].mass_factor;
  }
}

/// Whether an instant of the phase has come.
template <class T>
bool PhaseRun<T>::elapsed_to(const T& when) const {
  return value_of(elapsed()) >= value_of(when) - instant;
}

/// When a pour starts, since the start of the phase [s]; none starts before the phase.
template <class T>
T PhaseRun<T>::delay_of(std::size_t addition) const {
  const T delay =
      phase_.additions[addition].delay + run_.model().changes()[first_addition_ + addition].delay;
  return delay < 0.0 ? T(0.0) : delay;
}

/// End of the last pour, since the start of the phase [s].
template <class T>
T PhaseRun<T>::loaded_after() const {
  T last(0.0);
  for (std::size_t i = 0; i < phase_.additions.size(); ++i) {
    last = std::max(last, T(delay_of(i) + phase_.additions[i].pour_time));
  }
  return last;
}

template <class T>
bool PhaseRun<T>::proportional() const {
  return regulates() && controller_.kind == ControllerKind::proportional_integral;
}

/// Whether the heat must stay on, because it came on so recently.
template <class T>
bool PhaseRun<T>::held_on() const {
  return demand_.on && run_.time() - heater_.on_since < controller_.minimum_on_time - instant;
}

/// Mass of water lost in this phase beyond what ends it [kg].
template <class T>
T PhaseRun<T>::lost_beyond(const EndRule& rule, const StateVector& x) const {
  const T wanted = rule.kind == EndKind::share_lost ? rule.value * mass_held_ : T(rule.value);
  return x[slot::vapour_mass] - vapour_before_ - wanted;
}

/// When the set point may first count as reached, since the start of the phase [s].
template <class T>
T PhaseRun<T>::ready_after() const {
  if (phase_.additions.empty()) return T(0.0);
  return loaded_after() + controller_.settle_after_pour;
}

template <class T>
void PhaseRun<T>::prepare_switches() {
  const double band = controller_.dead_band;
  demand_ = {phase_.set_point - band, phase_.set_point, heater_.on};
  floor_ceiling_ = {phase_.floor_limit - band, phase_.floor_limit, true};
  difference_ceiling_ = {phase_.difference_limit - band, phase_.difference_limit, true};
}

template <class T>
void PhaseRun<T>::settle_switches() {
  const auto& x = run_.state();
  if (!held_on()) demand_.settle(value_of(signal(x)));
  floor_ceiling_.settle(value_of(reading_of(Regulated::floor, x)));
  difference_ceiling_.settle(value_of(reading_of(Regulated::difference, x)));
  const bool was_on = heater_.on;
  heater_.on = regulates() && demand_.on && floor_ceiling_.on && difference_ceiling_.on;
  if (heater_.on && !was_on) heater_.on_since = run_.time();
}

template <class T>
void PhaseRun<T>::apply_inputs() {
  auto& inputs = run_.inputs();
  const bool heats = phase_.jacket == JacketUse::heat;
  inputs.jacket_heat = heats ? phase_.jacket_share : 0.0;
  inputs.jacket_limit = heats || !by_jacket_ ? phase_.jacket_limit : no_limit;
  inputs.cooling = phase_.jacket == JacketUse::cool ? 1.0 : 0.0;
  inputs.cool_limit = phase_.jacket_cool_limit;
  if (!proportional() && (regulates() || !by_jacket_)) {
    controlled_heat(inputs) = T(heater_.on ? highest_heat() : 0.0);
  }
  inputs.cover = phase_.cover;
  apply_agitation(inputs);
}

template <class T>
void PhaseRun<T>::apply_agitation(BasicInputs<T>& inputs) const {
  const auto& stir = phase_.agitation;
  const double cycle = cycle_of(stir), now = value_of(elapsed()) + instant;
  const bool turning = cycle <= 0.0 || std::fmod(now, cycle) < stir.on_time;
  const bool odd = cycle > 0.0 && std::fmod(now, 2.0 * cycle) >= cycle;
  inputs.agitator_speed = turning ? stir.speed : 0.0;
  inputs.reversed = stir.reversing && odd;
}

template <class T>
void PhaseRun<T>::install_proportional_control() {
  if (!proportional()) {
    run_.set_feedback(nullptr);
    return;
  }
  run_.set_feedback([this](const StateVector& x, BasicInputs<T>& inputs, T& extra_rate) {
    const T error = set_point_ - signal(x);
    const bool allowed = floor_ceiling_.on && difference_ceiling_.on;
    const PiOutput<T> output = pi_output(controller_.gain, error, x.back(), highest_heat());
    controlled_heat(inputs) = allowed ? output.applied : T(0.0);
    extra_rate = pi_integral_rate(controller_.gain, error, output, controller_.integral_time);
  });
}

template <class T>
void PhaseRun<T>::pour_due() {
  for (std::size_t i = 0; i < phase_.additions.size(); ++i) {
    const auto& addition = phase_.additions[i];
    const T delay = delay_of(i);
    if (!pour_started_[i] && elapsed_to(delay)) {
      pour_started_[i] = true;
      run_.meet(start_ + delay);
      run_.start_pour(first_addition_ + i);
    }
    if (!pour_ended_[i] && elapsed_to(delay + addition.pour_time)) {
      pour_ended_[i] = true;
      run_.meet(start_ + delay + addition.pour_time);
      run_.end_pour(first_addition_ + i);
    }
  }
}

template <class T>
void PhaseRun<T>::note_reached() {
  if (reached_ || !regulates() || !elapsed_to(ready_after())) return;
  if (signal(run_.state()) >= phase_.set_point - controller_.reached_within) reached_ = elapsed();
}

template <class T>
bool PhaseRun<T>::rule_met(const EndRule& rule) const {
  const bool ready = elapsed_to(ready_after());
  switch (rule.kind) {
    case EndKind::held:
      return reached_ && elapsed_to(*reached_ + rule.value);
    case EndKind::elapsed:
      return elapsed_to(T(rule.value));
    case EndKind::mass_lost:
    case EndKind::share_lost:
      return ready && lost_beyond(rule, run_.state()) >= 0.0;
    default:
      return ready && towards_end(rule, run_.state()) >= 0.0;
  }
}

template <class T>
std::optional<EndReason> PhaseRun<T>::end_met() const {
  for (const auto& rule : phase_.ends) {
    if (rule_met(rule)) return reason_of(rule.kind);
  }
  if (elapsed_to(T(phase_.time_limit))) return EndReason::timed_out;
  return std::nullopt;
}

template <class T>
double PhaseRun<T>::next_agitator_change() const {
  const auto& stir = phase_.agitation;
  const double cycle = cycle_of(stir);
  if (cycle <= 0.0) return no_limit;
  const double now = value_of(elapsed()) + instant;
  const double begun = std::floor(now / cycle) * cycle;
  const double off = begun + stir.on_time;
  return off > now ? off : begun + cycle;
}

/// Next break point of the phase [s since the start of the run].
template <class T>
T PhaseRun<T>::next_break() const {
  T next(std::min(phase_.time_limit, next_agitator_change()));
  const auto consider = [&](const T& when) {
    if (!elapsed_to(when)) next = std::min(next, when);
  };
  for (std::size_t i = 0; i < phase_.additions.size(); ++i) {
    consider(delay_of(i));
    consider(delay_of(i) + phase_.additions[i].pour_time);
  }
  consider(ready_after());
  consider(heater_.on_since + controller_.minimum_on_time - start_);
  for (const auto& rule : phase_.ends) {
    if (rule.kind == EndKind::elapsed) consider(T(rule.value));
    if (rule.kind == EndKind::held && reached_) consider(*reached_ + rule.value);
  }
  return start_ + next;
}

template <class T>
void PhaseRun<T>::watch_switch(const Hysteresis& band, Regulated what, Alarm alarm) {
  if (!std::isfinite(band.threshold())) return;
  watches_.push_back({[what, level = band.threshold()](const StateVector& x) {
                        return reading_of(what, x) - level;
                      },
                      band.on ? Crossing::rising : Crossing::falling});
  alarms_.push_back({alarm, 0});
}

/// As the switch of a ceiling, at a set point that may have slopes.
template <class T>
void PhaseRun<T>::watch_demand() {
  const T level = demand_.threshold() - phase_.set_point + set_point_;
  watches_.push_back({[this, level](const StateVector& x) { return signal(x) - level; },
                      demand_.on ? Crossing::rising : Crossing::falling});
  alarms_.push_back({Alarm::heater, 0});
}

template <class T>
void PhaseRun<T>::watch_ends() {
  if (!elapsed_to(ready_after())) return;
  for (std::size_t i = 0; i < phase_.ends.size(); ++i) {
    const EndRule& rule = phase_.ends[i];
    if (rule.kind == EndKind::held || rule.kind == EndKind::elapsed) continue;
    watches_.push_back({[this, &rule](const StateVector& x) {
                          return watches_signal(rule) ? towards_end(rule, x) : lost_beyond(rule, x);
                        },
                        Crossing::rising});
    alarms_.push_back({Alarm::end_rule, i});
  }
}

template <class T>
void PhaseRun<T>::collect_watches() {
  watches_.clear();
  alarms_.clear();
  if (regulates() && !proportional() && !held_on()) {
    watch_demand();
  }
  watch_switch(floor_ceiling_, Regulated::floor, Alarm::floor_limit);
  watch_switch(difference_ceiling_, Regulated::difference, Alarm::difference_limit);
  if (regulates() && !reached_ && elapsed_to(ready_after())) {
    const T level = set_point_ - controller_.reached_within;
    watches_.push_back(
        {[this, level](const StateVector& x) { return signal(x) - level; }, Crossing::rising});
    alarms_.push_back({Alarm::reached, 0});
  }
  watch_ends();
}

/// A located crossing is a fact even if rounding leaves the value a hair short of its level.
template <class T>
void PhaseRun<T>::act_on(const WatchedAlarm& fired) {
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

template <class T>
BasicPhaseReport<T> PhaseRun<T>::report(EndReason reason, const PeakTracker<T>& peaks) const {
  BasicPhaseReport<T> result;
  result.name = phase_.name;
  result.start = start_;
  result.duration = elapsed();
  result.loaded = loaded_after();
  result.time_to_reach = reached_;
  result.ended = reason;
  peaks.report(set_point_, result);
  result.evaporated = run_.state()[slot::vapour_mass] - vapour_before_;
  result.energy = run_.state()[slot::heater_energy] - heater_before_;
  return result;
}

template <class T>
BasicPhaseReport<T> PhaseRun<T>::run(Witness<T>& witness, int index) {
  PeakTracker<T> peaks(run_, phase_.regulated);
  prepare_switches();
  install_proportional_control();
  std::optional<EndReason> end;
  for (;;) {
    settle_switches();
    note_reached();
    apply_inputs();
    pour_due();
    if (elapsed() == 0.0) witness.instant(index, value_of(run_.time()), run_.state());
    if (reached_) peaks.start_overshoot();
    peaks.look(run_.state());
    end = fired_rule_ ? reason_of(phase_.ends[*fired_rule_].kind) : end_met();
    if (end) break;
    collect_watches();
    const int fired =
        run_.advance(next_break(), watches_, [&](double begin, double until, const StateAt<T>& at) {
          witness.step(index, begin, until, at);
          peaks(begin, until, at);
        });
    if (fired >= 0) act_on(alarms_[static_cast<std::size_t>(fired)]);
  }
  witness.instant(index, value_of(run_.time()), run_.state());
  run_.set_feedback(nullptr);
  return report(*end, peaks);
}

template class PhaseRun<double>;
template class PhaseRun<Dual8>;

}  // namespace kettlecast
