#include "kettlecast/numerics/covariance.hpp"

#include <Eigen/SVD>
#include <algorithm>
#include <cmath>
#include <limits>

#include "kettlecast/base/errors.hpp"

namespace kettlecast {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr double infinite = std::numeric_limits<double>::infinity();

// Eigen 5 wants as a template argument what Eigen 3.4 takes at run time only.
#if EIGEN_VERSION_AT_LEAST(3, 4, 90)
Eigen::JacobiSVD<MatrixXd, Eigen::ComputeFullV> decomposed(const MatrixXd& matrix) {
  return Eigen::JacobiSVD<MatrixXd, Eigen::ComputeFullV>(matrix);
}
#else
Eigen::JacobiSVD<MatrixXd> decomposed(const MatrixXd& matrix) {
  return Eigen::JacobiSVD<MatrixXd>(matrix, Eigen::ComputeFullV);
}
#endif

/// J = U diag(singular * largest) directions' diag(lengths).
struct Directions {
  VectorXd lengths;
  VectorXd singular;    // relative to the largest
  MatrixXd directions;  // one per column
  double largest = 0.0;
};

Directions directions_of(const MatrixXd& jacobian) {
  Directions found;
  const VectorXd norms = jacobian.colwise().norm().transpose();
  found.lengths = (norms.array() > 0.0).select(norms, 1.0);
  const auto svd = decomposed(jacobian * found.lengths.cwiseInverse().asDiagonal());
  found.singular = VectorXd::Zero(jacobian.cols());
  found.singular.head(svd.singularValues().size()) = svd.singularValues();
  found.directions = svd.matrixV();
  found.largest = found.singular[0];
  if (found.largest > 0.0) found.singular /= found.largest;
  return found;
}

/// Rows that span the same space, each with zeros where the others have their largest value.
MatrixXd echelon_rows(MatrixXd rows) {
  for (Index k = 0; k < rows.rows(); ++k) {
    Index row = 0, column = 0;
    rows.bottomRows(rows.rows() - k).cwiseAbs().maxCoeff(&row, &column);
    rows.row(k).swap(rows.row(k + row));
    rows.row(k) /= rows(k, column);
    for (Index i = 0; i < rows.rows(); ++i) {
      if (i != k) rows.row(i) -= rows(i, column) * rows.row(k).eval();
    }
  }
  rows.rowwise().normalize();
  return rows;
}

/// Coefficients c with sum c_j change_j = 0 for a change of two values.
VectorXd across(const VectorXd& change) {
  VectorXd known = VectorXd::Zero(change.size());
  std::vector<Index> pair;
  for (Index j = 0; j < change.size(); ++j) {
    if (change[j] != 0.0) pair.push_back(j);
  }
  if (pair.size() != 2) return {};
  known[pair[0]] = change[pair[1]];
  known[pair[1]] = -change[pair[0]];
  Index largest = 0;
  known.cwiseAbs().maxCoeff(&largest);
  return known / known[largest];
}

Inseparable described(VectorXd combination, const Directions& found,
                      const CovarianceOptions& options) {
  Inseparable described;
  const VectorXd parts = found.directions.transpose() * combination;
  described.strength = parts.cwiseProduct(found.singular).norm();
  Index largest = 0;
  combination.cwiseAbs().maxCoeff(&largest);
  combination /= combination[largest];
  combination = (combination.array().abs() < options.small_share).select(0.0, combination);
  described.combination = combination.normalized();
  described.change = described.combination.cwiseQuotient(found.lengths);
  described.known = across(described.change);
  return described;
}

/// Descriptions of the directions from one place in the list to another.
std::vector<Inseparable> described(const Directions& found, Index first, Index end,
                                   const CovarianceOptions& options) {
  std::vector<Inseparable> list;
  const MatrixXd rows = echelon_rows(found.directions.middleCols(first, end - first).transpose());
  for (Index i = 0; i < rows.rows(); ++i) {
    list.push_back(described(rows.row(i).transpose(), found, options));
  }
  std::sort(list.begin(), list.end(),
            [](const auto& left, const auto& right) { return left.strength < right.strength; });
  return list;
}

/// Takes away what is said to be known of values that take part in another direction too.
void drop_doubtful(std::vector<Inseparable>& list) {
  VectorXd uses = VectorXd::Zero(list.empty() ? 0 : list.front().combination.size());
  for (const auto& one : list) uses += (one.combination.array() != 0.0).cast<double>().matrix();
  for (auto& one : list) {
    const bool shared = ((one.combination.array() != 0.0) && (uses.array() > 1.0)).any();
    if (shared) one.known.resize(0);
  }
}

/// Number of singular values above a threshold.
Index count_above(const VectorXd& falling, double threshold) {
  return (falling.array() > threshold).count();
}

void check(const MatrixXd& jacobian, double variance, const CovarianceOptions& options) {
  if (jacobian.size() == 0 || !jacobian.allFinite()) {
    throw InvalidArgument(
        "covariance_of: Jacobian must hold finite values, in one row and column or more");
  }
  require_between("covariance_of", "variance", variance, 0.0, std::numeric_limits<double>::max(),
                  "");
  require_between("covariance_of", "rank_threshold", options.rank_threshold, 0.0, 1.0, "");
  require_between("covariance_of", "weak_threshold", options.weak_threshold, 0.0, 1.0, "");
  require_between("covariance_of", "small_share", options.small_share, 0.0, 1.0, "");
}

/// Fills covariance and correlation from the known part of (J'J)^-1 and the projection on what is
/// unknown, both for columns of length 1.
void fill(Covariance& result, const MatrixXd& known, const MatrixXd& unknown,
          const VectorXd& deviations, double threshold) {
  const Index n = known.rows();
  result.covariance = deviations.asDiagonal() * known * deviations.asDiagonal();
  result.correlation = MatrixXd::Identity(n, n);
  for (Index j = 0; j < n; ++j) {
    for (Index k = 0; k < n; ++k) {
      const double shared = unknown(j, k);
      const bool first = result.identified[static_cast<std::size_t>(j)];
      const bool second = result.identified[static_cast<std::size_t>(k)];
      const bool endless = !first && !second && std::fabs(shared) > threshold;
      if (endless) result.covariance(j, k) = std::copysign(infinite, shared);
      if (j == k) continue;
      result.correlation(j, k) = 0.0;
      if (endless) result.correlation(j, k) = shared / std::sqrt(unknown(j, j) * unknown(k, k));
      if (first && second)
        result.correlation(j, k) = known(j, k) / std::sqrt(known(j, j) * known(k, k));
    }
  }
  result.standard_errors = result.covariance.diagonal().cwiseSqrt();
}

}  // namespace

Covariance covariance_of(const MatrixXd& jacobian, double variance,
                         const CovarianceOptions& options) {
  check(jacobian, variance, options);
  const Directions found = directions_of(jacobian);
  const Index n = jacobian.cols();
  Covariance result;
  result.singular_values = found.singular;
  result.rank = count_above(found.singular, options.rank_threshold);
  const MatrixXd null = found.directions.rightCols(n - result.rank);
  const VectorXd sizes = found.largest * found.singular.head(result.rank);
  const MatrixXd root = found.directions.leftCols(result.rank) * sizes.cwiseInverse().asDiagonal();
  const MatrixXd unknown = null * null.transpose();
  // An error of J as large as the threshold turns the unknown directions by up to its root.
  for (Index j = 0; j < n; ++j) {
    result.identified.push_back(unknown(j, j) <= options.rank_threshold);
  }
  fill(result, root * root.transpose(), unknown, std::sqrt(variance) * found.lengths.cwiseInverse(),
       options.rank_threshold);
  const Index strong = std::min(result.rank, count_above(found.singular, options.weak_threshold));
  if (result.rank < n) result.inseparable = described(found, result.rank, n, options);
  for (auto& direction : result.inseparable) direction.unknown = true;
  if (strong < result.rank) {
    for (auto& weak : described(found, strong, result.rank, options)) {
      result.inseparable.push_back(std::move(weak));
    }
  }
  drop_doubtful(result.inseparable);
  return result;
}

}  // namespace kettlecast
