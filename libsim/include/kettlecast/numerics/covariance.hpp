#pragma once

#include <Eigen/Core>
#include <vector>

/// What the slopes of a least-squares fit say about its values: standard errors, correlation, and
/// the directions in which the residuals say nothing.
namespace kettlecast {

/// Where "hardly" ends; shares of the largest singular value of J with columns of length 1.
struct CovarianceOptions {
  double rank_threshold = 1e-10;  ///< at or below it a direction counts as unknown [-]
  /// At or below it a direction is listed as inseparable. A condition index of 30 marks strong
  /// collinearity: Belsley, Kuh, Welsch, Regression diagnostics (1980), chapter 3 (from memory).
  double weak_threshold = 1.0 / 30.0;
  double small_share = 0.1;  ///< coefficients below this share of the largest are dropped [-]
};

/// A combination of values that the residuals hardly tell, or not at all.
struct Inseparable {
  /// Coefficients of x_j |column j of J|, small ones dropped, of unit length, the largest > 0; a
  /// column without any slope counts as of length 1. Shape (n) [-].
  Eigen::VectorXd combination;
  /// Change of x along it, shape (n), in units of x.
  Eigen::VectorXd change;
  /// Of two values that take part in no other such combination: sum of known_j x_j is what the
  /// residuals do tell; the largest is 1. Shape (n), otherwise empty.
  Eigen::VectorXd known;
  /// How much the residuals feel it before small ones are dropped, relative to the direction that
  /// they feel most [-].
  double strength = 0.0;
  bool unknown = false;  ///< at or below the rank threshold
};

/// Covariance of the values of a fit. Where J lacks rank it is the limit of an ever weaker prior
/// on all values, of widths in proportion to 1 / |column of J|: variances of values that are not
/// identified are infinite, and no entry is NaN.
struct Covariance {
  Eigen::MatrixXd covariance;       ///< shape (n, n), +-infinite where the limit is
  Eigen::MatrixXd correlation;      ///< shape (n, n); the limit where the covariance is infinite
  Eigen::VectorXd standard_errors;  ///< shape (n); infinite if not identified
  std::vector<bool> identified;     ///< whether the residuals tell each value at all
  Eigen::VectorXd singular_values;  ///< relative to the largest, falling, shape (n) [-]
  Eigen::Index rank = 0;
  std::vector<Inseparable> inseparable;  ///< unknown ones first, then by rising strength
};

/// Covariance variance * (J'J)^-1 by a singular value decomposition of J with columns of length 1.
///
/// Unknown directions are given in the basis with the fewest values in each (reduced echelon form),
/// and so are the weak ones.
///
/// Sources: Golub, Van Loan, Matrix computations (2013), section 5.5 (rank-deficient least
/// squares); Bjorck, Numerical methods for least squares problems (1996), section 2.8 (covariance).
/// Numbers of sections from memory.
///
/// @param jacobian  of the residuals, rows divided by their standard errors if these are known;
/// rows
///                  of priors may follow, shape (m, n)
/// @param variance  of one residual: 1 if the standard errors are known, else 2 cost / (m - n) [-]
/// @param options   thresholds
/// @throws InvalidArgument if the Jacobian is empty or not finite, the variance negative or a
///         threshold not within 0 and 1
Covariance covariance_of(const Eigen::MatrixXd& jacobian, double variance = 1.0,
                         const CovarianceOptions& options = {});

}  // namespace kettlecast
