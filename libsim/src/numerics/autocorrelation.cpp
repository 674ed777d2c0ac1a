#include "kettlecast/numerics/autocorrelation.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "kettlecast/base/errors.hpp"

namespace kettlecast {
namespace {

using Eigen::Index;
using Eigen::VectorXd;

/// Deviations of a series, and their sums of products at a lag relative to lag 0.
class Deviations {
 public:
  Deviations(const std::string& where, const VectorXd& series, Index least, Centre centre) {
    if (series.size() < least || !series.allFinite()) {
      throw InvalidArgument(where + ": series must hold " + std::to_string(least) +
                            " finite values or more, got " + std::to_string(series.size()));
    }
    values_ = series;
    if (centre == Centre::mean) values_.array() -= series.mean();
    squares_ = values_.squaredNorm();
    // What is left of equal values after their mean is taken off is rounding.
    const double rounding = 1e-15 * series.cwiseAbs().maxCoeff();
    if (!(std::sqrt(squares_ / static_cast<double>(series.size())) > rounding)) {
      throw InvalidArgument(where + ": series must vary, got equal values only");
    }
  }

  Index count() const { return values_.size(); }

  double correlation(Index lag) const {
    const Index pairs = values_.size() - lag;
    return values_.head(pairs).dot(values_.tail(pairs)) / squares_;
  }

 private:
  VectorXd values_;
  double squares_ = 0.0;
};

void check_coefficient(const std::string& where, double coefficient) {
  if (!(std::fabs(coefficient) < 1.0)) {
    throw InvalidArgument(where + ": coefficient must lie between -1 and 1, got " +
                          std::to_string(coefficient));
  }
}

}  // namespace

double equal_spacing(const VectorXd& times, double tolerance) {
  if (times.size() < 2 || !times.allFinite()) {
    throw InvalidArgument("equal_spacing: times must hold 2 finite values or more");
  }
  const VectorXd gaps = times.tail(times.size() - 1) - times.head(times.size() - 1);
  std::vector<double> sorted(gaps.data(), gaps.data() + gaps.size());
  const auto middle = sorted.begin() + static_cast<std::ptrdiff_t>(sorted.size() / 2);
  std::nth_element(sorted.begin(), middle, sorted.end());
  for (Index i = 0; i < gaps.size(); ++i) {
    if (gaps[i] > 0.0 && std::fabs(gaps[i] - *middle) <= tolerance * *middle) continue;
    throw InvalidArgument("equal_spacing: times " + std::to_string(i) + " and " +
                          std::to_string(i + 1) + " are " + std::to_string(gaps[i]) +
                          " apart, allowed is " + std::to_string(*middle) + " to a share of " +
                          std::to_string(tolerance));
  }
  return *middle;
}

VectorXd autocorrelation(const VectorXd& series, Index longest, Centre centre) {
  const Deviations deviations("autocorrelation", series, 1, centre);
  if (longest < 0 || longest >= series.size()) {
    throw InvalidArgument("autocorrelation: longest lag must be between 0 and " +
                          std::to_string(series.size() - 1) + ", got " + std::to_string(longest));
  }
  VectorXd found(longest + 1);
  for (Index lag = 0; lag <= longest; ++lag) found[lag] = deviations.correlation(lag);
  return found;
}

Ar1 fit_ar1(const VectorXd& series, Centre centre) {
  const Deviations deviations("fit_ar1", series, 6, centre);
  const auto n = static_cast<double>(deviations.count());
  const double first = deviations.correlation(1);
  const double open =
      centre == Centre::mean ? (n * first + 1.0) / (n - 4.0) : n * first / (n - 3.0);
  const double limit = (n - 1.0) / (n + 1.0);
  Ar1 found;
  found.coefficient = std::clamp(open, -limit, limit);
  found.standard_error = std::sqrt((1.0 - found.coefficient * found.coefficient) / n);
  found.limited = std::fabs(open) > limit;
  return found;
}

double ar1_effective_count(Index count, double coefficient) {
  if (count < 1) {
    throw InvalidArgument("ar1_effective_count: count must be 1 or more, got " +
                          std::to_string(count));
  }
  check_coefficient("ar1_effective_count", coefficient);
  const auto n = static_cast<double>(count);
  double sum = 0.0, power = 1.0;
  for (Index lag = 1; lag < count; ++lag) {
    power *= coefficient;
    sum += (1.0 - static_cast<double>(lag) / n) * power;
  }
  return n / (1.0 + 2.0 * sum);
}

CorrelationTime integrated_time(const VectorXd& series, Centre centre) {
  const Deviations deviations("integrated_time", series, 2, centre);
  const auto n = static_cast<double>(deviations.count());
  CorrelationTime found;
  double sum = 0.0;
  for (Index lag = 0; lag + 1 < deviations.count(); lag += 2) {
    const double pair = deviations.correlation(lag) + deviations.correlation(lag + 1);
    if (!(pair > 0.0)) break;
    sum += pair;
    found.lags = lag + 2;
  }
  found.time = std::max(2.0 * sum - 1.0, 1.0 / std::max(1.0, std::log10(n)));
  found.effective_count = n / found.time;
  return found;
}

Eigen::MatrixXd whitened(const Eigen::Ref<const Eigen::MatrixXd>& columns, double coefficient) {
  check_coefficient("whitened", coefficient);
  Eigen::MatrixXd white = columns;
  const Index rest = columns.rows() - 1;
  if (rest < 1) return white;
  white.bottomRows(rest) = (columns.bottomRows(rest) - coefficient * columns.topRows(rest)) /
                           std::sqrt((1.0 - coefficient) * (1.0 + coefficient));
  return white;
}

}  // namespace kettlecast
