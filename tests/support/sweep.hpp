#pragma once

#include <cmath>

#include "catch.hpp"

/// Sweeps of a function over its range, for properties that hold everywhere.
namespace sweep {

inline constexpr int steps = 2000;

/// Finite and above zero at every point, ends included.
template <class Function>
void positive(double low, double high, Function&& function) {
  int bad = 0;
  for (int i = 0; i <= steps; ++i) {
    const double value = function(low + (high - low) * i / steps);
    if (!(std::isfinite(value) && value > 0.0)) ++bad;
  }
  CHECK(bad == 0);
}

/// Each value above the one before.
template <class Function>
void rising(double low, double high, Function&& function) {
  int bad = 0;
  double last = function(low);
  for (int i = 1; i <= steps; ++i) {
    const double value = function(low + (high - low) * i / steps);
    if (!(value > last)) ++bad;
    last = value;
  }
  CHECK(bad == 0);
}

/// Each value below the one before.
template <class Function>
void falling(double low, double high, Function&& function) {
  rising(low, high, [&](double x) { return -function(x); });
}

/// No step of the sweep changes the value by more than `share` of it.
template <class Function>
void without_jump(double low, double high, double share, Function&& function) {
  double largest = 0.0;
  double last = function(low);
  for (int i = 1; i <= steps; ++i) {
    const double value = function(low + (high - low) * i / steps);
    largest = std::fmax(largest, std::fabs(value - last) / std::fabs(last));
    last = value;
  }
  CHECK(largest < share);
}

/// Central difference of a function.
template <class Function>
double slope(double at, double step, Function&& function) {
  return (function(at + step) - function(at - step)) / (2.0 * step);
}

}  // namespace sweep
