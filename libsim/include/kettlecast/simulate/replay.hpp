#pragma once

#include <vector>

#include "kettlecast/kettle/model.hpp"
#include "kettlecast/simulate/trace.hpp"

namespace kettlecast {

/// Logged drive signals, one value per time; each value holds from halfway before its time to
/// halfway after it, which is the best guess for a switch seen between two samples.
struct DriveSignals {
  std::vector<double> time;            ///< rising [s]
  std::vector<double> floor_heat;      ///< share of nominal power [-]
  std::vector<double> jacket_heat;     ///< share of nominal power [-]
  std::vector<double> agitator_speed;  ///< [1/s]

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("time", &DriveSignals::time);
    visit("floor_heat", &DriveSignals::floor_heat);
    visit("jacket_heat", &DriveSignals::jacket_heat);
    visit("agitator_speed", &DriveSignals::agitator_speed);
  }
  bool operator==(const DriveSignals& other) const { return equal_records(*this, other); }
};

/// An addition and when its pour began.
struct TimedAddition {
  double time = 0.0;  ///< [s]
  Addition addition;

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("time", &TimedAddition::time);
    visit("addition", &TimedAddition::addition);
  }
  bool operator==(const TimedAddition& other) const { return equal_records(*this, other); }
};

/// Cover and jacket from a time on.
struct TimedSetting {
  double time = 0.0;  ///< [s]
  Cover cover = Cover::open;
  double jacket_limit = 373.15;  ///< [K]
  double cooling = 0.0;          ///< share of the cold flow of the jacket [-]
  double cool_limit = 0.0;       ///< the jacket cools while it is warmer than this [K]

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("time", &TimedSetting::time);
    visit("cover", &TimedSetting::cover);
    visit("jacket_limit", &TimedSetting::jacket_limit);
    visit("cooling", &TimedSetting::cooling);
    visit("cool_limit", &TimedSetting::cool_limit);
  }
  bool operator==(const TimedSetting& other) const { return equal_records(*this, other); }
};

/// Everything about a logged run that drives the model, and when to read it. Either the logged
/// signals and pours drive it or, in closed loop, the controller of the kettle through phases.
struct RunPlan {
  DriveSignals signals;
  std::vector<TimedAddition> pours;
  std::vector<TimedSetting> settings;
  Surroundings surroundings;
  Start start;
  std::vector<double> output_times;  ///< rising [s]
  /// In closed loop: the phases, from the time 0 on; signals, pours and settings are then not used.
  std::vector<Phase> closed_loop;

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("signals", &RunPlan::signals);
    visit("pours", &RunPlan::pours);
    visit("settings", &RunPlan::settings);
    visit("surroundings", &RunPlan::surroundings);
    visit("start", &RunPlan::start);
    visit("output_times", &RunPlan::output_times);
    visit("closed_loop", &RunPlan::closed_loop);
  }
  bool operator==(const RunPlan& other) const { return equal_records(*this, other); }
};

/// What the sensors of the model show at the output times of a plan.
struct Replay {
  std::vector<double> floor_reading;  ///< [K]
  std::vector<double> probe_reading;  ///< [K]
  std::vector<double> evaporated;     ///< since the start [kg]
  Balance balance;
};

/// Runs the model with the logged heat, jacket, agitator, lid and pours; no controller acts. This
/// is what fits use: it is well conditioned, because a wrong coefficient cannot shift a switch.
///
/// A plan in closed loop is for logs without heater signals: the controller switches as in a
/// forecast. After the last phase the last readings stay.
///
/// @throws InvalidArgument for impossible input, IntegrationFailure with time and component
Replay replay(const Kettle& kettle, const Coefficients& coefficients, const RunPlan& plan,
              const Options& options = {});

}  // namespace kettlecast
