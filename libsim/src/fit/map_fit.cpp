#include "kettlecast/fit/map_fit.hpp"

#include <algorithm>
#include <limits>

#include "kettlecast/base/errors.hpp"
#include "kettlecast/numerics/least_squares.hpp"
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

LeastSquaresOptions search_options(const FitSettings& settings, const RunResiduals& residuals) {
  LeastSquaresOptions search;
  search.cost_tolerance = search.step_tolerance = settings.tolerance;
  search.max_evaluations = settings.max_evaluations;
  search.loss = settings.loss;
  // In prior spreads all coefficients bend the readings alike. From defaults that are guesses an
  // undamped step would go twenty spreads far.
  search.scale = StepScale::given_units;
  search.damping = 1.0;
  search.lower = residuals.lower();
  search.upper = residuals.upper();
  return search;
}

}  // namespace

MapFit map_fit(const Kettle& kettle, const std::vector<RunPlan>& plans,
               const std::vector<Observed>& observed, const FitSettings& settings,
               const EnsembleOptions& options) {
  check(plans, observed, settings);
  RunResiduals residuals(kettle, plans, observed, settings, options);
  const VectorXd start = residuals.start();
  residuals.at(start);  // a start that cannot be replayed is an error with its own message
  const LeastSquaresProblem problem{[&](const VectorXd& x) { return residuals.tried(x); },
                                    [&](const VectorXd& x) { return residuals.jacobian(x); }};
  const auto found = minimise(problem, start, search_options(settings, residuals));
  return result_of(found, residuals, observed.size());
}

}  // namespace kettlecast
