#include "kettlecast/numerics/least_squares.hpp"

#include <Eigen/QR>
#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

#include "kettlecast/base/errors.hpp"

namespace kettlecast {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

/// Share of the slope of a loss that its curvature counts as at least [-].
constexpr double least_curvature = 0.25;

struct Bounds {
  VectorXd lower;
  VectorXd upper;

  VectorXd inside(const VectorXd& x) const { return x.cwiseMax(lower).cwiseMin(upper); }
};

Bounds bounds_for(const VectorXd& start, const LeastSquaresOptions& options) {
  const auto n = start.size();
  if (n == 0 || !start.allFinite()) {
    throw InvalidArgument("minimise: start must hold one finite value or more");
  }
  const double infinite = std::numeric_limits<double>::infinity();
  Bounds bounds{options.lower, options.upper};
  if (bounds.lower.size() == 0) bounds.lower = VectorXd::Constant(n, -infinite);
  if (bounds.upper.size() == 0) bounds.upper = VectorXd::Constant(n, infinite);
  if (bounds.lower.size() != n || bounds.upper.size() != n) {
    throw InvalidArgument("minimise: bounds must have " + std::to_string(n) +
                          " values like start, or none");
  }
  if (!(bounds.lower.array() <= bounds.upper.array()).all()) {
    throw InvalidArgument("minimise: every lower bound must lie at or below its upper bound");
  }
  return bounds;
}

double cost_of(const VectorXd& residuals, Loss loss) {
  double cost = 0.0;
  for (const double r : residuals) cost += 0.5 * loss_of(loss, r * r).value;
  return cost;
}

/// J p + r after an orthogonal rotation: factor * p + rotated, and a rest that p cannot change.
struct LinearModel {
  MatrixXd factor;
  VectorXd rotated;
  VectorXd gradient;
  VectorXd norms;  // of the columns of J

  double decrease(const VectorXd& step) const {
    return -gradient.dot(step) - 0.5 * (factor * step).squaredNorm();
  }
};

LinearModel linearised(MatrixXd jacobian, VectorXd residuals, Loss loss) {
  for (Index i = 0; i < residuals.size(); ++i) {
    const double squared = residuals[i] * residuals[i];
    const auto rho = loss_of(loss, squared);
    // Far out the loss has little or no curvature of its own; its slope keeps the scale of J.
    const double curved = rho.slope + 2.0 * rho.curvature * squared;
    const double scale = std::sqrt(std::max(curved, least_curvature * rho.slope));
    jacobian.row(i) *= scale;
    residuals[i] *= rho.slope / scale;
  }
  LinearModel model;
  model.gradient = jacobian.transpose() * residuals;
  model.norms = jacobian.colwise().norm().transpose();
  const Index rows = std::min(jacobian.rows(), jacobian.cols());
  const Eigen::HouseholderQR<MatrixXd> qr(std::move(jacobian));
  model.factor = qr.matrixQR().topRows(rows).triangularView<Eigen::Upper>();
  model.rotated = (qr.householderQ().adjoint() * residuals).head(rows);
  return model;
}

std::vector<Index> movable(const VectorXd& x, const VectorXd& gradient, const Bounds& bounds) {
  std::vector<Index> list;
  for (Index i = 0; i < x.size(); ++i) {
    const bool held = (x[i] <= bounds.lower[i] && gradient[i] >= 0.0) ||
                      (x[i] >= bounds.upper[i] && gradient[i] <= 0.0);
    if (!held) list.push_back(i);
  }
  return list;
}

VectorXd free_step(const LinearModel& model, const std::vector<Index>& free,
                   const VectorXd& damping, const VectorXd& fixed_step) {
  const auto count = static_cast<Index>(free.size());
  const Index rows = model.factor.rows();
  MatrixXd matrix = MatrixXd::Zero(rows + count, count);
  VectorXd right = VectorXd::Zero(rows + count);
  right.head(rows) = -(model.rotated + model.factor * fixed_step);
  for (Index k = 0; k < count; ++k) {
    const Index column = free[static_cast<std::size_t>(k)];
    matrix.col(k).head(rows) = model.factor.col(column);
    matrix(rows + k, k) = damping[column];
  }
  // Columns of one length, so that the factorisation does not take a small unit for no slope.
  const VectorXd lengths = matrix.colwise().norm().transpose();
  matrix *= lengths.cwiseInverse().asDiagonal();
  return matrix.colPivHouseholderQr().solve(right).cwiseQuotient(lengths);
}

VectorXd damped_step(const LinearModel& model, const VectorXd& damping, const VectorXd& x,
                     const Bounds& bounds) {
  VectorXd step = VectorXd::Zero(x.size());
  std::vector<Index> free = movable(x, model.gradient, bounds);
  while (!free.empty()) {
    const VectorXd found = free_step(model, free, damping, step);
    std::vector<Index> inner;
    for (std::size_t k = 0; k < free.size(); ++k) {
      const Index i = free[k];
      const double target = x[i] + found[static_cast<Index>(k)];
      if (target < bounds.lower[i]) {
        step[i] = bounds.lower[i] - x[i];
      } else if (target > bounds.upper[i]) {
        step[i] = bounds.upper[i] - x[i];
      } else {
        inner.push_back(i);
      }
    }
    if (inner.size() == free.size()) {
      for (std::size_t k = 0; k < free.size(); ++k) step[free[k]] = found[static_cast<Index>(k)];
      return step;
    }
    free = inner;
  }
  return step;
}

/// One search; `run` is the algorithm, the rest are its parts.
class Search {
 public:
  Search(const LeastSquaresProblem& problem, const VectorXd& start,
         const LeastSquaresOptions& options)
      : problem_(problem),
        options_(options),
        bounds_(bounds_for(start, options)),
        damping_(options.damping),
        norms_(VectorXd::Zero(start.size())) {
    found_.x = bounds_.inside(start);
  }

  LeastSquaresSummary run() {
    found_.residuals = problem_.residuals(found_.x);
    found_.evaluations = 1;
    found_.cost = cost_of(found_.residuals, options_.loss);
    bool going = std::isfinite(found_.cost);
    if (!going) found_.reason = StopReason::start_not_finite;
    while (going) going = linearise() && improve();
    return found_;
  }

 private:
  bool stop(StopReason reason) {
    found_.reason = reason;
    return false;
  }

  bool linearise() {
    MatrixXd jacobian = problem_.jacobian(found_.x);
    ++found_.jacobians;
    if (jacobian.rows() != found_.residuals.size() || jacobian.cols() != found_.x.size()) {
      throw InvalidArgument(
          "minimise: Jacobian must have one row per residual and one column "
          "per value of x");
    }
    if (!jacobian.allFinite()) return stop(StopReason::slopes_not_finite);
    model_ = linearised(std::move(jacobian), found_.residuals, options_.loss);
    measure();
    const double length = std::sqrt(2.0 * found_.cost);
    found_.gradient = 0.0;
    for (const Index i : movable(found_.x, model_.gradient, bounds_)) {
      const double size = model_.norms[i] * length;
      if (size > 0.0)
        found_.gradient = std::max(found_.gradient, std::fabs(model_.gradient[i]) / size);
    }
    return found_.gradient > options_.gradient_tolerance || stop(StopReason::gradient_small);
  }

  /// Updates the lengths D; a column that never had any slope gets length 1.
  void measure() {
    if (options_.scale == StepScale::column_norms) {
      norms_ = norms_.cwiseMax(model_.norms);
    } else if (found_.jacobians == 1) {
      norms_.setConstant(model_.norms.maxCoeff());
    }
    lengths_ = (norms_.array() > 0.0).select(norms_, 1.0);
    if (found_.jacobians == 1) shorten_first_step();
  }

  /// Tries steps, each more damped than the last, until one lowers the cost.
  bool improve() {
    double growth = 2.0;
    while (found_.evaluations < options_.max_evaluations) {
      const VectorXd step = damped_step(model_, std::sqrt(damping_) * lengths_, found_.x, bounds_);
      const VectorXd trial = bounds_.inside(found_.x + step);
      VectorXd residuals = problem_.residuals(trial);
      ++found_.evaluations;
      const double cost = cost_of(residuals, options_.loss);
      const double expected = model_.decrease(step);
      const double gain = std::isfinite(cost) ? (found_.cost - cost) / expected : -1.0;
      const double share = expected / found_.cost;
      const bool flat = share <= options_.cost_tolerance && std::isfinite(cost) &&
                        std::fabs(found_.cost - cost) <= options_.cost_tolerance * found_.cost;
      const bool small = length(step) <= options_.step_tolerance * length(found_.x);
      const bool better = cost < found_.cost;
      if (better) {
        accept(trial, std::move(residuals), cost);
        damping_ *= std::max(1.0 / 3.0, 1.0 - std::pow(2.0 * gain - 1.0, 3));
      } else {
        ++found_.rejected;
        damping_ *= growth;
        growth *= 2.0;
      }
      if (flat) return stop(StopReason::cost_flat);
      if (small) return stop(StopReason::step_small);
      if (better) return true;
    }
    return stop(StopReason::evaluations_used);
  }

  /// Raises the damping until the first step is no longer than allowed.
  void shorten_first_step() {
    const double allowed = options_.first_step * length(found_.x);
    const auto step = [&] {
      return damped_step(model_, std::sqrt(damping_) * lengths_, found_.x, bounds_);
    };
    while (allowed > 0.0 && length(step()) > allowed) damping_ *= 4.0;
  }

  double length(const VectorXd& x) const { return lengths_.cwiseProduct(x).norm(); }

  void accept(const VectorXd& x, VectorXd residuals, double cost) {
    found_.x = x;
    found_.residuals = std::move(residuals);
    found_.cost = cost;
    ++found_.accepted;
  }

  const LeastSquaresProblem& problem_;
  const LeastSquaresOptions& options_;
  Bounds bounds_;
  double damping_;
  VectorXd norms_;    // as StepScale says
  VectorXd lengths_;  // these, without zeros
  LinearModel model_;
  LeastSquaresSummary found_;
};

}  // namespace

std::string in_words(StopReason reason) {
  switch (reason) {
    case StopReason::cost_flat:
      return "the cost no longer falls";
    case StopReason::step_small:
      return "the coefficients no longer change";
    case StopReason::gradient_small:
      return "no change of a coefficient lowers the cost";
    case StopReason::evaluations_used:
      return "the allowed number of evaluations is used up";
    case StopReason::start_not_finite:
      return "the residuals at the start are not finite";
    case StopReason::slopes_not_finite:
      return "the slopes of the residuals are not finite";
  }
  throw InvalidArgument("in_words: not a StopReason");
}

LeastSquaresSummary minimise(const LeastSquaresProblem& problem, const VectorXd& start,
                             const LeastSquaresOptions& options) {
  return Search(problem, start, options).run();
}

}  // namespace kettlecast
