#include "kettlecast/fit/map_fit.hpp"

#include <algorithm>
#include <cstdint>
#include <limits>
#include <random>

#include "kettlecast/base/errors.hpp"
#include "kettlecast/ensemble/parallel.hpp"
#include "kettlecast/numerics/multi_start.hpp"
#include "run_residuals.hpp"

namespace kettlecast {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

std::vector<double> plain(const VectorXd& values) { return {values.begin(), values.end()}; }

void check_run(const Observed& run, const std::vector<RunPlan>& plans) {
  if (run.plan >= plans.size()) {
    throw InvalidArgument("map_fit: plan " + std::to_string(run.plan) +
                          " does not exist, there are " + std::to_string(plans.size()));
  }
  const std::size_t count = plans[run.plan].output_times.size();
  const bool floor_fits = run.floor_reading.empty() || run.floor_reading.size() == count;
  if (run.probe_reading.size() != count || !floor_fits) {
    throw InvalidArgument("map_fit: readings of plan " + std::to_string(run.plan) +
                          " must match its " + std::to_string(count) + " output times");
  }
  const double infinite = std::numeric_limits<double>::max();
  require_between("Observed", "floor_weight", run.floor_weight, 0.0, infinite, "");
  require_between("Observed", "probe_weight", run.probe_weight, 0.0, infinite, "");
}

void check_names(const FitSettings& settings) {
  std::vector<std::string> all = settings.names;
  all.insert(all.end(), settings.per_run.begin(), settings.per_run.end());
  std::sort(all.begin(), all.end());
  const auto twice = std::adjacent_find(all.begin(), all.end());
  if (twice == all.end()) return;
  throw InvalidArgument("map_fit: \"" + *twice + "\" stands twice among the coefficients to fit");
}

void check(const std::vector<RunPlan>& plans, const std::vector<Observed>& observed,
           const FitSettings& settings) {
  if (observed.empty() || settings.names.size() + settings.per_run.size() == 0) {
    throw InvalidArgument("map_fit: needs one run or more and one coefficient or more to fit");
  }
  check_names(settings);
  for (const auto& run : observed) check_run(run, plans);
  const double smallest = std::numeric_limits<double>::min();
  const double largest = std::numeric_limits<double>::max();
  require_between("FitSettings", "damping", settings.damping, 0.0, largest, "");
  require_between("FitSettings", "starts", settings.starts, 1, 1000, "");
  require_between("FitSettings", "seed", settings.seed, 0, std::numeric_limits<int>::max(), "");
  require_between("FitSettings", "floor_error", settings.floor_error, smallest, largest, "K");
  require_between("FitSettings", "probe_error", settings.probe_error, smallest, largest, "K");
}

MapFit result_of(const LeastSquaresSummary& found, const RunResiduals& residuals,
                 std::size_t runs) {
  MapFit fit;
  for (std::size_t i = 0; i < runs; ++i) {
    fit.of_runs.push_back(residuals.coefficients(found.x, i));
  }
  fit.scaled = plain(found.x);
  fit.residuals = plain(found.residuals.head(residuals.data_count()));
  const Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor> slopes =
      residuals.jacobian(found.x).topRows(residuals.data_count());
  fit.jacobian.assign(slopes.data(), slopes.data() + slopes.size());
  fit.replays = residuals.replays(found.x);
  fit.cost = found.cost;
  fit.evaluations = found.evaluations;
  fit.converged = found.converged();
  fit.message = in_words(found.reason);
  return fit;
}

/// Points from which searches start: the given one, and others spread within the priors.
std::vector<VectorXd> starts_of(const RunResiduals& residuals, const FitSettings& settings) {
  std::vector<VectorXd> starts{residuals.start()};
  if (settings.starts == 1) return starts;
  constexpr double spreads = 2.0;
  const VectorXd lower = residuals.lower().cwiseMax(-spreads);
  const VectorXd upper = residuals.upper().cwiseMin(spreads);
  std::mt19937_64 random(static_cast<std::uint64_t>(settings.seed));
  const auto others = starts_within(lower, upper, settings.starts - 1, random);
  starts.insert(starts.end(), others.begin(), others.end());
  return starts;
}

}  // namespace

MapFit map_fit(const Kettle& kettle, const std::vector<RunPlan>& plans,
               const std::vector<Observed>& observed, const FitSettings& settings,
               const EnsembleOptions& options) {
  check(plans, observed, settings);
  RunResiduals residuals(kettle, plans, observed, settings, options);
  residuals.at(residuals.start());  // a start that cannot be replayed has a message of its own
  MultiStartOptions search;
  search.search = residuals.search();
  search.same_point = 0.1;  // of a prior spread: the tolerance of a search leaves that much
  search.lengths = VectorXd::Ones(residuals.coefficient_count());
  const auto all = minimise_from(residuals.problem(), starts_of(residuals, settings), search);
  MapFit fit = result_of(all.best, residuals, observed.size());
  fit.starts_at_best = all.reached_best;
  for (const auto& minimum : all.minima) fit.minimum_costs.push_back(minimum.cost);
  return fit;
}

std::vector<std::vector<double>> map_residuals(const Kettle& kettle,
                                               const std::vector<RunPlan>& plans,
                                               const std::vector<Observed>& observed,
                                               const FitSettings& settings,
                                               const std::vector<std::vector<double>>& points,
                                               const EnsembleOptions& options) {
  check(plans, observed, settings);
  EnsembleOptions alone = options;  // threads share the points, not the runs of one
  alone.threads = 1;
  alone.poll = [] {};
  std::vector<std::vector<double>> found(points.size());
  const auto one = [&](std::size_t i) {
    RunResiduals residuals(kettle, plans, observed, settings, alone);
    const auto count = static_cast<Index>(points[i].size());
    if (count != residuals.coefficient_count()) {
      throw InvalidArgument("map_residuals: point " + std::to_string(i) + " must hold " +
                            std::to_string(residuals.coefficient_count()) + " values, got " +
                            std::to_string(count));
    }
    const VectorXd at = residuals.tried(Eigen::Map<const VectorXd>(points[i].data(), count));
    if (at.allFinite()) found[i] = plain(at.head(residuals.data_count()));
  };
  parallel_for(points.size(), options.threads, one, options.poll);
  return found;
}

}  // namespace kettlecast
