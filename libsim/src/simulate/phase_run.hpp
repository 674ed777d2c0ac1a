#pragma once

#include <optional>
#include <vector>

#include "kettlecast/control/switching.hpp"
#include "recorder.hpp"

/// Shared by the sources of the forecast; not public.
namespace kettlecast {

/// The heater switch, which passes from phase to phase.
template <class T>
struct HeaterSwitch {
  bool on = false;
  T on_since = T(-1e9);  ///< [s]
};

/// One phase in closed loop.
template <class T>
class PhaseRun {
 public:
  /// @param first_addition  index of the first addition of the phase among those of the run
  PhaseRun(BatchRun<T>& run, const Phase& phase, std::size_t first_addition,
           HeaterSwitch<T> heater);

  /// Moves the set point by what has slopes but no value, so that results have slopes by it.
  void shift_set_point(const T& shift) { set_point_ += shift; }

  /// Runs the phase to its end.
  BasicPhaseReport<T> run(Witness<T>& witness, int index);

  HeaterSwitch<T> heater() const { return heater_; }

 private:
  enum class Alarm { heater, floor_limit, difference_limit, reached, end_rule };
  struct WatchedAlarm {
    Alarm alarm;
    std::size_t rule;
  };

  using StateVector = std::vector<T>;

  /// Since the start of the phase [s].
  T elapsed() const { return run_.time() - start_; }
  bool elapsed_to(const T& when) const;
  T signal(const StateVector& x) const { return reading_of(phase_.regulated, x); }
  bool regulates() const { return phase_.regulated != Regulated::none; }
  bool proportional() const;
  bool held_on() const;
  T ready_after() const;
  void prepare_switches();
  void settle_switches();
  void apply_inputs();
  void apply_agitation(BasicInputs<T>& inputs) const;
  /// What the controller acts on: the floor, or the jacket of a kettle without floor elements.
  T& controlled_heat(BasicInputs<T>& inputs) const {
    return by_jacket_ ? inputs.jacket_heat : inputs.floor_heat;
  }
  /// The most that it may ask for [-]; of a jacket, a share of its level.
  double highest_heat() const {
    return by_jacket_ ? phase_.heat_limit * phase_.jacket_share : phase_.heat_limit;
  }
  T lost_beyond(const EndRule& rule, const StateVector& x) const;
  T delay_of(std::size_t addition) const;
  T loaded_after() const;
  void pour_due();
  void note_reached();
  std::optional<EndReason> end_met() const;
  bool rule_met(const EndRule& rule) const;
  T next_break() const;
  double next_agitator_change() const;
  void collect_watches();
  void watch_switch(const Hysteresis& band, Regulated what, Alarm alarm);
  void watch_demand();
  void watch_ends();
  void act_on(const WatchedAlarm& fired);
  void install_proportional_control();
  BasicPhaseReport<T> report(EndReason reason, const PeakTracker<T>& peaks) const;

  BatchRun<T>& run_;
  const Phase& phase_;
  std::size_t first_addition_;
  const Controller& controller_;
  bool by_jacket_;
  HeaterSwitch<T> heater_;
  Hysteresis demand_, floor_ceiling_, difference_ceiling_;
  T start_;
  T set_point_;
  std::vector<bool> pour_started_, pour_ended_;
  std::optional<T> reached_;  ///< since the start of the phase [s]
  std::optional<std::size_t> fired_rule_;
  T mass_held_;  ///< at the start of the phase, with its additions [kg]
  T vapour_before_, heater_before_;
  std::vector<StateWatch<T>> watches_;
  std::vector<WatchedAlarm> alarms_;
};

}  // namespace kettlecast
