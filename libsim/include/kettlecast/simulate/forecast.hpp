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
struct PhaseReport {
  std::string name;
  double start = 0.0;                   ///< since the start of the run [s]
  double duration = 0.0;                ///< [s]
  double loaded = 0.0;                  ///< end of the last pour, since the start of the phase [s]
  std::optional<double> time_to_reach;  ///< since the start of the phase [s]; none: not reached
  EndReason ended = EndReason::elapsed;
  double peak = 0.0;          ///< highest true value of what is regulated [K]
  double peak_reading = 0.0;  ///< highest reading of it [K]
  /// Highest value above the set point after first reaching it [K]; none: not reached.
  std::optional<double> overshoot;
  std::optional<double> overshoot_reading;
  double evaporated = 0.0;  ///< water that left [kg]
  double energy = 0.0;      ///< used by floor and jacket elements, before their losses [J]

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("name", &PhaseReport::name);
    visit("start", &PhaseReport::start);
    visit("duration", &PhaseReport::duration);
    visit("loaded", &PhaseReport::loaded);
    visit("time_to_reach", &PhaseReport::time_to_reach);
    visit("ended", &PhaseReport::ended);
    visit("peak", &PhaseReport::peak);
    visit("peak_reading", &PhaseReport::peak_reading);
    visit("overshoot", &PhaseReport::overshoot);
    visit("overshoot_reading", &PhaseReport::overshoot_reading);
    visit("evaporated", &PhaseReport::evaporated);
    visit("energy", &PhaseReport::energy);
  }
  bool operator==(const PhaseReport& other) const { return equal_records(*this, other); }
};

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
/// Order of operations at one instant: (1) pours that end, (2) pours that start, (3) agitator,
/// (4) controller and ceilings settle on the readings, (5) the set point may count as reached,
/// (6) end rules, in the order of the recipe, then the time limit; (7) the next phase starts with
/// the state and the heater switch as they are. A set point counts as reached when the reading
/// has come within `reached_within` of it, everything of the phase has been poured and
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
