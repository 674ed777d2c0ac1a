#include <atomic>
#include <chrono>
#include <stdexcept>
#include <thread>

#include "batch.hpp"
#include "kettlecast/base/errors.hpp"
#include "kettlecast/ensemble/many.hpp"
#include "kettlecast/ensemble/parallel.hpp"
#include "message.hpp"

using namespace kettlecast;

namespace {

const auto no_poll = [] {};

EnsembleOptions on_threads(unsigned threads) {
  EnsembleOptions options;
  options.threads = threads;
  return options;
}

/// Ten minutes of heating 40 kg of water, read every minute.
RunPlan heating_plan(double heat) {
  RunPlan plan;
  plan.signals.time = {0.0, 600.0};
  plan.signals.floor_heat = {heat, heat};
  plan.signals.jacket_heat = {0.0, 0.0};
  plan.signals.agitator_speed = {0.5, 0.5};
  plan.pours = {{5.0, batch::liquid(batch::water(), 40.0, 288.15)}};
  for (double time = 60.0; time <= 600.0; time += 60.0) plan.output_times.push_back(time);
  return plan;
}

std::vector<ReplayTask> tasks() {
  std::vector<ReplayTask> all;
  for (int i = 0; i < 6; ++i) {
    all.push_back(
        {static_cast<std::size_t>(i % 2), Coefficients().with("probe.lag", 5.0 + 3.0 * i)});
  }
  return all;
}

}  // namespace

TEST_CASE("an ensemble does not depend on the number of threads") {
  const std::vector<RunPlan> plans{heating_plan(1.0), heating_plan(0.5)};
  const auto alone = replay_many(batch::stew_kettle(), plans, tasks(), on_threads(1));
  const auto many = replay_many(batch::stew_kettle(), plans, tasks(), on_threads(4));
  REQUIRE(alone.size() == 6);
  for (std::size_t i = 0; i < alone.size(); ++i) {
    CHECK(alone[i].probe_reading == many[i].probe_reading);
    CHECK(alone[i].floor_reading == many[i].floor_reading);
    CHECK(alone[i].balance == many[i].balance);
    // And each is what a replay on its own gives.
    const auto task = tasks()[i];
    const auto single = replay(batch::stew_kettle(), task.coefficients, plans[task.plan]);
    CHECK(single.probe_reading == alone[i].probe_reading);
  }
}

TEST_CASE("forecasts of an ensemble are those of single runs") {
  const Recipe recipe{"heat",
                      {batch::hold(330.0, 60.0, {batch::liquid(batch::water(), 20.0, 290.0)})}};
  std::vector<ForecastTask> tasks(2, {batch::stew_kettle(), {}, recipe, {}});
  tasks[1].coefficients = Coefficients().with("probe.lag", 30.0);
  const auto many = simulate_many(tasks, on_threads(2));
  REQUIRE(many.size() == 2);
  for (std::size_t i = 0; i < tasks.size(); ++i) {
    CHECK(many[i].phases == batch::run(batch::stew_kettle(), recipe, tasks[i].coefficients).phases);
    CHECK(many[i].failure.empty());
  }
  CHECK_FALSE(many[0].phases == many[1].phases);
}

TEST_CASE("a member that cannot be run says why and does not stop the others") {
  const Recipe recipe{"heat",
                      {batch::hold(330.0, 60.0, {batch::liquid(batch::water(), 20.0, 290.0)})}};
  std::vector<ForecastTask> tasks(3, {batch::stew_kettle(), {}, recipe, {}});
  tasks[1].recipe.phases[0].additions[0].mass = 5000.0;
  const auto many = simulate_many(tasks, on_threads(2));
  CHECK(many[1].phases.empty());
  CHECK_THAT(many[1].failure, mentions("allowed are at most"));
  CHECK(many[0].phases.size() == 1);
  CHECK(many[0] == many[2]);
}

TEST_CASE("a plan that does not exist is refused") {
  const std::vector<RunPlan> plans{heating_plan(1.0)};
  const auto run = [&] { replay_many(batch::stew_kettle(), plans, tasks(), on_threads(1)); };
  CHECK_THROWS_AS(run(), InvalidArgument);
  CHECK_THROWS_WITH(run(), mentions("plan 1 does not exist, there are 1"));
}

TEST_CASE("an error of one member reaches the caller with its type") {
  std::vector<RunPlan> plans{heating_plan(1.0), heating_plan(1.0)};
  plans[1].signals.floor_heat = {1.0, -1.0};
  const auto run = [&] { replay_many(batch::stew_kettle(), plans, tasks(), on_threads(3)); };
  CHECK_THROWS_AS(run(), InvalidArgument);
  CHECK_THROWS_WITH(run(), mentions("floor_heat must be between"));
}

TEST_CASE("every task runs once, whatever the number of threads") {
  for (unsigned threads : {0u, 1u, 3u, 50u}) {
    std::vector<std::atomic<int>> runs(20);
    parallel_for(
        runs.size(), threads, [&](std::size_t i) { ++runs[i]; }, no_poll);
    int once = 0;
    for (const auto& count : runs) once += count == 1;
    CHECK(once == 20);
  }
  CHECK_NOTHROW(parallel_for(
      0, 2, [](std::size_t) {}, no_poll));
}

TEST_CASE("a poll that throws stops the ensemble early") {
  std::atomic<int> done{0};
  const auto task = [&](std::size_t) {
    std::this_thread::sleep_for(std::chrono::milliseconds(20));
    ++done;
  };
  CHECK_THROWS_AS(parallel_for(200, 2, task, [] { throw std::runtime_error("interrupted"); }),
                  std::runtime_error);
  CHECK(done > 0);
  CHECK(done < 50);
}
