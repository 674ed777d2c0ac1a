#pragma once

#include <Eigen/Core>
#include <random>
#include <string>
#include <vector>

#include "kettlecast/numerics/least_squares.hpp"

/// Least squares from several starts, for sums of squares with several minima.
namespace kettlecast {

/// How searches run and which ends count as one minimum.
struct MultiStartOptions {
  LeastSquaresOptions search;  ///< of each start; tolerances well below same_point
  /// Ends are one minimum if no value differs by more than this share of its length [-].
  double same_point = 1e-3;
  /// Lengths of the values, shape (n); empty: what the starts span, or |x| if that is more.
  Eigen::VectorXd lengths;
};

/// What became of one start.
struct StartOutcome {
  Eigen::VectorXd start;
  LeastSquaresSummary found;  ///< x is empty if an error ended the search
  std::string failure;        ///< why the search did not converge; empty if it did
  int minimum = -1;           ///< index into the table of minima; -1: did not converge
};

/// A minimum that one start or more led to.
struct DistinctMinimum {
  Eigen::VectorXd x;  ///< of the lowest end in it
  double cost = 0.0;
  int reached = 0;  ///< number of starts
};

/// Ends of all starts.
struct MultiStart {
  LeastSquaresSummary best;             ///< lowest end of all, converged or not
  int reached_best = 0;                 ///< starts that converged where the best lies
  std::vector<DistinctMinimum> minima;  ///< of converged searches, by rising cost
  std::vector<StartOutcome> starts;     ///< in the order given
};

/// Searches from every start.
///
/// Errors of this library that a search throws end that search only; others, such as an
/// interrupt, pass through. Ends along a valley whose floor is level count as several minima of one
/// cost; so do mirror images, such as two exponentials in each other's place.
///
/// @param problem  residuals and their derivative
/// @param starts   one or more, all of one shape (n)
/// @param options  of the searches, and what counts as one minimum
/// @throws InvalidArgument if there are no starts, they differ in shape, lengths do not fit them,
/// or
///         none leads to a point with a finite cost: then with the reason of the first
MultiStart minimise_from(const LeastSquaresProblem& problem,
                         const std::vector<Eigen::VectorXd>& starts,
                         const MultiStartOptions& options = {});

/// Points spread evenly in a box: a Latin hypercube, with one point in each of `count` equal slices
/// of every value.
///
/// The same generator in the same state gives the same points on every machine.
/// Source: McKay, Beckman, Conover, Technometrics 21 (1979) 239-245.
///
/// @param lower   of the box, shape (n)
/// @param upper   of the box, shape (n)
/// @param count   of points, >= 1
/// @param random  generator, moved on
/// @throws InvalidArgument if the box is not finite or empty, or count < 1
std::vector<Eigen::VectorXd> starts_within(const Eigen::VectorXd& lower,
                                           const Eigen::VectorXd& upper, int count,
                                           std::mt19937_64& random);

}  // namespace kettlecast
