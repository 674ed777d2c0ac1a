#pragma once

#include <Eigen/Core>

/// How much values of a series at equal spacing are alike, and what that costs in information.
namespace kettlecast {

/// What deviations of a series are taken from.
enum class Centre {
  mean,  ///< the mean of the series
  zero   ///< zero: residuals that ought to have no mean
};

/// Spacing of the times of a series, their median difference [unit of times].
///
/// @param times      rising, shape (n >= 2)
/// @param tolerance  allowed deviation of a difference from the median, as a share of it [-]
/// @throws InvalidArgument naming the first difference that deviates by more
double equal_spacing(const Eigen::VectorXd& times, double tolerance = 0.1);

/// Autocorrelation at lags 0, 1, ..., longest, shape (longest + 1) [-].
///
///     r_k = sum_t e_t e_(t+k) / sum_t e_t^2
///
/// Source: Box, Jenkins, Reinsel, Time series analysis (1994), section 2.1.
///
/// @param series   shape (n)
/// @param longest  lag, >= 0 and < n [values]
/// @param centre   what e_t deviates from
/// @throws InvalidArgument if the series is not finite or does not vary, or the lag is out of range
Eigen::VectorXd autocorrelation(const Eigen::VectorXd& series, Eigen::Index longest,
                                Centre centre = Centre::mean);

/// Coefficient of e_t = coefficient e_(t-1) + noise.
struct Ar1 {
  double coefficient = 0.0;     ///< [-]
  double standard_error = 0.0;  ///< sqrt((1 - coefficient^2) / n) [-]
  bool limited = false;         ///< whether the estimate was moved to its limit
};

/// Estimates the coefficient of a first-order autoregression from r_1, less its bias.
///
///     E[r_1] = phi - (1 + 4 phi) / n  about the mean,  phi - 3 phi / n  about zero
///
/// The limit is |phi| <= (n - 1) / (n + 1), where n (1 - phi) / (1 + phi) has fallen to 1.
/// Source: Marriott, Pope, Biometrika 41 (1954) 390-402, and Kendall, ibid. 403-404; for the second
/// White, Biometrika 48 (1961) 85-94. From memory; a test checks both by simulation.
///
/// @param series  shape (n >= 6)
/// @param centre  what deviations are taken from
/// @throws InvalidArgument if the series is too short, not finite or does not vary
Ar1 fit_ar1(const Eigen::VectorXd& series, Centre centre = Centre::mean);

/// How many independent values have a mean as uncertain as `count` values of a first-order
/// autoregression; n (1 - phi) / (1 + phi) for long series [-].
///
///     count / (1 + 2 sum_k (1 - k / count) phi^k),  k = 1 .. count - 1
///
/// Source: Bayley, Hammersley, J. Royal Stat. Soc. Suppl. 8 (1946) 184-197.
/// @throws InvalidArgument if count < 1 or the coefficient does not lie between -1 and 1
double ar1_effective_count(Eigen::Index count, double coefficient);

/// Integrated autocorrelation time of a series.
struct CorrelationTime {
  double time = 1.0;             ///< 1 + 2 sum of the autocorrelations [values]
  double effective_count = 0.0;  ///< length of the series / time [-]
  Eigen::Index lags = 0;         ///< summed
};

/// Integrated autocorrelation time, summed over the initial positive sequence: pairs of
/// neighbouring lags, from lags 0 and 1 on, as long as a pair is positive.
///
/// The time is at least 1 / max(1, log10 n), so that noise does not pass for information.
/// Sources: Geyer, Statistical Science 7 (1992) 473-483, section 3.3; for the least time Vehtari,
/// Gelman, Simpson, Carpenter, Burkner, Bayesian Analysis 16 (2021) 667-718 (from memory).
///
/// @param series  shape (n >= 2)
/// @param centre  what deviations are taken from
/// @throws InvalidArgument if the series is too short, not finite or does not vary
CorrelationTime integrated_time(const Eigen::VectorXd& series, Centre centre = Centre::mean);

/// Takes a first-order autoregression out of a series, or of each column of a Jacobian.
///
///     w_1 = e_1,  w_t = (e_t - phi e_(t-1)) / sqrt(1 - phi^2)
///
/// Values with correlation phi^|i - j| and equal variance become uncorrelated and keep the
/// variance. Rows of different runs are whitened apart.
/// Source: Prais, Winsten, Cowles Commission Discussion Paper 383 (1954).
///
/// @param columns      shape (n, any)
/// @param coefficient  phi, between -1 and 1, both excluded [-]
/// @throws InvalidArgument if the coefficient is out of range
Eigen::MatrixXd whitened(const Eigen::Ref<const Eigen::MatrixXd>& columns, double coefficient);

}  // namespace kettlecast
