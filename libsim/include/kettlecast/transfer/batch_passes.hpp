#pragma once

#include <cmath>
#include <limits>

/// An unstirred batch that is pumped through an exchanger and lies in layers of different passes.
namespace kettlecast {

/// Temperature of an unstirred batch that is pumped through an exchanger and lies in layers [K].
///
///     t_n = t_(n-1) + S (T_m - t_(n-1)) for every whole pass; parts of a pass mix in proportion
///
/// Source: Kern (1950), ch. 18, p. 637: batches without agitation.
/// Range:  0 < S < 1.
///
/// @param effectiveness  S of the batch side: effective conductance over w c [-]
/// @param medium         entering medium T_m [K]
/// @param start          temperature before the first pass [K]
/// @param passes         turnovers of the whole batch, >= 0 [-]
template <class T>
T temperature_after_passes(const T& effectiveness, const T& medium, const T& start, double passes) {
  using std::pow;
  const double whole = std::floor(passes);
  const T left = (start - medium) * pow(T(1.0 - effectiveness), whole);
  return medium + left * (1.0 - effectiveness * (passes - whole));
}

/// Turnovers in which an unstirred batch gets to a temperature [-]; infinite if never.
///
/// Source, range: inverse of temperature_after_passes.
///
/// @param effectiveness  S [-]
/// @param medium         T_m [K]
/// @param start          before the first pass [K]
/// @param target         wanted [K]
template <class T>
T passes_to_temperature(const T& effectiveness, const T& medium, const T& start, const T& target) {
  const T share = (target - start) / (medium - start);
  if (!(share > 0.0)) return T(target == start ? 0.0 : std::numeric_limits<double>::infinity());
  if (!(share < 1.0)) return T(std::numeric_limits<double>::infinity());
  T left(1.0);
  double whole = 0.0;
  while (left * (1.0 - effectiveness) > 1.0 - share) {
    left = left * (1.0 - effectiveness);
    whole += 1.0;
  }
  return whole + (left - (1.0 - share)) / (left * effectiveness);
}

}  // namespace kettlecast
