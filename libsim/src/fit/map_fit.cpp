#include "kettlecast/fit/map_fit.hpp"

#include <cmath>
#include <limits>

#include "kettlecast/base/errors.hpp"
#include "kettlecast/fit/scaled.hpp"
#include "kettlecast/numerics/least_squares.hpp"

namespace kettlecast {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

// Of the difference quotients, in prior spreads [-].
constexpr double slope_step = 1e-2;

std::vector<double> plain(const VectorXd& values) { return {values.begin(), values.end()}; }

VectorXd vector_of(const std::vector<double>& values) {
  return Eigen::Map<const VectorXd>(values.data(), static_cast<Index>(values.size()));
}

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
  require_between("Observed", "weight", run.weight, 0.0, infinite, "");
}

void check(const std::vector<RunPlan>& plans, const std::vector<Observed>& observed,
           const FitSettings& settings) {
  if (observed.empty() || settings.names.empty()) {
    throw InvalidArgument("map_fit: needs one run or more and one coefficient or more to fit");
  }
  for (const auto& run : observed) check_run(run, plans);
  const double smallest = std::numeric_limits<double>::min();
  const double largest = std::numeric_limits<double>::max();
  require_between("FitSettings", "floor_error", settings.floor_error, smallest, largest, "K");
  require_between("FitSettings", "probe_error", settings.probe_error, smallest, largest, "K");
}

/// Residuals of all runs as a function of the scaled coefficients. Keeps what it found at the last
/// point, where the search and the Jacobian often ask again.
class Residuals {
 public:
  Residuals(const Kettle& kettle, const std::vector<RunPlan>& plans,
            const std::vector<Observed>& observed, const FitSettings& settings,
            const EnsembleOptions& options)
      : kettle_(kettle),
        plans_(plans),
        observed_(observed),
        settings_(settings),
        options_(options) {
    for (const auto& run : observed) {
      count_ += static_cast<Index>(run.floor_reading.size() + run.probe_reading.size());
    }
  }

  Index data_count() const { return count_; }

  Coefficients coefficients(const VectorXd& x) const {
    return from_scaled(settings_.start, settings_.names, plain(x));
  }

  /// Replays of every run at every point: all runs of the first point, then of the second...
  std::vector<Replay> replays(const std::vector<VectorXd>& points) const {
    std::vector<ReplayTask> tasks;
    for (const auto& point : points) {
      const Coefficients set = coefficients(point);
      for (const auto& run : observed_) tasks.push_back({run.plan, set});
    }
    return replay_many(kettle_, plans_, tasks, options_);
  }

  /// Data, then priors.
  VectorXd at(const VectorXd& x) {
    if (x.size() == last_x_.size() && x == last_x_) return last_;
    last_ = with_priors(data(replays({x}), 0), x);
    last_x_ = x;
    return last_;
  }

  /// As `at`, but without finite values where a run cannot be integrated.
  VectorXd tried(const VectorXd& x) {
    try {
      return at(x);
    } catch (const IntegrationFailure&) {
      return VectorXd::Constant(count_ + x.size(), std::numeric_limits<double>::infinity());
    }
  }

  MatrixXd jacobian(const VectorXd& x, const VectorXd& upper) {
    const VectorXd base = at(x);
    std::vector<VectorXd> points;
    VectorXd steps(x.size());
    for (Index i = 0; i < x.size(); ++i) {
      steps[i] = x[i] + slope_step < upper[i] ? slope_step : -slope_step;
      points.push_back(x);
      points.back()[i] += steps[i];
    }
    const auto shown = replays(points);
    MatrixXd slopes(base.size(), x.size());
    for (Index i = 0; i < x.size(); ++i) {
      const auto moved = data(shown, static_cast<std::size_t>(i) * observed_.size());
      slopes.col(i).head(count_) = (moved - base.head(count_)) / steps[i];
    }
    slopes.bottomRows(x.size()).setIdentity();
    return slopes;
  }

 private:
  /// Weighted residuals of the runs, from the replay at index `first` on.
  VectorXd data(const std::vector<Replay>& shown, std::size_t first) const {
    VectorXd found(count_);
    Index at = 0;
    const auto add = [&](const auto& model, const auto& log, double factor) {
      for (std::size_t i = 0; i < log.size(); ++i) found[at++] = factor * (model[i] - log[i]);
    };
    for (std::size_t i = 0; i < observed_.size(); ++i) {
      const auto& run = observed_[i];
      const double weight = std::sqrt(run.weight);
      add(shown[first + i].floor_reading, run.floor_reading, weight / settings_.floor_error);
      add(shown[first + i].probe_reading, run.probe_reading, weight / settings_.probe_error);
    }
    return found;
  }

  static VectorXd with_priors(const VectorXd& data, const VectorXd& x) {
    VectorXd both(data.size() + x.size());
    both << data, x;
    return both;
  }

  const Kettle& kettle_;
  const std::vector<RunPlan>& plans_;
  const std::vector<Observed>& observed_;
  const FitSettings& settings_;
  const EnsembleOptions& options_;
  Index count_ = 0;
  VectorXd last_x_;
  VectorXd last_;
};

MapFit result_of(const LeastSquaresSummary& found, Residuals& residuals, const VectorXd& upper) {
  MapFit fit;
  fit.coefficients = residuals.coefficients(found.x);
  fit.scaled = plain(found.x);
  fit.residuals = plain(found.residuals.head(residuals.data_count()));
  const Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor> slopes =
      residuals.jacobian(found.x, upper).topRows(residuals.data_count());
  fit.jacobian.assign(slopes.data(), slopes.data() + slopes.size());
  fit.replays = residuals.replays({found.x});
  fit.cost = found.cost;
  fit.evaluations = found.evaluations;
  fit.converged = found.converged();
  fit.message = in_words(found.reason);
  return fit;
}

}  // namespace

MapFit map_fit(const Kettle& kettle, const std::vector<RunPlan>& plans,
               const std::vector<Observed>& observed, const FitSettings& settings,
               const EnsembleOptions& options) {
  check(plans, observed, settings);
  Residuals residuals(kettle, plans, observed, settings, options);
  const auto bounds = scaled_bounds(settings.names);
  LeastSquaresOptions search;
  search.cost_tolerance = search.step_tolerance = settings.tolerance;
  search.max_evaluations = settings.max_evaluations;
  search.loss = settings.loss;
  // In prior spreads all coefficients bend the readings alike. From defaults that are guesses an
  // undamped step would go twenty spreads far.
  search.scale = StepScale::given_units;
  search.damping = 1.0;
  search.lower = vector_of(bounds.lower);
  search.upper = vector_of(bounds.upper);
  const VectorXd start = vector_of(to_scaled(settings.start, settings.names));
  residuals.at(start);  // a start that cannot be replayed is an error with its own message
  const LeastSquaresProblem problem{
      [&](const VectorXd& x) { return residuals.tried(x); },
      [&](const VectorXd& x) { return residuals.jacobian(x, search.upper); }};
  return result_of(minimise(problem, start, search), residuals, search.upper);
}

}  // namespace kettlecast
