#include "run_residuals.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "kettlecast/base/errors.hpp"
#include "kettlecast/fit/scaled.hpp"

namespace kettlecast {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;
using RowMajor = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;

// Levers that one task carries: as many as one pass of dual numbers, so that threads share evenly.
constexpr std::size_t levers_per_task = 8;

Index size_of(const std::vector<double>& values) { return static_cast<Index>(values.size()); }

std::vector<double> part(const VectorXd& x, Index first, std::size_t count) {
  return {x.data() + first, x.data() + first + static_cast<Index>(count)};
}

}  // namespace

RunResiduals::RunResiduals(const Kettle& kettle, const std::vector<RunPlan>& plans,
                           const std::vector<Observed>& observed, const FitSettings& settings,
                           const EnsembleOptions& options)
    : kettle_(kettle), plans_(plans), observed_(observed), settings_(settings), options_(options) {
  for (const auto& run : observed) {
    first_row_.push_back(count_);
    count_ += size_of(run.floor_reading) + size_of(run.probe_reading);
  }
}

Index RunResiduals::coefficient_count() const { return first_of(observed_.size()); }

/// Column of the first coefficient that belongs to a run.
Index RunResiduals::first_of(std::size_t run) const {
  return static_cast<Index>(settings_.names.size() + run * settings_.per_run.size());
}

/// Values of shared coefficients, then those of one run, once for each run.
VectorXd RunResiduals::for_all(const std::vector<double>& shared,
                               const std::vector<double>& per_run) const {
  std::vector<double> all = shared;
  for (std::size_t i = 0; i < observed_.size(); ++i) {
    all.insert(all.end(), per_run.begin(), per_run.end());
  }
  return Eigen::Map<const VectorXd>(all.data(), size_of(all));
}

VectorXd RunResiduals::start() const {
  return for_all(to_scaled(settings_.start, settings_.names),
                 to_scaled(settings_.start, settings_.per_run));
}
VectorXd RunResiduals::lower() const {
  return for_all(scaled_bounds(settings_.names).lower, scaled_bounds(settings_.per_run).lower);
}
VectorXd RunResiduals::upper() const {
  return for_all(scaled_bounds(settings_.names).upper, scaled_bounds(settings_.per_run).upper);
}

Coefficients RunResiduals::coefficients(const VectorXd& x, std::size_t run) const {
  const auto shared =
      from_scaled(settings_.start, settings_.names, part(x, 0, settings_.names.size()));
  return from_scaled(shared, settings_.per_run, part(x, first_of(run), settings_.per_run.size()));
}

std::vector<Replay> RunResiduals::replays(const VectorXd& x) const {
  std::vector<ReplayTask> tasks;
  for (std::size_t i = 0; i < observed_.size(); ++i) {
    tasks.push_back({observed_[i].plan, coefficients(x, i)});
  }
  return replay_many(kettle_, plans_, tasks, options_);
}

VectorXd RunResiduals::at(const VectorXd& x) {
  if (x.size() == last_x_.size() && x == last_x_) return last_;
  const auto shown = replays(x);
  VectorXd found(count_ + x.size());
  Index row = 0;
  const auto add = [&](const auto& model, const auto& log, double factor) {
    for (std::size_t i = 0; i < log.size(); ++i) found[row++] = factor * (model[i] - log[i]);
  };
  for (std::size_t i = 0; i < observed_.size(); ++i) {
    const auto& run = observed_[i];
    add(shown[i].floor_reading, run.floor_reading, floor_factor(run));
    add(shown[i].probe_reading, run.probe_reading, probe_factor(run));
  }
  found.tail(x.size()) = x;
  last_ = found;
  last_x_ = x;
  return last_;
}

VectorXd RunResiduals::tried(const VectorXd& x) {
  try {
    return at(x);
  } catch (const IntegrationFailure&) {
    return VectorXd::Constant(count_ + x.size(), std::numeric_limits<double>::infinity());
  }
}

/// The tasks of a Jacobian: every run with as many levers at a time as one pass carries.
std::vector<RunResiduals::Block> RunResiduals::blocks() const {
  std::vector<Block> blocks;
  const std::size_t shared = settings_.names.size(), own = settings_.per_run.size();
  for (std::size_t run = 0; run < observed_.size(); ++run) {
    for (std::size_t k = 0; k < shared + own; ++k) {
      if (k % levers_per_task == 0) blocks.push_back({run, {}, {}});
      const bool is_shared = k < shared;
      blocks.back().names.push_back(is_shared ? settings_.names[k] : settings_.per_run[k - shared]);
      blocks.back().columns.push_back(static_cast<Index>(k) +
                                      (is_shared ? 0 : static_cast<Index>(run * own)));
    }
  }
  return blocks;
}

/// Writes the slopes of one task into their rows and columns.
void RunResiduals::place(const Block& block, const Coefficients& here, const ReplaySlopes& found,
                         MatrixXd& jacobian) const {
  const auto& run = observed_[block.run];
  const Index floors = size_of(run.floor_reading), probes = size_of(run.probe_reading);
  const auto width = static_cast<Index>(block.columns.size());
  const Index row = first_row_[block.run];
  const Eigen::Map<const RowMajor> floor(found.floor_reading.data(), probes, width);
  const Eigen::Map<const RowMajor> probe(found.probe_reading.data(), probes, width);
  const auto unscaled = scaled_slopes(here, block.names);
  for (Index k = 0; k < width; ++k) {
    const auto which = static_cast<std::size_t>(k);
    auto column = jacobian.col(block.columns[which]);
    if (floors > 0)
      column.segment(row, floors) = floor_factor(run) * unscaled[which] * floor.col(k);
    column.segment(row + floors, probes) = probe_factor(run) * unscaled[which] * probe.col(k);
  }
}

MatrixXd RunResiduals::jacobian(const VectorXd& x) const {
  const auto all = blocks();
  std::vector<SlopeTask> tasks;
  for (const auto& block : all) {
    SlopeTask task{observed_[block.run].plan, coefficients(x, block.run), {}};
    for (const auto& name : block.names) {
      task.levers.push_back(
          {LeverKind::coefficient, static_cast<std::size_t>(coefficient_named(name))});
    }
    tasks.push_back(task);
  }
  const auto found = replay_slopes_many(kettle_, plans_, tasks, options_);
  MatrixXd jacobian = MatrixXd::Zero(count_ + x.size(), x.size());
  for (std::size_t i = 0; i < all.size(); ++i) {
    place(all[i], tasks[i].coefficients, found[i], jacobian);
  }
  jacobian.bottomRows(x.size()).setIdentity();
  return jacobian;
}

LeastSquaresProblem RunResiduals::problem() {
  return {[this](const VectorXd& x) { return tried(x); },
          [this](const VectorXd& x) { return jacobian(x); }};
}

LeastSquaresOptions RunResiduals::search() const {
  LeastSquaresOptions search;
  search.cost_tolerance = search.step_tolerance = settings_.tolerance;
  search.max_evaluations = settings_.max_evaluations;
  search.loss = settings_.loss;
  // In prior spreads all coefficients bend the readings alike. From defaults that are guesses an
  // undamped step would go twenty spreads far.
  search.scale = StepScale::given_units;
  search.damping = settings_.damping;
  search.lower = lower();
  search.upper = upper();
  return search;
}

/// Weight of a residual of the floor sensor [1/K].
double RunResiduals::floor_factor(const Observed& run) const {
  return std::sqrt(run.floor_weight) / settings_.floor_error;
}
/// Weight of a residual of the probe [1/K].
double RunResiduals::probe_factor(const Observed& run) const {
  return std::sqrt(run.probe_weight) / settings_.probe_error;
}

}  // namespace kettlecast
