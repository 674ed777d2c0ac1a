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

std::vector<Forecast> simulate_many(const Kettle& kettle,
                                    const std::vector<Coefficients>& coefficients,
                                    const Recipe& recipe, const Start& start,
                                    const EnsembleOptions& options) {
  std::vector<Forecast> results(coefficients.size());
  const auto run = [&](std::size_t i) {
    results[i] = simulate(kettle, coefficients[i], recipe, start, options.run);
  };
  parallel_for(coefficients.size(), options.threads, run, options.poll);
  return results;
}

}  // namespace kettlecast
