#pragma once

#include <vector>

#include "kettlecast/simulate/forecast.hpp"
#include "kettlecast/simulate/lever.hpp"
#include "kettlecast/simulate/replay.hpp"

/// Runs with the slopes of their results, by dual numbers through steps, break points and events.
///
/// Eight levers are carried along at a time; the slopes share the control of the steps, a hundred
/// times more leniently than the values. Where the order of events is about to change, results jump
/// or bend, and slopes hold on the near side only.
namespace kettlecast {

/// A replay and the slopes of its readings; arrays have shape (output times, levers).
struct ReplaySlopes {
  Replay replay;
  std::vector<double> floor_reading;  ///< [K per unit of the lever]
  std::vector<double> probe_reading;  ///< [K per unit of the lever]
  std::vector<double> evaporated;     ///< [kg per unit of the lever]
};

/// A replay with slopes.
///
/// @param levers  what to differentiate by; additions are the pours of the plan, in order; a replay
///                has no set points
/// @throws as replay; InvalidArgument for a lever that does not exist
ReplaySlopes replay_slopes(const Kettle& kettle, const Coefficients& coefficients,
                           const RunPlan& plan, const std::vector<Lever>& levers,
                           const Options& options = {});

/// Slopes of what a phase reports, shape (levers) each, in the units of PhaseReport per unit of the
/// lever; empty where the phase has no such result.
struct PhaseSlopes {
  std::vector<double> start, duration, time_to_reach, peak, peak_reading, overshoot,
      overshoot_reading, evaporated, energy;

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("start", &PhaseSlopes::start);
    visit("duration", &PhaseSlopes::duration);
    visit("time_to_reach", &PhaseSlopes::time_to_reach);
    visit("peak", &PhaseSlopes::peak);
    visit("peak_reading", &PhaseSlopes::peak_reading);
    visit("overshoot", &PhaseSlopes::overshoot);
    visit("overshoot_reading", &PhaseSlopes::overshoot_reading);
    visit("evaporated", &PhaseSlopes::evaporated);
    visit("energy", &PhaseSlopes::energy);
  }
  bool operator==(const PhaseSlopes& other) const { return equal_records(*this, other); }
};

/// A forecast without its trace, and its slopes.
struct ForecastSlopes {
  std::vector<PhaseReport> phases;
  std::vector<PhaseSlopes> slopes;   ///< of each phase
  std::vector<double> duration;      ///< slopes of the time of the whole run [s per unit]
  std::vector<double> product_mass;  ///< slopes of the product at the end [kg per unit]
};

/// A forecast with slopes. Several passes are made if there are more than eight levers.
///
/// @param levers  what to differentiate by; additions are those of the recipe, in order
/// @throws as simulate; InvalidArgument for a lever that does not exist
ForecastSlopes simulate_slopes(const Kettle& kettle, const Coefficients& coefficients,
                               const Recipe& recipe, const Start& start,
                               const std::vector<Lever>& levers, const Options& options = {});

}  // namespace kettlecast
