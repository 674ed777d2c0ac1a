#pragma once

#include <cmath>

/// Smooth stand-ins for max, sums of regimes and switches, cheap enough for a right-hand side.
namespace kettlecast {

/// Smooth version of max(x, 0) that stays above zero [unit of x].
///
///     s = (x + sqrt(x^2 + width^2)) / 2
///
/// @param x      value [any unit]
/// @param width  rounding of the corner, > 0; s(0) = width/2 [unit of x]
/// @note For x < 0 the same value is taken from width^2 / (2 (sqrt(...) - x)): no cancellation.
template <class T>
T smooth_positive(const T& x, double width) {
  using std::sqrt;
  const T root = sqrt(x * x + width * width);
  return x < 0.0 ? T(0.5 * width * width / (root - x)) : T(0.5 * (x + root));
}

/// Sum of two regimes by powers, (a^n + b^n)^(1/n) [unit of a].
///
/// @param a,b       values of the two regimes, >= 0 [same unit]
/// @param exponent  n >= 1; the larger, the closer to the larger of a and b [-]
/// @note Zero if both are zero; neither overflows nor loses the smaller one on the way.
template <class T>
T blend(const T& a, const T& b, double exponent) {
  using std::pow;
  const bool a_leads = b < a;
  const T large = a_leads ? a : b;
  if (!(large > 0.0)) return large;
  const T small = a_leads ? b : a;
  if (!(small > 0.0)) return large;
  return large * pow(1.0 + pow(small / large, exponent), 1.0 / exponent);
}

/// Step from 0 (x <= 0) to 1 (x >= 1) with continuous first and second derivative [-].
///
///     s = x^3 (10 - 15 x + 6 x^2)
///
/// @param x  place in the transition [-]
template <class T>
T smooth_step(const T& x) {
  if (x <= 0.0) return T(0.0);
  if (x >= 1.0) return T(1.0);
  return x * x * x * (10.0 + x * (6.0 * x - 15.0));
}

/// Saturating ramp: x while small, 1 when large [-].
///
///     s = x / (1 + x^4)^(1/4)
///
/// @param x  value over limit [-]; odd in x
template <class T>
T saturating(const T& x) {
  using std::sqrt;
  const T square = x * x;
  return x / sqrt(sqrt(1.0 + square * square));
}

}  // namespace kettlecast
