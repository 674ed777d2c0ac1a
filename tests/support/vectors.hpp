#pragma once

#include <Eigen/Core>
#include <initializer_list>

#include "kettlecast/numerics/least_squares.hpp"

/// A vector of the values listed.
inline Eigen::VectorXd values(std::initializer_list<double> list) {
  Eigen::VectorXd vector(static_cast<Eigen::Index>(list.size()));
  Eigen::Index i = 0;
  for (const double value : list) vector[i++] = value;
  return vector;
}

/// Residuals A x - b.
inline kettlecast::LeastSquaresProblem linear(const Eigen::MatrixXd& a, const Eigen::VectorXd& b) {
  return {[=](const Eigen::VectorXd& x) -> Eigen::VectorXd { return a * x - b; },
          [=](const Eigen::VectorXd&) { return a; }};
}

/// Options of a search that goes on as long as rounding lets it.
inline kettlecast::LeastSquaresOptions tight(kettlecast::Loss loss = kettlecast::Loss::linear) {
  kettlecast::LeastSquaresOptions options;
  options.cost_tolerance = options.step_tolerance = options.gradient_tolerance = 1e-15;
  options.loss = loss;
  return options;
}
