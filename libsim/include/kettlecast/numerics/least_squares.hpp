#pragma once

#include <Eigen/Core>
#include <functional>
#include <string>

#include "kettlecast/numerics/robust_loss.hpp"

/// Bounded nonlinear least squares; knows no physics.
namespace kettlecast {

/// Residuals as a function of x. Anything either function throws ends the search.
struct LeastSquaresProblem {
  /// Residuals at x, shape (m); a value that is not finite means that x cannot be used.
  std::function<Eigen::VectorXd(const Eigen::VectorXd&)> residuals;
  /// Derivative of the residuals by x, shape (m, n).
  std::function<Eigen::MatrixXd(const Eigen::VectorXd&)> jacobian;
};

/// Lengths D by which steps are measured and damped.
enum class StepScale {
  column_norms,  ///< largest norm seen of each column of J: units of x do not matter
  given_units    ///< one length for all: x is in units in which it bends the residuals alike
};

/// When to stop, where to stay and how residuals count.
struct LeastSquaresOptions {
  double cost_tolerance = 1e-10;      ///< a step lowers the cost by a smaller share [-]
  double step_tolerance = 1e-10;      ///< a step is a smaller share of x, in scaled lengths [-]
  double gradient_tolerance = 1e-10;  ///< see LeastSquaresSummary::gradient [-]
  int max_evaluations = 200;          ///< of the residuals outside of Jacobians [-]
  double damping = 1e-3;              ///< of the first step at least, relative to D'D [-]
  double first_step = 3.0;            ///< longest first step relative to x, scaled by D [-]
  StepScale scale = StepScale::column_norms;
  Loss loss = Loss::linear;
  Eigen::VectorXd lower;  ///< bounds of x, shape (n); empty: none
  Eigen::VectorXd upper;  ///< bounds of x, shape (n); empty: none
};

/// Why a search ended.
enum class StopReason {
  cost_flat,
  step_small,
  gradient_small,
  evaluations_used,
  start_not_finite,
  slopes_not_finite
};

/// A reason in words, to follow "stopped because".
std::string in_words(StopReason reason);

/// Where a search ended and how it got there.
struct LeastSquaresSummary {
  Eigen::VectorXd x;          ///< best point found
  Eigen::VectorXd residuals;  ///< there
  double cost = 0.0;          ///< half the sum of the losses of the squared residuals [-]
  /// Largest |gradient| of the values that may move, each relative to the norm of its column of J
  /// and to sqrt(2 cost): the cosine between column and residuals without a loss [-].
  double gradient = 0.0;
  int evaluations = 0;  ///< of the residuals [-]
  int jacobians = 0;    ///< evaluations of the Jacobian [-]
  int accepted = 0;     ///< steps that lowered the cost [-]
  int rejected = 0;     ///< steps that did not, or led where residuals are not finite [-]
  StopReason reason = StopReason::evaluations_used;

  /// Whether one of the three tolerances was met.
  bool converged() const {
    return reason == StopReason::cost_flat || reason == StopReason::step_small ||
           reason == StopReason::gradient_small;
  }
};

/// Minimises half the sum of loss(residual^2) within bounds; every point tried lies within them.
///
/// Levenberg-Marquardt: the step p minimises |J p + r|^2 + damping |D p|^2, by orthogonal
/// factorisation, with D from StepScale. A value on its bound whose gradient points outward stays
/// there; one that a step would take over its bound is put on it and the others are solved for
/// again. With a loss, J and r are scaled row by row so that gradient and curvature are those of
/// the loss.
///
/// Sources: More, The Levenberg-Marquardt algorithm: implementation and theory, Lecture Notes in
/// Mathematics 630 (1978) 105-116 (step by two orthogonal factorisations, scaling by the largest
/// column norms); Madsen, Nielsen, Tingleff, Methods for non-linear least squares problems (2004),
/// eq 2.21 (damping); Kanzow, Yamashita, Fukushima, J. Comput. Appl. Math. 172 (2004) 375-397
/// (projected steps); Triggs et al., Bundle adjustment (2000), section 4.3 (loss). Numbers of
/// equations and pages from memory.
///
/// @param problem  residuals and their derivative
/// @param start    moved into the bounds if it lies outside, shape (n)
/// @param options  tolerances, limits, loss, bounds
/// @returns the best point; not converging is told by its reason
/// @throws InvalidArgument if start is empty or not finite, bounds do not fit it or each other, or
///         residuals and Jacobian differ in shape
LeastSquaresSummary minimise(const LeastSquaresProblem& problem, const Eigen::VectorXd& start,
                             const LeastSquaresOptions& options = {});

}  // namespace kettlecast
