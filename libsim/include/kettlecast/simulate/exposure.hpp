#pragma once

#include <optional>
#include <vector>

/// How long a signal stays above or below a level. Between its points a signal is a straight line,
/// and crossings are those of the line, not of the nearest point.
namespace kettlecast {

/// A signal at times that never fall; the values in any unit.
struct Series {
  std::vector<double> time;   ///< [s]
  std::vector<double> value;  ///< one per time
};

/// From when to when a signal was on one side of a level.
struct Stay {
  double begin;  ///< [s]
  double end;    ///< >= begin [s]
};

/// Stays at or above a level, in order.
///
/// @param series  two points or more
/// @param level   in the unit of the series
/// @throws InvalidArgument if the series is short, uneven, not finite, or a time falls
std::vector<Stay> stays_above(const Series& series, double level);

/// Stays below a level, in order: what stays_above leaves of the series.
///
/// @throws InvalidArgument as stays_above
std::vector<Stay> stays_below(const Series& series, double level);

/// Time of all stays together [s].
double total_time(const std::vector<Stay>& stays);

/// Time of the longest stay without a break [s]; 0 if there is none.
double longest_time(const std::vector<Stay>& stays);

/// Begin of the first stay, on the clock of the series [s]; none if there is none.
std::optional<double> first_time(const std::vector<Stay>& stays);

}  // namespace kettlecast
