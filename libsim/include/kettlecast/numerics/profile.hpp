#pragma once

#include <Eigen/Core>
#include <string>
#include <vector>

#include "kettlecast/numerics/least_squares.hpp"

/// Intervals of one value of a fit from the cost itself, all others fitted again.
namespace kettlecast {

/// How far the cost may rise and how the ends are looked for.
struct ProfileOptions {
  /// Rise of the cost at the ends: half the quantile of chi-square with 1 degree of freedom (95 %
  /// here) if the cost is in units of known errors; variance / 2 times the quantile of F(1, m - n),
  /// which is that of Student's t squared, if the variance is estimated [-].
  double rise = 0.5 * 3.841458820694124;
  double first_step = 0.0;  ///< 0: half-width for a linear model; a tenth of x if that is infinite
  double farthest = 1e3;    ///< distance at which a missing rise ends a side [first steps]
  double tolerance = 1e-4;  ///< of the half-width [-]
  int max_searches = 60;    ///< for one side [-]
  LeastSquaresOptions search;  ///< with bounds and loss of the fit
};

/// How a side ended.
enum class ProfileEnd {
  found,     ///< value: where the cost has risen
  at_bound,  ///< unbounded: the bound of the search came first; value: the bound
  no_rise,   ///< unbounded: no rise within the distance; value: infinite
  failed     ///< not found; value: the last that is known to lie within
};

/// A point of the profile: the others fitted for one value held.
struct ProfilePoint {
  Eigen::VectorXd x;
  double rise = 0.0;  ///< of the cost above its minimum [-]
};

/// One end of an interval.
struct ProfileSide {
  ProfileEnd end = ProfileEnd::failed;
  double value = 0.0;
  std::string reason;                ///< in words, unless found
  std::vector<ProfilePoint> points;  ///< in the order tried
};

/// Both ends.
struct ProfileInterval {
  ProfileSide lower;
  ProfileSide upper;
};

/// Profile-likelihood interval of one value.
///
/// Steps outward, searching for the other values from where they were last, until the cost has
/// risen, and closes in on the end by secants of the root of the rise, which is a straight line for
/// a linear model. A point with a lower cost than that of `best` fails the side, as the minimum
/// lies elsewhere. Errors of this library thrown on the way fail the side too; others pass through.
///
/// Sources: Bates, Watts, Nonlinear regression analysis and its applications (1988), section 6.1;
/// Venzon, Moolgavkar, Applied Statistics 37 (1988) 87-94.
///
/// @param problem    residuals and their derivative
/// @param best       minimum found with the same problem, bounds and loss
/// @param parameter  index of the value
/// @param options    rise, distances, and how to search
/// @throws InvalidArgument if the parameter does not exist or an option is out of range
ProfileInterval profile_interval(const LeastSquaresProblem& problem,
                                 const LeastSquaresSummary& best, Eigen::Index parameter,
                                 const ProfileOptions& options = {});

}  // namespace kettlecast
