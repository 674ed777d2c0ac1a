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
