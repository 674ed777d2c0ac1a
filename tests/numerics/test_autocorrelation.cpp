// Series of a first-order autoregression against its exact theory; Monte Carlo with fixed seeds,
// tolerances in standard errors of what is simulated.
#include <cmath>
#include <random>

#include "catch.hpp"
#include "kettlecast/base/errors.hpp"
#include "kettlecast/numerics/autocorrelation.hpp"
#include "message.hpp"
#include "vectors.hpp"

using namespace kettlecast;
using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

namespace {

/// Stationary series with variance 1.
VectorXd series_of(Index count, double coefficient, std::mt19937_64& random) {
  std::normal_distribution<double> normal;
  const double noise = std::sqrt(1.0 - coefficient * coefficient);
  VectorXd series(count);
  series[0] = normal(random);
  for (Index t = 1; t < count; ++t) {
    series[t] = coefficient * series[t - 1] + noise * normal(random);
  }
  return series;
}

/// Correlation phi^|i - j| of such a series.
MatrixXd correlation_of(Index count, double coefficient) {
  MatrixXd matrix(count, count);
  for (Index i = 0; i < count; ++i) {
    for (Index j = 0; j < count; ++j) {
      matrix(i, j) = std::pow(coefficient, static_cast<double>(std::abs(i - j)));
    }
  }
  return matrix;
}

struct Sample {
  double mean = 0.0;
  double variance = 0.0;
  double error = 0.0;  // of the mean
};

template <class Draw>
Sample sampled(int count, Draw&& draw) {
  VectorXd drawn(count);
  for (int i = 0; i < count; ++i) drawn[i] = draw();
  const double mean = drawn.mean();
  const double variance = (drawn.array() - mean).square().sum() / (count - 1);
  return {mean, variance, std::sqrt(variance / count)};
}

}  // namespace

TEST_CASE("autocorrelation of a short series by hand") {
  // 1 2 3 4: deviations -1.5 -0.5 0.5 1.5, squares 5; lag 1: 0.75 - 0.25 + 0.75, lag 2: -1.5,
  // lag 3: -2.25. About zero: squares 30, lag 1: 2 + 6 + 12.
  const auto about_mean = autocorrelation(values({1, 2, 3, 4}), 3);
  CHECK((about_mean - values({1.0, 0.25, -0.3, -0.45})).norm() < 1e-15);
  CHECK_THAT(autocorrelation(values({1, 2, 3, 4}), 1, Centre::zero)[1],
             Catch::Matchers::WithinRel(20.0 / 30.0, 1e-15));
}

TEST_CASE("the first autocorrelation is biased as published, the coefficient hardly") {
  const double phi = 0.6;
  const Index n = 100;
  struct Row {
    Centre centre;
    double bias;
  };
  // Marriott and Pope (1954), White (1961), as in the header.
  for (const Row& row :
       {Row{Centre::mean, (1.0 + 4.0 * phi) / n}, Row{Centre::zero, 3.0 * phi / n}}) {
    std::mt19937_64 random(20240501);
    const auto raw = sampled(
        30000, [&] { return autocorrelation(series_of(n, phi, random), 1, row.centre)[1]; });
    random.seed(20240501);
    const auto corrected =
        sampled(30000, [&] { return fit_ar1(series_of(n, phi, random), row.centre).coefficient; });
    // Terms in 1 / n^2 and limited estimates: a tenth of the bias.
    CHECK(4.0 * raw.error < 0.2 * row.bias);
    CHECK(std::fabs(phi - raw.mean - row.bias) < 4.0 * raw.error + 0.1 * row.bias);
    CHECK(std::fabs(corrected.mean - phi) < 4.0 * corrected.error + 0.1 * row.bias);
    // sqrt((1 - 0.36) / 100) = 0.08
    CHECK_THAT(std::sqrt(raw.variance), Catch::Matchers::WithinRel(0.08, 0.1));
  }
}

TEST_CASE("the coefficient stays where a series is worth one value or more") {
  VectorXd ramp = VectorXd::LinSpaced(50, -1.0, 1.0);
  const auto found = fit_ar1(ramp, Centre::zero);
  CHECK(found.limited);
  CHECK_THAT(found.coefficient, Catch::Matchers::WithinRel(49.0 / 51.0, 1e-14));
  CHECK(found.standard_error > 0.0);
  for (Index i = 0; i < 50; ++i) ramp[i] = i % 2 == 0 ? 1.0 : -1.0;
  CHECK_THAT(fit_ar1(ramp).coefficient, Catch::Matchers::WithinRel(-49.0 / 51.0, 1e-14));
}

TEST_CASE("the effective count is that of the mean of a correlated series") {
  // Variance of the mean: sum of all correlations / n^2, added up term by term.
  for (const double phi : {-0.7, 0.0, 0.3, 0.95}) {
    const Index n = 40;
    const double variance = correlation_of(n, phi).sum() / static_cast<double>(n * n);
    CHECK_THAT(ar1_effective_count(n, phi), Catch::Matchers::WithinRel(1.0 / variance, 1e-12));
    // Long series: n (1 - phi) / (1 + phi), from which the ends take a share of 1 / n.
    const Index many = 1000000;
    CHECK_THAT(ar1_effective_count(many, phi),
               Catch::Matchers::WithinRel(static_cast<double>(many) * (1 - phi) / (1 + phi), 1e-4));
  }
  std::mt19937_64 random(7);
  const auto means = sampled(4000, [&] { return series_of(50, 0.8, random).mean(); });
  // Standard error of a variance from 4000 values: sqrt(2 / 4000) = 2.2 %; four of them.
  CHECK_THAT(means.variance * ar1_effective_count(50, 0.8), Catch::Matchers::WithinAbs(1.0, 0.09));
}

TEST_CASE("the integrated time of an autoregression is (1 + phi) / (1 - phi)") {
  for (const double phi : {-0.5, 0.0, 0.7, 0.9}) {
    std::mt19937_64 random(11);
    const Index n = 20000;
    const auto times =
        sampled(120, [&] { return integrated_time(series_of(n, phi, random)).time; });
    const double exact = (1.0 + phi) / (1.0 - phi);
    // Stopping at the first pair that is not positive leaves in noise above zero: 5 %.
    CHECK(4.0 * times.error < 0.05 * exact);
    CHECK(std::fabs(times.mean - exact) < 4.0 * times.error + 0.05 * exact);
    const auto one = integrated_time(series_of(n, phi, random));
    CHECK_THAT(one.effective_count * one.time, Catch::Matchers::WithinRel(20000.0, 1e-14));
  }
}

TEST_CASE("an alternating series is not worth any number of values") {
  VectorXd series(100);
  for (Index i = 0; i < 100; ++i) series[i] = i % 2 == 0 ? 1.0 : -1.0;
  CHECK(integrated_time(series).effective_count == 200.0);  // n log10 n
}

TEST_CASE("whitening turns the exact covariance into the identity") {
  for (const double phi : {-0.6, 0.0, 0.5, 0.99}) {
    const MatrixXd whitener = whitened(MatrixXd::Identity(12, 12), phi);
    const MatrixXd white = whitener * correlation_of(12, phi) * whitener.transpose();
    CHECK((white - MatrixXd::Identity(12, 12)).cwiseAbs().maxCoeff() < 1e-13);
  }
  // A series and the columns of a Jacobian are treated alike.
  std::mt19937_64 random(3);
  MatrixXd columns(30, 2);
  columns << series_of(30, 0.4, random), series_of(30, 0.4, random);
  const VectorXd second = whitened(columns.col(1), 0.4);
  CHECK((whitened(columns, 0.4).col(1) - second).norm() == 0.0);
  CHECK(whitened(values({2.0}), 0.9)(0, 0) == 2.0);
}

TEST_CASE("spacing is the median difference, and gaps are named") {
  CHECK(equal_spacing(values({0, 10, 20.5, 30, 40})) == 10.0);
  CHECK_THROWS_WITH(equal_spacing(values({0, 10, 20, 45, 55})), mentions("times 2 and 3"));
  CHECK_THROWS_AS(equal_spacing(values({0, 0, 0})), InvalidArgument);
  CHECK_THROWS_AS(equal_spacing(values({0})), InvalidArgument);
}

TEST_CASE("series that say nothing are refused") {
  CHECK_THROWS_WITH(autocorrelation(values({3.1, 3.1, 3.1}), 1), mentions("must vary"));
  CHECK_THROWS_WITH(autocorrelation(values({1, 2, 3}), 3), mentions("between 0 and 2"));
  CHECK_THROWS_WITH(fit_ar1(values({1, 2, 3})), mentions("6 finite values"));
  CHECK_THROWS_AS(integrated_time(values({1, std::nan("")})), InvalidArgument);
  CHECK_THROWS_WITH(whitened(values({1, 2}), 1.0), mentions("between -1 and 1"));
  CHECK_THROWS_AS(ar1_effective_count(0, 0.5), InvalidArgument);
  CHECK_THROWS_AS(ar1_effective_count(5, -1.0), InvalidArgument);
}
