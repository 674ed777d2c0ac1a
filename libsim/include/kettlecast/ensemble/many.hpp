#pragma once

#include <functional>
#include <string>
#include <vector>

#include "kettlecast/base/record.hpp"
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

/// One forecast of an ensemble: everything that may differ from member to member.
struct ForecastTask {
  Kettle kettle;
  Coefficients coefficients;
  Recipe recipe;
  Start start;

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("kettle", &ForecastTask::kettle);
    visit("coefficients", &ForecastTask::coefficients);
    visit("recipe", &ForecastTask::recipe);
    visit("start", &ForecastTask::start);
  }
  bool operator==(const ForecastTask& other) const { return equal_records(*this, other); }
};

/// What became of one member of an ensemble of forecasts.
struct EnsembleMember {
  std::vector<PhaseReport> phases;  ///< none if it could not be run
  std::string failure;              ///< why it could not be run; empty if it was

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("phases", &EnsembleMember::phases);
    visit("failure", &EnsembleMember::failure);
  }
  bool operator==(const EnsembleMember& other) const { return equal_records(*this, other); }
};

/// Forecasts many tasks. A member that cannot be run says why and does not stop the others, since
/// an ensemble must count those it lost.
/// @returns one member per task, in the order of the tasks
std::vector<EnsembleMember> simulate_many(const std::vector<ForecastTask>& tasks,
                                          const EnsembleOptions& options);

}  // namespace kettlecast
