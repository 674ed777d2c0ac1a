#pragma once

#include <optional>
#include <vector>

#include "kettlecast/control/switching.hpp"
#include "recorder.hpp"

/// Shared by the sources of the forecast; not public.
namespace kettlecast {

/// The heater switch, which passes from phase to phase.
struct HeaterSwitch {
  bool on = false;
  double on_since = -1e9;  ///< [s]
};

/// One phase in closed loop.
class PhaseRun {
 public:
  /// @param first_addition  index of the first addition of the phase among those of the run
  PhaseRun(BatchRun& run, const Phase& phase, std::size_t first_addition, HeaterSwitch heater);

  /// Runs the phase to its end.
  PhaseReport run(Recorder& recorder, int index);

  HeaterSwitch heater() const { return heater_; }

 private:
  enum class Alarm { heater, floor_limit, difference_limit, reached, end_rule };
  struct WatchedAlarm {
    Alarm alarm;
    std::size_t rule;
  };

  double elapsed() const { return run_.time() - start_; }
  double signal(const State& x) const { return reading_of(phase_.regulated, x); }
  bool regulates() const { return phase_.regulated != Regulated::none; }
  bool proportional() const;
  bool held_on() const;
  double ready_after() const;
  void prepare_switches();
  void settle_switches();
  void apply_inputs();
  void apply_agitation(Inputs& inputs) const;
  /// What the controller acts on: the floor, or the jacket of a kettle without floor elements.
  double& controlled_heat(Inputs& inputs) const {
    return by_jacket_ ? inputs.jacket_heat : inputs.floor_heat;
  }
  /// The most that it may ask for [-]; of a jacket, a share of its level.
  double highest_heat() const {
    return by_jacket_ ? phase_.heat_limit * phase_.jacket_share : phase_.heat_limit;
  }
  double lost_beyond(const EndRule& rule, const State& x) const;
  void pour_due();
  void note_reached();
  std::optional<EndReason> end_met() const;
  bool rule_met(const EndRule& rule) const;
  double next_break() const;
  double next_agitator_change() const;
  void collect_watches();
  void watch_switch(const Hysteresis& band, Regulated what, Alarm alarm);
  void watch_ends();
  void act_on(const WatchedAlarm& fired);
  void install_proportional_control();
  PhaseReport report(EndReason reason, const PeakTracker& peaks) const;

  BatchRun& run_;
  const Phase& phase_;
  std::size_t first_addition_;
  const Controller& controller_;
  bool by_jacket_;
  HeaterSwitch heater_;
  Hysteresis demand_, floor_ceiling_, difference_ceiling_;
  double start_ = 0.0;
  std::vector<bool> pour_started_;
  std::optional<double> reached_;  ///< since the start of the phase [s]
  std::optional<std::size_t> fired_rule_;
  double mass_held_ = 0.0;  ///< at the start of the phase, with its additions [kg]
  double vapour_before_ = 0.0, heater_before_ = 0.0;
  std::vector<Watch> watches_;
  std::vector<WatchedAlarm> alarms_;
};

}  // namespace kettlecast
