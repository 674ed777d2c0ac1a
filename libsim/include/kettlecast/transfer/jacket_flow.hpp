#pragma once

#include <cmath>

#include "kettlecast/base/constants.hpp"
#include "kettlecast/numerics/smooth.hpp"

/// Film of hot or chilled liquid in the jacket around a vessel.
namespace kettlecast {

/// Velocity of the liquid that Lehrer's equation counts with [m/s].
///
///     v = (v_g v_i)^0.5 + v_b,   v_g = V / (H g),   v_i = 4 V / (pi d^2)
///
/// Source: Lehrer, Ind. Eng. Chem. Process Des. Dev. 9 (1970) 553, in VDI Heat Atlas (2010).
/// Range:  V >= 0. v_b = 0 for tangential inlets.
///
/// @param volume_flow       V [m3/s]
/// @param gap               width of the jacket g [m]
/// @param height            of the jacket H [m]
/// @param inlet_diameter    d [m]
/// @param buoyant_velocity  v_b of a radial inlet, see lehrer_buoyant_velocity [m/s]
template <class T>
T lehrer_velocity(const T& volume_flow, double gap, double height, double inlet_diameter,
                  const T& buoyant_velocity) {
  using std::sqrt;
  const double through_gap = 1.0 / (height * gap);
  const double through_inlet = 4.0 / (constants::pi * inlet_diameter * inlet_diameter);
  return volume_flow * sqrt(through_gap * through_inlet) + buoyant_velocity;
}

/// Velocity that buoyancy adds for a radial inlet at the bottom [m/s].
///
///     v_b = 0.5 (2 g beta H dT)^0.5
///
/// Source: Lehrer (1970), in VDI Heat Atlas (2010).
/// Range:  any dT. Negative if the liquid cools on its way up; for an inlet at the top change the
///         sign. Passes smoothly through zero.
///
/// @param expansivity  beta [1/K]
/// @param height       of the jacket H [m]
/// @param warming      temperature at the outlet less that at the inlet dT [K]
template <class T>
T lehrer_buoyant_velocity(const T& expansivity, double height, const T& warming) {
  using std::sqrt;
  const T drive = (2.0 * constants::gravity * height) * expansivity * warming;
  return 0.5 * drive / sqrt(sqrt(drive * drive + 1e-12));
}

/// Length that Lehrer's numbers are made with [m]. Source: Lehrer (1970), (8/3)^0.5 times the width
/// of the jacket. Range: width > 0.
template <class T>
T lehrer_length(const T& gap) {
  using std::sqrt;
  return sqrt(T(8.0 / 3.0)) * gap;
}

/// Nusselt number of a plain jacket [-].
///
///     Nu = 0.03 Re^0.75 Pr / (1 + 1.74 (Pr - 1) / Re^0.125) Vi^0.14
///
/// Source: Lehrer (1970), in VDI Heat Atlas (2010). Vi: viscosity of the bulk over that at the
/// wall. Range:  turbulent flow in jackets without baffles, Pr > 1; all numbers with lehrer_length.
/// @note Re is held smoothly above 5e-4, so that opposing buoyancy cannot turn it.
template <class T>
T lehrer_nusselt(const T& reynolds, const T& prandtl, const T& viscosity_ratio) {
  using std::pow;
  const T root = pow(smooth_positive(reynolds, 1e-3), 0.125);
  const T seventh = root * root * root * root * root * root * root;
  return 0.03 * seventh * prandtl / (root + 1.74 * (prandtl - 1.0)) * pow(viscosity_ratio, 0.14);
}

/// Overall coefficient of a thin wall between jacket and product [W/(m2 K)].
///
///     1/U = 1/h_i + R + s/k + 1/h_o
///
/// Source: resistances in series.
/// Range:  both films > 0; wall thin against its radius.
///
/// @param inside             film of the product h_i [W/(m2 K)]
/// @param outside            film of the jacket h_o [W/(m2 K)]
/// @param wall_thickness     s [m]
/// @param wall_conductivity  k [W/(m K)]
/// @param dirt               resistance of dirt on both sides together R [m2 K/W]
template <class T>
T overall_coefficient(const T& inside, const T& outside, double wall_thickness,
                      double wall_conductivity, const T& dirt) {
  return 1.0 / (1.0 / inside + dirt + wall_thickness / wall_conductivity + 1.0 / outside);
}

/// Temperature difference between jacket and product that drives a heat flow [K].
///
///     dT = Q / (U A)
///
/// Source: definition of the overall coefficient.
/// Range:  U, A > 0.
///
/// @param heat_flow    Q [W]
/// @param coefficient  U [W/(m2 K)]
/// @param area         A [m2]
template <class T>
T driving_difference(const T& heat_flow, const T& coefficient, const T& area) {
  return heat_flow / (coefficient * area);
}

}  // namespace kettlecast
