#include <cmath>
#include <stdexcept>
#include <string>
#include <vector>

#include "batch.hpp"
#include "catch.hpp"
#include "kettlecast/base/errors.hpp"
#include "kettlecast/fit/map_fit.hpp"
#include "kettlecast/fit/scaled.hpp"
#include "message.hpp"

using namespace kettlecast;

namespace {

const std::vector<std::string> varied{"floor.efficiency", "floor.film_factor", "probe.lag"};

Coefficients truth() {
  return Coefficients()
      .with("floor.efficiency", 0.93)
      .with("floor.film_factor", 1.3)
      .with("probe.lag", 20.0);
}

/// Forty minutes: water poured, heated for twenty, left for twenty, read every twenty seconds.
RunPlan plan_with(double water) {
  RunPlan plan;
  for (double time = 0.0; time <= 2400.0; time += 60.0) {
    plan.signals.time.push_back(time);
    plan.signals.floor_heat.push_back(time < 1200.0 ? 1.0 : 0.0);
    plan.signals.jacket_heat.push_back(0.0);
    plan.signals.agitator_speed.push_back(0.5);
  }
  plan.pours = {{5.0, batch::liquid(batch::water(), water, 288.15)}};
  for (double time = 20.0; time <= 2400.0; time += 20.0) plan.output_times.push_back(time);
  return plan;
}

const std::vector<RunPlan>& plans() {
  static const std::vector<RunPlan> both{plan_with(40.0), plan_with(60.0)};
  return both;
}

/// What the sensors of a kettle with the true coefficients show; the second run without a floor.
std::vector<Observed> made_readings() {
  std::vector<Observed> all;
  for (std::size_t i = 0; i < 2; ++i) {
    const auto shown = replay(batch::stew_kettle(), truth(), plans()[i]);
    all.push_back({i, shown.floor_reading, shown.probe_reading, 0.5, 0.5});
  }
  all[1].floor_reading.clear();
  return all;
}

FitSettings settings(double error) {
  FitSettings chosen;
  chosen.names = varied;
  chosen.floor_error = chosen.probe_error = error;
  return chosen;
}

MapFit fitted(const FitSettings& chosen, unsigned threads = 0) {
  EnsembleOptions options;
  options.threads = threads;
  return map_fit(batch::stew_kettle(), plans(), made_readings(), chosen, options);
}

}  // namespace

TEST_CASE("readings without noise give back the coefficients that made them") {
  // With an error of 1 mK hundreds of readings outweigh the priors by more than a million.
  const auto found = fitted(settings(1e-3));
  CHECK(found.converged);
  for (const auto& name : varied) {
    INFO(name);
    CHECK_THAT(found.of_runs[0].value(name),
               Catch::Matchers::WithinRel(truth().value(name), 1e-4));
  }
  CHECK(found.of_runs[0].value("floor.loss") == Coefficients().value("floor.loss"));
}

TEST_CASE("readings that count for nothing leave the priors") {
  const auto found = fitted(settings(1e9));
  CHECK(found.converged);
  for (const double scaled : found.scaled)
    CHECK_THAT(scaled, Catch::Matchers::WithinAbs(0.0, 1e-6));
}

TEST_CASE("a result fits together") {
  const auto readings = made_readings();
  const auto found = fitted(settings(0.5));
  const auto counts = readings[0].floor_reading.size() + 2 * readings[0].probe_reading.size();
  REQUIRE(found.residuals.size() == counts);
  REQUIRE(found.jacobian.size() == counts * varied.size());
  REQUIRE(found.replays.size() == 2);
  const auto scaled = to_scaled(found.of_runs[0], varied);
  for (std::size_t i = 0; i < scaled.size(); ++i) {
    CHECK_THAT(found.scaled[i], Catch::Matchers::WithinAbs(scaled[i], 1e-12));
  }
  // Cost from its definition, with the formula of soft_l1 written out; the last reading is the
  // probe of the second run.
  double cost = 0.0;
  for (const double r : found.residuals) cost += std::sqrt(1.0 + r * r) - 1.0;
  for (const double x : found.scaled) cost += std::sqrt(1.0 + x * x) - 1.0;
  CHECK_THAT(found.cost, Catch::Matchers::WithinRel(cost, 1e-9));
  const double difference =
      found.replays[1].probe_reading.back() - readings[1].probe_reading.back();
  CHECK_THAT(found.residuals.back(),
             Catch::Matchers::WithinAbs(std::sqrt(0.5) * difference / 0.5, 1e-12));
}

TEST_CASE("slopes of the result are central differences of replays") {
  const auto found = fitted(settings(0.5));
  for (std::size_t k = 0; k < varied.size(); ++k) {
    const auto shown = [&](double change) {
      auto point = found.scaled;
      point[k] += change;
      const auto moved = from_scaled(found.of_runs[0], varied, point);
      return replay(batch::stew_kettle(), moved, plans()[1]).probe_reading;
    };
    const auto above = shown(5e-3), below = shown(-5e-3);
    const auto rows = found.residuals.size();
    for (std::size_t i = 1; i <= above.size(); ++i) {
      const double quotient = (above[above.size() - i] - below[above.size() - i]) / 1e-2;
      const double slope = found.jacobian[(rows - i) * varied.size() + k];
      // A one-sided quotient over 1 % of a spread is off by half of that times the curvature,
      // which is at most about the slope itself.
      CHECK_THAT(slope, Catch::Matchers::WithinAbs(std::sqrt(0.5) / 0.5 * quotient, 0.05));
    }
  }
}

TEST_CASE("a fit does not depend on the number of threads") {
  const auto alone = fitted(settings(0.5), 1);
  const auto many = fitted(settings(0.5), 4);
  CHECK(alone.scaled == many.scaled);
  CHECK(alone.jacobian == many.jacobian);
}

TEST_CASE("a coefficient that the readings drive over its bound stops there") {
  auto weak = batch::stew_kettle();
  weak.floor_power *= 0.5;
  auto chosen = settings(0.1);
  chosen.names = {"floor.efficiency"};
  const auto found = map_fit(weak, plans(), made_readings(), chosen, {});
  CHECK(found.converged);
  CHECK(found.of_runs[0].value("floor.efficiency") == 1.1);
}

TEST_CASE("too few evaluations are said") {
  auto chosen = settings(0.1);
  chosen.max_evaluations = 1;
  const auto found = fitted(chosen);
  CHECK_FALSE(found.converged);
  CHECK(found.message == "the allowed number of evaluations is used up");
}

TEST_CASE("a poll that throws stops a fit") {
  EnsembleOptions options;
  int calls = 0;
  options.poll = [&] {
    if (++calls > 0) throw std::runtime_error("stopped");
  };
  options.run.max_step = 0.01;  // long enough for a poll
  const auto run = [&] {
    return map_fit(batch::stew_kettle(), plans(), made_readings(), settings(0.5), options);
  };
  CHECK_THROWS_WITH(run(), "stopped");
}

TEST_CASE("impossible fits are refused") {
  const auto kettle = batch::stew_kettle();
  auto readings = made_readings();
  CHECK_THROWS_WITH(map_fit(kettle, plans(), {}, settings(0.5), {}), mentions("one run or more"));
  CHECK_THROWS_WITH(map_fit(kettle, plans(), readings, FitSettings(), {}),
                    mentions("one coefficient or more"));
  auto chosen = settings(0.5);
  chosen.names = {"floor.efficency"};
  CHECK_THROWS_AS(map_fit(kettle, plans(), readings, chosen, {}), UnknownName);
  CHECK_THROWS_WITH(map_fit(kettle, plans(), readings, settings(0.0), {}),
                    mentions("floor_error must be between"));
  readings[1].plan = 2;
  CHECK_THROWS_WITH(map_fit(kettle, plans(), readings, settings(0.5), {}), mentions("plan 2"));
  readings[1].plan = 1;
  readings[1].probe_reading.pop_back();
  CHECK_THROWS_WITH(map_fit(kettle, plans(), readings, settings(0.5), {}),
                    mentions("must match its 120 output times"));
}
