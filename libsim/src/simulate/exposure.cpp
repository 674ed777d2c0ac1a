#include "kettlecast/simulate/exposure.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include "kettlecast/base/errors.hpp"

namespace kettlecast {
namespace {

void check(const Series& series) {
  if (series.time.size() < 2 || series.time.size() != series.value.size()) {
    throw InvalidArgument("series: two points or more with one value per time are needed");
  }
  for (std::size_t i = 0; i < series.time.size(); ++i) {
    if (!std::isfinite(series.time[i]) || !std::isfinite(series.value[i])) {
      throw InvalidArgument("series: times and values must be finite numbers");
    }
    if (i > 0 && series.time[i] < series.time[i - 1]) {
      throw InvalidArgument("series: times must never fall");
    }
  }
}

/// Time at which the line from point i to the next crosses a level that lies between the two.
double crossing(const Series& series, std::size_t i, double level) {
  const double share = (level - series.value[i]) / (series.value[i + 1] - series.value[i]);
  return series.time[i] + share * (series.time[i + 1] - series.time[i]);
}

}  // namespace

std::vector<Stay> stays_above(const Series& series, double level) {
  check(series);
  std::vector<Stay> stays;
  bool above = false;
  for (std::size_t i = 0; i < series.time.size(); ++i) {
    const bool now = series.value[i] >= level;
    if (now && !above) {
      const double begin = i == 0 ? series.time[0] : crossing(series, i - 1, level);
      stays.push_back({begin, begin});
    }
    if (!now && above) stays.back().end = crossing(series, i - 1, level);
    if (now) stays.back().end = series.time[i];
    above = now;
  }
  return stays;
}

std::vector<Stay> stays_below(const Series& series, double level) {
  std::vector<Stay> stays;
  double begin = series.time.empty() ? 0.0 : series.time.front();
  for (const Stay& above : stays_above(series, level)) {
    if (above.begin > begin) stays.push_back({begin, above.begin});
    begin = above.end;
  }
  if (series.time.back() > begin) stays.push_back({begin, series.time.back()});
  return stays;
}

double total_time(const std::vector<Stay>& stays) {
  double total = 0.0;
  for (const Stay& stay : stays) total += stay.end - stay.begin;
  return total;
}

double longest_time(const std::vector<Stay>& stays) {
  double longest = 0.0;
  for (const Stay& stay : stays) longest = std::max(longest, stay.end - stay.begin);
  return longest;
}

std::optional<double> first_time(const std::vector<Stay>& stays) {
  if (stays.empty()) return std::nullopt;
  return stays.front().begin;
}

}  // namespace kettlecast
