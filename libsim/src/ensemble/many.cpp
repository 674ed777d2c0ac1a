#include "kettlecast/ensemble/many.hpp"

#include "kettlecast/base/errors.hpp"
#include "kettlecast/ensemble/parallel.hpp"

namespace kettlecast {

std::vector<Replay> replay_many(const Kettle& kettle, const std::vector<RunPlan>& plans,
                                const std::vector<ReplayTask>& tasks,
                                const EnsembleOptions& options) {
  for (const auto& task : tasks) {
    if (task.plan >= plans.size()) {
      throw InvalidArgument("replay_many: plan " + std::to_string(task.plan) +
                            " does not exist, there are " + std::to_string(plans.size()));
    }
  }
  std::vector<Replay> results(tasks.size());
  const auto run = [&](std::size_t i) {
    results[i] = replay(kettle, tasks[i].coefficients, plans[tasks[i].plan], options.run);
  };
  parallel_for(tasks.size(), options.threads, run, options.poll);
  return results;
}

std::vector<EnsembleMember> simulate_many(const std::vector<ForecastTask>& tasks,
                                          const EnsembleOptions& options) {
  std::vector<EnsembleMember> members(tasks.size());
  const auto run = [&](std::size_t i) {
    const ForecastTask& task = tasks[i];
    try {
      members[i].phases =
          simulate(task.kettle, task.coefficients, task.recipe, task.start, options.run).phases;
    } catch (const Error& error) {
      members[i].failure = error.message();
    }
  };
  parallel_for(tasks.size(), options.threads, run, options.poll);
  return members;
}

}  // namespace kettlecast
