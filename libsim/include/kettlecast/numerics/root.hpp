#pragma once

#include <cmath>

namespace kettlecast {

/// Root of a function of one variable between two points at which its signs differ.
///
/// Ridders' method: each step halves the interval at least and converges quadratically near the
/// root. Ends when the interval or the change is within rounding, or after 200 steps.
/// Source: Ridders, IEEE Trans. Circuits Syst. 26 (1979) 979.
///
/// @param low,high  ends; signs of the function there differ, or one of them is the root
/// @param function  double -> double, continuous
template <class Function>
double bracketed_root(double low, double high, Function&& function) {
  double at_low = function(low), at_high = function(high);
  if (at_low == 0.0) return low;
  if (at_high == 0.0) return high;
  double found = low;
  for (int step = 0; step < 200; ++step) {
    const double middle = 0.5 * (low + high), at_middle = function(middle);
    const double root = std::sqrt(at_middle * at_middle - at_low * at_high);
    if (root == 0.0) return middle;
    const double next =
        middle + (middle - low) * (at_low > at_high ? 1.0 : -1.0) * at_middle / root;
    const double at_next = function(next);
    const bool settled = std::fabs(next - found) <= 2e-16 * std::fabs(next);
    found = next;
    if (settled || at_next == 0.0) return found;
    // The closest pair of points with different signs.
    if (std::signbit(at_middle) != std::signbit(at_next)) {
      low = middle;
      at_low = at_middle;
      high = next;
      at_high = at_next;
    } else if (std::signbit(at_low) != std::signbit(at_next)) {
      high = next;
      at_high = at_next;
    } else {
      low = next;
      at_low = at_next;
    }
    if (std::fabs(high - low) <= 4e-16 * std::fabs(found)) return found;
  }
  return found;
}

}  // namespace kettlecast
