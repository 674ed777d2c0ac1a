#pragma once

#include <functional>
#include <vector>

#include "kettlecast/simulate/forecast.hpp"
#include "kettlecast/simulate/replay.hpp"
#include "kettlecast/simulate/sensitivity.hpp"

/// Many runs of one kettle on several threads.
namespace kettlecast {

/// How to run an ensemble.
struct EnsembleOptions {
  Options run;                         ///< of each member
  unsigned threads = 0;                ///< 0: one per core
  std::function<void()> poll = [] {};  ///< called now and then; may throw to stop early
};

/// One replay of an ensemble: a plan with the coefficients to use.
struct ReplayTask {
  std::size_t plan = 0;  ///< index into the plans
  Coefficients coefficients;
};

/// Replays many sets of coefficients over some plans.
/// @returns one replay per task, in the order of the tasks
/// @throws what the first failing replay throws
std::vector<Replay> replay_many(const Kettle& kettle, const std::vector<RunPlan>& plans,
                                const std::vector<ReplayTask>& tasks,
                                const EnsembleOptions& options);

/// One replay with slopes of an ensemble.
struct SlopeTask {
  std::size_t plan = 0;  ///< index into the plans
  Coefficients coefficients;
  std::vector<Lever> levers;
};

/// Replays with slopes.
/// @returns one per task, in the order of the tasks
/// @throws what the first failing replay throws
std::vector<ReplaySlopes> replay_slopes_many(const Kettle& kettle,
                                             const std::vector<RunPlan>& plans,
                                             const std::vector<SlopeTask>& tasks,
                                             const EnsembleOptions& options);

/// Forecasts one recipe with many sets of coefficients.
/// @returns one forecast per set, in their order
/// @throws what the first failing forecast throws
std::vector<Forecast> simulate_many(const Kettle& kettle,
                                    const std::vector<Coefficients>& coefficients,
                                    const Recipe& recipe, const Start& start,
                                    const EnsembleOptions& options);

}  // namespace kettlecast
