#pragma once

#include <cmath>

#include "kettlecast/numerics/polynomial.hpp"
#include "kettlecast/properties/water.hpp"

/// Where a solution boils, from the activity of its water.
namespace kettlecast {

/// Temperature at which a solution boils [K].
///
///     T = T_sat(p / a^n),   n = 1/Z of saturated steam at p, 1.015 at 1 atm
///
/// Source: equal fugacity of water in solution and steam, d ln f = Z d ln p with Z as at p;
///         IAPWS-IF97 for T_sat and Z (water.hpp). Steam as an ideal gas, n = 1, would give an
///         elevation 1.5 % less and miss the ebullioscopic constant by as much.
/// Range:  0.6-440 kPa. The activity is kept above 0.02 by adding 0.02 (1 - a)^16, so that a melt
///         without water stays below the critical point; this takes 0.04 K off at a = 0.25.
///
/// @param pressure  p [Pa]
/// @param activity  a of the water, 0..1 [-]
template <class T>
T boiling_temperature(const T& pressure, const T& activity) {
  using std::pow;
  const T lack = 1.0 - activity;
  const T square = lack * lack;
  const T fourth = square * square;
  const T eighth = fourth * fourth;
  const T n = polynomial(water::fit::vapour_excess,
                         water::scaled_temperature(water::saturation_temperature(pressure)));
  return water::saturation_temperature(
      T(pressure * pow(T(activity + 0.02 * eighth * eighth), T(-n))));
}

/// How much hotter than water a solution boils [K]; goes to zero in a line with dilution.
///
/// Source: difference of two saturation temperatures of IAPWS-IF97.
/// Range:  as boiling_temperature.
template <class T>
T boiling_elevation(const T& pressure, const T& activity) {
  return boiling_temperature(pressure, activity) - water::saturation_temperature(pressure);
}

}  // namespace kettlecast
