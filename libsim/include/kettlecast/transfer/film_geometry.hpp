#pragma once

#include <cmath>

/// Factors of a stirred film for vessels and agitators of other proportions than the standard ones.
namespace kettlecast {

/// Factor for the depth of the liquid [-].
///
///     f = (H/D)^-0.15
///
/// Source: Penney & Atiemo-Obeng, Handbook of Industrial Mixing (2004), section 14.4.
/// Range:  turbines, hydrofoil and propeller at wall and floor; H/D near 1.
///
/// @param depth_ratio  depth of the liquid over inner diameter of the vessel H/D, > 0 [-]
template <class T>
T depth_factor(const T& depth_ratio) {
  using std::pow;
  return pow(depth_ratio, -0.15);
}

/// Factor for blades higher or lower than the standard [-].
///
///     f = (L/L_s)^0.2
///
/// Source: Penney & Atiemo-Obeng (2004), section 14.4.
/// Range:  disc, flat and pitched turbines.
///
/// @param height_ratio  height of the blade over its standard height L/L_s, > 0 [-]
template <class T>
T blade_height_factor(const T& height_ratio) {
  using std::pow;
  return pow(height_ratio, 0.2);
}

/// Factor for the pitch of a propeller [-].
///
///     f = 1.29 (p/d) / (0.29 + p/d)
///
/// Source: Penney & Atiemo-Obeng (2004), section 14.4.
/// Range:  propellers; 1 at p = d.
///
/// @param pitch_ratio  pitch over diameter p/d, > 0 [-]
template <class T>
T pitch_factor(const T& pitch_ratio) {
  return 1.29 * pitch_ratio / (0.29 + pitch_ratio);
}

/// Factor for coils [-].
///
///     f = (3 d/D)^0.1 (t / (0.04 D))^0.5
///
/// Source: Penney & Atiemo-Obeng (2004), section 14.4.
/// Range:  helical coils; Nu with the outer diameter of the tube.
///
/// @param agitator_ratio  diameter of the agitator over that of the vessel d/D, > 0 [-]
/// @param tube_ratio      outer diameter of the tube over that of the vessel t/D, > 0 [-]
template <class T>
T coil_factor(const T& agitator_ratio, const T& tube_ratio) {
  using std::pow;
  using std::sqrt;
  return pow(3.0 * agitator_ratio, 0.1) * sqrt(tube_ratio / 0.04);
}

}  // namespace kettlecast
