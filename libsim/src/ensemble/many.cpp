#include "kettlecast/ensemble/many.hpp"

#include "kettlecast/base/errors.hpp"
#include "kettlecast/ensemble/parallel.hpp"

namespace kettlecast {

namespace {

template <class Task>
void check_plans(const char* where, const std::vector<Task>& tasks, std::size_t plans) {
  for (const auto& task : tasks) {
    if (task.plan < plans) continue;
    throw InvalidArgument(std::string(where) + ": plan " + std::to_string(task.plan) +
                          " does not exist, there are " + std::to_string(plans));
  }
}

}  // namespace

std::vector<Replay> replay_many(const Kettle& kettle, const std::vector<RunPlan>& plans,
                                const std::vector<ReplayTask>& tasks,
                                const EnsembleOptions& options) {
  check_plans("replay_many", tasks, plans.size());
  std::vector<Replay> results(tasks.size());
  const auto run = [&](std::size_t i) {
    results[i] = replay(kettle, tasks[i].coefficients, plans[tasks[i].plan], options.run);
  };
  parallel_for(tasks.size(), options.threads, run, options.poll);
  return results;
}

std::vector<ReplaySlopes> replay_slopes_many(const Kettle& kettle,
                                             const std::vector<RunPlan>& plans,
                                             const std::vector<SlopeTask>& tasks,
                                             const EnsembleOptions& options) {
  check_plans("replay_slopes_many", tasks, plans.size());
  std::vector<ReplaySlopes> results(tasks.size());
  const auto run = [&](std::size_t i) {
    results[i] = replay_slopes(kettle, tasks[i].coefficients, plans[tasks[i].plan], tasks[i].levers,
                               options.run);
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
