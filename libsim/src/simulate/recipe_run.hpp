#pragma once

#include <vector>

#include "kettlecast/simulate/forecast.hpp"
#include "phase_run.hpp"
#include "seeded.hpp"

/// A recipe from its first phase to its last, with or without slopes; not public.
namespace kettlecast {

/// Additions of all phases, in order.
inline std::vector<Addition> all_additions(const Recipe& recipe) {
  std::vector<Addition> additions;
  for (const auto& phase : recipe.phases) {
    additions.insert(additions.end(), phase.additions.begin(), phase.additions.end());
  }
  return additions;
}

/// Runs all phases, each with the state and the heater switch that the one before leaves.
template <class T>
std::vector<BasicPhaseReport<T>> run_phases(BatchRun<T>& run, const Recipe& recipe,
                                            const Levers& levers, Witness<T>& witness) {
  std::vector<BasicPhaseReport<T>> reports;
  HeaterSwitch<T> heater;
  std::size_t first_addition = 0;
  for (std::size_t i = 0; i < recipe.phases.size(); ++i) {
    const Phase& phase = recipe.phases[i];
    PhaseRun<T> phase_run(run, phase, first_addition, heater);
    phase_run.shift_set_point(seed<T>(levers, LeverKind::set_point, i));
    try {
      reports.push_back(phase_run.run(witness, static_cast<int>(i)));
    } catch (const IntegrationFailure& failure) {
      throw IntegrationFailure(failure.reason, failure.time, failure.component, phase.name);
    }
    heater = phase_run.heater();
    first_addition += phase.additions.size();
  }
  return reports;
}

}  // namespace kettlecast
