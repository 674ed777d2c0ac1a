#include "kettlecast/numerics/multi_start.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

#include "kettlecast/base/errors.hpp"

namespace kettlecast {
namespace {

using Eigen::VectorXd;

VectorXd lengths_of(const std::vector<VectorXd>& starts, const MultiStartOptions& options) {
  if (starts.empty()) throw InvalidArgument("minimise_from: starts must hold one point or more");
  VectorXd low = starts.front(), high = low;
  for (const auto& start : starts) {
    if (start.size() != low.size()) {
      throw InvalidArgument("minimise_from: all starts must have " + std::to_string(low.size()) +
                            " values like the first, got " + std::to_string(start.size()));
    }
    low = low.cwiseMin(start);
    high = high.cwiseMax(start);
  }
  if (options.lengths.size() == 0) return high - low;
  if (options.lengths.size() != low.size() || !(options.lengths.array() > 0.0).all()) {
    throw InvalidArgument("minimise_from: lengths must be " + std::to_string(low.size()) +
                          " values above 0, or none");
  }
  return options.lengths;
}

StartOutcome outcome_of(const LeastSquaresProblem& problem, const VectorXd& start,
                        const LeastSquaresOptions& options) {
  StartOutcome outcome;
  outcome.start = start;
  try {
    outcome.found = minimise(problem, start, options);
    if (!outcome.found.converged()) outcome.failure = in_words(outcome.found.reason);
  } catch (const Error& error) {
    outcome.failure = error.message();
  }
  return outcome;
}

/// Tells whether two ends are one minimum.
class Comparison {
 public:
  Comparison(VectorXd lengths, const MultiStartOptions& options)
      : lengths_(std::move(lengths)),
        given_(options.lengths.size() > 0),
        share_(options.same_point) {}

  bool same(const VectorXd& left, const VectorXd& right) const {
    VectorXd allowed = lengths_;
    if (!given_) allowed = allowed.cwiseMax(left.cwiseAbs()).cwiseMax(right.cwiseAbs());
    return ((left - right).array().abs() <= share_ * allowed.array()).all();
  }

 private:
  VectorXd lengths_;
  bool given_;
  double share_;
};

/// Indices of the starts that ended at a point with a finite cost, by rising cost.
std::vector<std::size_t> ranked(const std::vector<StartOutcome>& starts) {
  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < starts.size(); ++i) {
    if (starts[i].found.x.size() > 0 && std::isfinite(starts[i].found.cost)) order.push_back(i);
  }
  std::stable_sort(order.begin(), order.end(), [&](std::size_t left, std::size_t right) {
    return starts[left].found.cost < starts[right].found.cost;
  });
  return order;
}

/// Counts an end to its minimum, or opens a new one.
void add(MultiStart& result, StartOutcome& outcome, const Comparison& comparison) {
  auto& minima = result.minima;
  const auto known = std::find_if(minima.begin(), minima.end(), [&](const DistinctMinimum& one) {
    return comparison.same(one.x, outcome.found.x);
  });
  outcome.minimum = static_cast<int>(known - minima.begin());
  if (known != minima.end()) {
    ++known->reached;
  } else {
    minima.push_back({outcome.found.x, outcome.found.cost, 1});
  }
}

/// Between 0 and 1, 1 excluded; the standard's distributions differ between libraries.
double uniform(std::mt19937_64& random) {
  return std::ldexp(static_cast<double>(random() >> 11), -53);
}

}  // namespace

MultiStart minimise_from(const LeastSquaresProblem& problem, const std::vector<VectorXd>& starts,
                         const MultiStartOptions& options) {
  const Comparison comparison(lengths_of(starts, options), options);
  MultiStart result;
  for (const auto& start : starts) {
    result.starts.push_back(outcome_of(problem, start, options.search));
  }
  const auto order = ranked(result.starts);
  if (order.empty()) {
    throw InvalidArgument("minimise_from: none of " + std::to_string(starts.size()) +
                          " starts can be used; the first: " + result.starts.front().failure);
  }
  result.best = result.starts[order.front()].found;
  for (const std::size_t i : order) {
    auto& outcome = result.starts[i];
    if (!outcome.failure.empty()) continue;
    add(result, outcome, comparison);
    if (comparison.same(outcome.found.x, result.best.x)) ++result.reached_best;
  }
  return result;
}

std::vector<VectorXd> starts_within(const VectorXd& lower, const VectorXd& upper, int count,
                                    std::mt19937_64& random) {
  if (lower.size() == 0 || lower.size() != upper.size() || !lower.allFinite() ||
      !upper.allFinite() || !(lower.array() <= upper.array()).all()) {
    throw InvalidArgument(
        "starts_within: lower and upper must be finite, of one shape, and lower at or below upper");
  }
  if (count < 1) {
    throw InvalidArgument("starts_within: count must be 1 or more, got " + std::to_string(count));
  }
  const auto size = static_cast<std::size_t>(count);
  std::vector<VectorXd> points(size, lower);
  std::vector<std::size_t> slices(size);
  std::iota(slices.begin(), slices.end(), std::size_t{0});
  for (Eigen::Index j = 0; j < lower.size(); ++j) {
    for (std::size_t i = size; i > 1; --i) {
      const auto other = static_cast<std::size_t>(uniform(random) * static_cast<double>(i));
      std::swap(slices[i - 1], slices[other]);
    }
    for (std::size_t i = 0; i < size; ++i) {
      const double share = (static_cast<double>(slices[i]) + uniform(random)) / count;
      points[i][j] = std::min(lower[j] + share * (upper[j] - lower[j]), upper[j]);
    }
  }
  return points;
}

}  // namespace kettlecast
