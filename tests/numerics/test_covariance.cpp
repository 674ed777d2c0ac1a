#include <Eigen/LU>
#include <cmath>
#include <limits>

#include "catch.hpp"
#include "kettlecast/base/errors.hpp"
#include "kettlecast/numerics/covariance.hpp"
#include "kettlecast/numerics/least_squares.hpp"
#include "message.hpp"
#include "vectors.hpp"

using namespace kettlecast;
using Eigen::MatrixXd;
using Eigen::VectorXd;

namespace {

const double infinite = std::numeric_limits<double>::infinity();

double farthest(const MatrixXd& left, const MatrixXd& right) {
  return (left - right).cwiseAbs().maxCoeff();
}

/// Columns a, b, a + b and c, so that the third value cannot be told from the first two.
MatrixXd dependent() {
  MatrixXd j(5, 4);
  j.col(0) = values({1, 0, 2, 1, 0});
  j.col(1) = values({0, 1, 1, -1, 2});
  j.col(2) = j.col(0) + j.col(1);
  j.col(3) = values({3, -1, 0, 1, 1});
  return j;
}

}  // namespace

TEST_CASE("standard errors of a line are those of its normal equations") {
  // Points at 1, 2, 3, 4: J'J = {4, 10; 10, 30}, its inverse {1.5, -0.5; -0.5, 0.2} by hand.
  MatrixXd j(4, 2);
  j << 1, 1, 1, 2, 1, 3, 1, 4;
  const auto found = covariance_of(j, 2.1);
  MatrixXd expected(2, 2);
  expected << 1.5, -0.5, -0.5, 0.2;
  CHECK(farthest(found.covariance, 2.1 * expected) < 1e-14);
  CHECK_THAT(found.standard_errors[1], Catch::Matchers::WithinRel(std::sqrt(0.42), 1e-14));
  CHECK_THAT(found.correlation(0, 1), Catch::Matchers::WithinRel(-0.5 / std::sqrt(0.3), 1e-14));
  CHECK(found.correlation(1, 1) == 1.0);
  CHECK(found.rank == 2);
  CHECK(found.identified == std::vector<bool>{true, true});
  CHECK(found.inseparable.empty());
}

TEST_CASE("units of the values change neither rank nor correlation") {
  MatrixXd j(4, 2);
  j << 1, 1, 1, 2, 1, 3, 1, 4;
  const auto found = covariance_of(j);
  const auto rescaled = covariance_of(j * values({1e-9, 1e9}).asDiagonal());
  CHECK(rescaled.rank == 2);
  CHECK(farthest(rescaled.correlation, found.correlation) < 1e-14);
  CHECK_THAT(rescaled.standard_errors[0],
             Catch::Matchers::WithinRel(1e9 * found.standard_errors[0], 1e-13));
}

TEST_CASE("of two values that act alike only the sum is known") {
  // r = (a + 3 b) t + c t^2: a and b enter as a + 3 b.
  MatrixXd j(4, 3);
  j.col(0) = values({1, 2, 3, 4});
  j.col(1) = 3.0 * j.col(0);
  j.col(2) = values({1, 4, 9, 16});
  const auto found = covariance_of(j);
  CHECK(found.rank == 2);
  CHECK(found.identified == std::vector<bool>{false, false, true});
  REQUIRE(found.inseparable.size() == 1);
  const auto& one = found.inseparable.front();
  CHECK(one.unknown);
  CHECK(one.strength < 1e-15);
  const double half = std::sqrt(0.5);
  CHECK(farthest(one.combination.cwiseAbs(), values({half, half, 0})) < 1e-14);
  CHECK(one.combination[0] * one.combination[1] < 0.0);
  CHECK((j * one.change).norm() < 1e-14);
  CHECK(farthest(one.known, values({1.0 / 3.0, 1.0, 0})) < 1e-14);
  CHECK(found.standard_errors[0] == infinite);
  CHECK(found.standard_errors[1] == infinite);
  CHECK(found.covariance(0, 1) == -infinite);
  CHECK_THAT(found.correlation(0, 1), Catch::Matchers::WithinAbs(-1.0, 1e-14));
  CHECK(found.correlation(0, 2) == 0.0);
  // c as if a + 3 b were one value: inverse of {30, 100; 100, 354} has 30 / 620 for c.
  CHECK_THAT(found.standard_errors[2], Catch::Matchers::WithinRel(std::sqrt(30.0 / 620.0), 1e-12));
}

TEST_CASE("t and t squared from 1 to 4 are weakly inseparable at most") {
  // Columns of length 1 with cosine q have singular values sqrt(1 +- q).
  MatrixXd j(4, 2);
  j.col(0) = values({1, 2, 3, 4});
  j.col(1) = values({1, 4, 9, 16});
  const double cosine = 100.0 / std::sqrt(30.0 * 354.0);
  const double ratio = std::sqrt((1.0 - cosine) / (1.0 + cosine));
  CovarianceOptions options;
  options.weak_threshold = 1.01 * ratio;
  const auto found = covariance_of(j, 1.0, options);
  CHECK_THAT(found.singular_values[1], Catch::Matchers::WithinRel(ratio, 1e-13));
  REQUIRE(found.inseparable.size() == 1);
  CHECK_FALSE(found.inseparable[0].unknown);
  CHECK_THAT(found.inseparable[0].strength, Catch::Matchers::WithinRel(ratio, 1e-13));
  CHECK(found.rank == 2);
  options.weak_threshold = 0.99 * ratio;
  CHECK(covariance_of(j, 1.0, options).inseparable.empty());
}

TEST_CASE("a value without effect and a pair that acts alike are told apart") {
  MatrixXd j = MatrixXd::Zero(4, 4);
  j.col(0) = values({1, 2, 3, 4});
  j.col(1) = values({1, -1, 1, -1});
  j.col(3) = -2.0 * j.col(1);
  const auto found = covariance_of(j);
  CHECK(found.rank == 2);
  CHECK(found.identified == std::vector<bool>{true, false, false, false});
  REQUIRE(found.inseparable.size() == 2);
  int alone = 0, pair = 0;
  for (const auto& one : found.inseparable) {
    if (farthest(one.combination, values({0, 0, 1, 0})) < 1e-12) ++alone;
    if (farthest(one.change.normalized().cwiseAbs(), values({0, 2, 0, 1}) / std::sqrt(5.0)) < 1e-12)
      ++pair;
  }
  CHECK(alone == 1);
  CHECK(pair == 1);
  // Neither tells anything of the other.
  CHECK(found.covariance(1, 2) == 0.0);
  CHECK(found.correlation(1, 2) == 0.0);
}

TEST_CASE("of three values that act alike each two can stand for each other") {
  MatrixXd j(4, 3);
  j.col(0) = values({1, 2, 3, 5});
  j.col(1) = j.col(2) = j.col(0);
  const auto found = covariance_of(j);
  CHECK(found.rank == 1);
  REQUIRE(found.inseparable.size() == 2);
  for (const auto& one : found.inseparable) {
    CHECK((one.combination.array() != 0.0).count() == 2);
    CHECK((j * one.change).norm() < 1e-14);
    CHECK(one.known.size() == 0);  // the sum of two is not known: the third adds to it
  }
  CHECK((found.inseparable[0].combination - found.inseparable[1].combination).norm() > 0.5);
}

TEST_CASE("covariance without rank is the limit of ever weaker priors") {
  // Priors of width w / |column| on every value: (J'J + D^2 / w^2)^-1 by an explicit inverse.
  const MatrixXd j = dependent();
  const auto found = covariance_of(j);
  const MatrixXd information = j.transpose() * j;
  const double width = 1e4;
  const MatrixXd wide =
      (information + MatrixXd(information.diagonal().asDiagonal()) / (width * width))
          .fullPivLu()
          .inverse();
  CHECK(found.rank == 3);
  for (Eigen::Index i = 0; i < 4; ++i) {
    for (Eigen::Index k = 0; k < 4; ++k) {
      INFO(i << ", " << k);
      if (std::isfinite(found.covariance(i, k))) {
        CHECK_THAT(found.covariance(i, k), Catch::Matchers::WithinAbs(wide(i, k), 1e-6));
      } else {
        CHECK(found.covariance(i, k) * wide(i, k) == infinite);
        CHECK(std::fabs(wide(i, k)) > 0.01 * width * width);
      }
    }
  }
  CHECK(found.covariance.hasNaN() == false);
  CHECK(found.correlation.hasNaN() == false);
}

TEST_CASE("fewer residuals than values identify none or some") {
  MatrixXd j(1, 2);
  j << 1.0, 0.0;
  const auto found = covariance_of(j, 4.0);
  CHECK(found.rank == 1);
  CHECK(found.standard_errors[0] == 2.0);
  CHECK(found.standard_errors[1] == infinite);
  const auto nothing = covariance_of(MatrixXd::Zero(3, 2));
  CHECK(nothing.rank == 0);
  CHECK(nothing.inseparable.size() == 2);
  CHECK(nothing.standard_errors[0] == infinite);
}

TEST_CASE("priors as further residuals give the posterior of a Gaussian") {
  // Readings y = A x + noise of width s, prior x ~ N(m, P): posterior by one update of mean and
  // covariance per reading (Kalman, J. Basic Eng. 82 (1960) 35-45), without any inverse.
  MatrixXd a(3, 2);
  a << 1, 0.5, 1, 2, 1, -1;
  const VectorXd y = values({2.0, 3.5, 0.2}), mean = values({0.3, 1.0});
  const VectorXd widths = values({0.7, 0.4});
  const double noise = 0.3;
  VectorXd at = mean;
  MatrixXd spread = widths.cwiseAbs2().asDiagonal();
  for (Eigen::Index i = 0; i < 3; ++i) {
    const VectorXd lean = spread * a.row(i).transpose();
    const double total = a.row(i).dot(lean) + noise * noise;
    at += lean * (y[i] - a.row(i).dot(at)) / total;
    spread -= (lean * lean.transpose() / total).eval();
  }
  MatrixXd rows(5, 2);
  VectorXd right(5);
  rows << a / noise, MatrixXd(widths.cwiseInverse().asDiagonal());
  right << y / noise, mean.cwiseQuotient(widths);
  const auto found = minimise(linear(rows, right), values({5, -5}), tight());
  CHECK(found.converged());
  CHECK(farthest(found.x, at) < 1e-7);
  CHECK(farthest(covariance_of(rows).covariance, spread) < 1e-14);
}

TEST_CASE("Jacobians and thresholds without meaning are refused") {
  CHECK_THROWS_WITH(covariance_of(MatrixXd()), mentions("finite values"));
  CHECK_THROWS_AS(covariance_of(MatrixXd::Constant(2, 1, infinite)), InvalidArgument);
  CHECK_THROWS_WITH(covariance_of(MatrixXd::Ones(2, 1), -1.0), mentions("variance"));
  CovarianceOptions options;
  options.rank_threshold = 2.0;
  CHECK_THROWS_WITH(covariance_of(MatrixXd::Ones(2, 1), 1.0, options), mentions("rank_threshold"));
}
