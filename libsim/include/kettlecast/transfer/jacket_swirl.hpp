#pragma once

#include <cmath>

#include "kettlecast/base/constants.hpp"
#include "kettlecast/numerics/smooth.hpp"

/// Jacket film by Stein and Schmidt, who count the swirl that an inlet keeps up.
namespace kettlecast {

/// Measures of a plain jacket.
struct JacketShape {
  double gap;              ///< width of the jacket g [m]
  double vessel_diameter;  ///< outer diameter of the vessel D [m]
  double height;           ///< H [m]
  double inlet_diameter;   ///< d [m]
};

/// Friction factor (Darcy) of a smooth channel [-].
///
///     f^-0.5 = 2 lg(Re f^0.5 / 2.51), blended with f = 64 / Re
///
/// Source: Prandtl & von Karman; five rounds of substitution. The blend is ours.
/// Range:  Re > 0.
template <class T>
T smooth_friction_factor(const T& reynolds) {
  using std::log10;
  const T rounded = smooth_positive(T(reynolds - 1e3), 1e2) + 1e3;  // keeps the logarithm above 1
  T root = 1.8 * log10(rounded / 6.9);
  for (int round = 0; round < 5; ++round) root = 2.0 * log10(rounded / (2.51 * root));
  return blend(T(64.0 / smooth_positive(reynolds, 1e-3)), T(1.0 / (root * root)), 8.0);
}

/// Velocity in a jacket with a tangential inlet [m/s].
///
///     v = (v_x^2 + v_z^2)^0.5,   v_x = v_i ln(1 + s r) / s,   s = f D H / d^2
///     r = q + (q^2 + 1/(2 s))^0.5,   q = (1 - 1/s) / 4
///     v_i = 4 V / (pi d^2),   v_z = V / (pi D g)
///
/// Source: Stein & Schmidt, Forsch. Ingenieurwes. 59 (1993) 73, in VDI Heat Atlas (2010).
/// Range:  V >= 0. Friction and velocity are found by five rounds of substitution.
///
/// @param volume_flow          V [m3/s]
/// @param kinematic_viscosity  [m2/s]
template <class T>
T swirl_velocity(const T& volume_flow, const JacketShape& jacket, const T& kinematic_viscosity) {
  using std::log;
  using std::sqrt;
  const double square = jacket.inlet_diameter * jacket.inlet_diameter;
  const T inlet = volume_flow * (4.0 / (constants::pi * square));
  const T upward = volume_flow / (constants::pi * jacket.vessel_diameter * jacket.gap);
  T reynolds(1e5), velocity(0.0);
  for (int round = 0; round < 5; ++round) {
    const T s =
        smooth_friction_factor(reynolds) * (jacket.vessel_diameter * jacket.height / square);
    const T q = 0.25 * (1.0 - 1.0 / s);
    const T along = inlet * log(1.0 + s * (q + sqrt(q * q + 0.5 / s))) / s;
    velocity = sqrt(along * along + upward * upward);
    reynolds = 2.0 * jacket.gap * velocity / kinematic_viscosity;
  }
  return velocity;
}

/// Velocity in a jacket with a radial inlet [m/s].
///
///     v = V / (2 g b) ln(b / e) / (1 - e / b),   e = pi d^2 / (8 g)
///     b = (pi D / 2) (1 + (pi D / (2 H))^2)^0.5
///
/// Source: Stein & Schmidt (1993), in VDI Heat Atlas (2010).
/// Range:  e < b.
template <class T>
T radial_velocity(const T& volume_flow, const JacketShape& jacket) {
  using std::log;
  using std::sqrt;
  const double half = 0.5 * constants::pi * jacket.vessel_diameter;
  const double middle = half * sqrt(1.0 + half * half / (jacket.height * jacket.height));
  const double entry =
      constants::pi * jacket.inlet_diameter * jacket.inlet_diameter / (8.0 * jacket.gap);
  return volume_flow * (log(middle / entry) / ((1.0 - entry / middle) * 2.0 * jacket.gap * middle));
}

/// Length of the path through a jacket [m]. Source: Stein & Schmidt (1993), ((pi D / 2)^2 +
/// H^2)^0.5. Range: any.
inline double jacket_path(double vessel_diameter, double height) {
  const double half = 0.5 * constants::pi * vessel_diameter;
  return std::sqrt(half * half + height * height);
}

/// Reynolds number raised or lowered by buoyancy [-].
///
///     Re_e = (Re^2 + Gr (H / (2 g)) / 50)^0.5
///
/// Source: Stein & Schmidt (1993), in VDI Heat Atlas (2010).
/// Range:  any; held smoothly above zero. Gr is positive where buoyancy helps: liquid that warms
///         and enters at the bottom, or cools and enters at the top.
///
/// @param grashof       g rho |rho - rho_w| (2 g)^3 / mu^2 with the sign above Gr [-]
/// @param height_ratio  height over twice the gap H / (2 g) [-]
template <class T>
T buoyant_reynolds(const T& reynolds, const T& grashof, double height_ratio) {
  using std::sqrt;
  return sqrt(smooth_positive(T(reynolds * reynolds + grashof * (height_ratio / 50.0)), 1e-6));
}

/// Nusselt number of a plain jacket, with twice the gap as length [-].
///
///     Nu = (3.66^3 + N1^3 + N2^3 + N3^3)^(1/3) Vi^0.14
///     N1 = 1.62 (Pr Re l)^(1/3),   N2 = 0.664 Pr^(1/3) (Re l)^(1/2)
///     N3 = 0.0115 Pr^(1/3) Re^0.9 (1 - (2300/Re)^2.5) (1 + l^(2/3)) above Re 2300, else 0
///
/// Source: Stein & Schmidt (1993), in VDI Heat Atlas (2010).
/// Range:  laminar and turbulent flow. N3 starts from zero, so its cube joins smoothly.
///
/// @param reynolds         with twice the gap, perhaps from buoyant_reynolds, > 0 [-]
/// @param prandtl          Pr [-]
/// @param length_ratio     twice the gap over jacket_path l [-]
/// @param viscosity_ratio  viscosity of the bulk over that at the wall Vi [-]
template <class T>
T stein_schmidt_nusselt(const T& reynolds, const T& prandtl, double length_ratio,
                        const T& viscosity_ratio) {
  using std::pow;
  using std::sqrt;
  const T path = reynolds * length_ratio;
  T cubes = 3.66 * 3.66 * 3.66 + 1.62 * 1.62 * 1.62 * prandtl * path +
            0.664 * 0.664 * 0.664 * prandtl * path * sqrt(path);
  if (reynolds > 2300.0) {
    const T turbulent = 0.0115 * pow(reynolds, 0.9) * (1.0 - pow(2300.0 / reynolds, 2.5)) *
                        (1.0 + pow(length_ratio, 2.0 / 3.0));
    cubes = cubes + prandtl * turbulent * turbulent * turbulent;
  }
  return pow(cubes, 1.0 / 3.0) * pow(viscosity_ratio, 0.14);
}

}  // namespace kettlecast
