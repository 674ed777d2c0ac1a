#pragma once

#include <cmath>

#include "kettlecast/numerics/smooth.hpp"

/// Natural convection in room air by rules that need the temperature difference alone.
namespace kettlecast {

/// Constants C of h = C dT^(1/4) in room air [W/(m2 K^1.25)].
///
/// Source: Kern, Process Heat Transfer (1950), with h in Btu/(h ft2 degF) and dT in degF: 0.30
///         vertical plate (example 18.4), 0.38 hot plate facing up, 0.20 hot plate facing down
///         (both from memory); 1 Btu/(h ft2 degF) = 5.678263 W/(m2 K), 1 K = 1.8 degF.
/// Range:  surfaces of 0.3 to 2 m in air near 1 atm, laminar. A rule of thumb, 20 %.
namespace room_air {
inline constexpr double kern_to_si = 5.678263341 * 1.158292185288269;  // unit times 1.8^(1/4)
inline constexpr double vertical = 0.30 * kern_to_si;
inline constexpr double facing_up = 0.38 * kern_to_si;
inline constexpr double facing_down = 0.20 * kern_to_si;
}  // namespace room_air

/// Coefficient of a warm surface in still room air [W/(m2 K)].
///
///     h = C dT^(1/4)
///
/// Source: room_air.
/// Range:  as there. Below about 0.1 K it is held smoothly above zero.
///
/// @param difference  surface less air temperature dT [K]
/// @param constant    C of room_air [W/(m2 K^1.25)]
template <class T>
T room_air_coefficient(const T& difference, double constant) {
  using std::sqrt;
  return constant * sqrt(sqrt(smooth_positive(difference, 1e-3)));
}

}  // namespace kettlecast
