#pragma once

#include <optional>
#include <string>
#include <vector>

#include "kettlecast/kettle/model.hpp"
#include "kettlecast/simulate/trace.hpp"

namespace kettlecast {

/// How a phase ended.
enum class EndReason { held, elapsed, signal, mass_lost, timed_out };

/// What happened in one phase. Times in s, temperatures in K.
template <class T>
struct BasicPhaseReport {
  std::string name;
  T start = T(0.0);                ///< since the start of the run [s]
  T duration = T(0.0);             ///< [s]
  T loaded = T(0.0);               ///< end of the last pour, since the start of the phase [s]
  std::optional<T> time_to_reach;  ///< since the start of the phase [s]; none: not reached
  EndReason ended = EndReason::elapsed;
  T peak = T(0.0);          ///< highest true value of what is regulated [K]
  T peak_reading = T(0.0);  ///< highest reading of it [K]
  /// Highest value above the set point after first reaching it [K]; none: not reached.
  std::optional<T> overshoot;
  std::optional<T> overshoot_reading;
  T evaporated = T(0.0);  ///< water that left [kg]
  T energy = T(0.0);      ///< used by floor and jacket elements, before their losses [J]

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("name", &BasicPhaseReport::name);
    visit("start", &BasicPhaseReport::start);
    visit("duration", &BasicPhaseReport::duration);
    visit("loaded", &BasicPhaseReport::loaded);
    visit("time_to_reach", &BasicPhaseReport::time_to_reach);
    visit("ended", &BasicPhaseReport::ended);
    visit("peak", &BasicPhaseReport::peak);
    visit("peak_reading", &BasicPhaseReport::peak_reading);
    visit("overshoot", &BasicPhaseReport::overshoot);
    visit("overshoot_reading", &BasicPhaseReport::overshoot_reading);
    visit("evaporated", &BasicPhaseReport::evaporated);
    visit("energy", &BasicPhaseReport::energy);
  }
  bool operator==(const BasicPhaseReport& other) const { return equal_records(*this, other); }
};

using PhaseReport = BasicPhaseReport<double>;

/// Result of a forecast; owns its arrays.
struct Forecast {
  std::vector<PhaseReport> phases;
  Trace trace;
  Balance balance;
  double duration = 0.0;      ///< of the whole run [s]
  double product_mass = 0.0;  ///< at the end [kg]
  long steps = 0;             ///< of the integrator [-]
};

/// Runs a recipe in closed loop: the controller of the kettle switches the heat.
///
/// Order of operations at one instant: (1) controller and ceilings settle on the readings, (2) the
/// set point may count as reached, (3) agitator, jacket and lid, (4) pours that start or end, (5)
/// end rules, in the order of the recipe, then the time limit; (6) the next phase starts with the
/// state and the heater switch as they are. A set point counts as reached when the reading has
/// come within `reached_within` of it, everything of the phase has been poured and
/// `settle_after_pour` has passed since.
///
/// @param kettle        with controller and surroundings
/// @param coefficients  of this kettle
/// @param recipe        phases, run one after the other
/// @param start         temperatures at the start
/// @param options       accuracy and output
/// @throws InvalidArgument for impossible input, IntegrationFailure with time and phase
Forecast simulate(const Kettle& kettle, const Coefficients& coefficients, const Recipe& recipe,
                  const Start& start, const Options& options = {});

}  // namespace kettlecast
