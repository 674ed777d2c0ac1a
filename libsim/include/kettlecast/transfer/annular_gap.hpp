#pragma once

#include <cmath>

#include "kettlecast/numerics/smooth.hpp"

/// Film at the inner wall of an annular gap through which liquid flows from end to end, as in a
/// jacket with a ring of inlets. Numbers with the hydraulic diameter, twice the width of the gap.
namespace kettlecast {

/// Nusselt number of laminar flow in an annular gap, outer wall insulated [-].
///
///     Nu = (N1^3 + N2^3 + N3^3)^(1/3),   N1 = 3.66 + 1.2 a^-0.8
///     N2 = 1.615 (1 + 0.14 a^-0.5) Gz^(1/3),   N3 = (2 / (1 + 22 Pr))^(1/6) Gz^(1/2)
///     Gz = Re Pr l
///
/// Source: Gnielinski, in VDI Heat Atlas (2010), section G2 (from memory).
/// Range:  Re < 2300, 0 < a <= 1, 0.1 < Pr < 1000.
///
/// @param reynolds        rho v d_h / mu [-]
/// @param prandtl         Pr [-]
/// @param diameter_ratio  inner over outer diameter of the gap a [-]
/// @param length_ratio    d_h over the length of the flow path l [-]
template <class T>
T laminar_gap_nusselt(const T& reynolds, const T& prandtl, double diameter_ratio,
                      double length_ratio) {
  using std::pow;
  using std::sqrt;
  const T graetz = length_ratio * smooth_positive(T(reynolds * prandtl), 1e-6);
  const double developed = 3.66 + 1.2 * pow(diameter_ratio, -0.8);
  const double thermal = 1.615 * (1.0 + 0.14 / sqrt(diameter_ratio));
  const T starting = sqrt(2.0 / (1.0 + 22.0 * prandtl)) * graetz * sqrt(graetz);
  const double cubes = developed * developed * developed;
  return pow(cubes + thermal * thermal * thermal * graetz + starting, 1.0 / 3.0);
}

/// Nusselt number of turbulent flow in an annular gap, outer wall insulated [-].
///
///     Nu = (f/8) Re Pr / (k + 12.7 (f/8)^0.5 (Pr^(2/3) - 1)) (1 + l^(2/3)) 0.75 a^-0.17
///     f = (1.8 lg Re* - 1.5)^-2,   k = 1.07 + 900/Re - 0.63 / (1 + 10 Pr)
///     Re* = Re ((1 + a^2) ln a + 1 - a^2) / ((1 - a)^2 ln a)
///
/// Source: Gnielinski, Heat Transfer Eng. 30 (2009) 1059, in VDI Heat Atlas (2010) (from memory).
/// Range:  1e4 < Re < 1e6, 0.6 < Pr < 1000, 0 < a < 1.
template <class T>
T turbulent_gap_nusselt(const T& reynolds, const T& prandtl, double diameter_ratio,
                        double length_ratio) {
  using std::log10;
  using std::pow;
  using std::sqrt;
  const double a = diameter_ratio, logarithm = std::log(a);
  const double form = ((1.0 + a * a) * logarithm + 1.0 - a * a) / ((1 - a) * (1 - a) * logarithm);
  const T slope = 1.8 * log10(reynolds * form) - 1.5;
  const T friction = 1.0 / (8.0 * slope * slope);
  const T start = 1.07 + 900.0 / reynolds - 0.63 / (1.0 + 10.0 * prandtl);
  const T two_thirds = pow(prandtl, 2.0 / 3.0);
  const double ends = (1.0 + pow(length_ratio, 2.0 / 3.0)) * 0.75 * pow(a, -0.17);
  return friction * reynolds * prandtl * ends /
         (start + 12.7 * sqrt(friction) * (two_thirds - 1.0));
}

/// Nusselt number of an annular gap, laminar or turbulent [-].
///
/// Source: the two above; between Re 2300 and 1e4 the share of the turbulent one rises smoothly
/// from
///         0 to 1, where Gnielinski joins them by a line.
/// Range:  0 <= Re < 1e6, 0.6 < Pr < 1000, 0 < a < 1.
/// @note For liquids multiply by Vi^0.11, Vi the viscosity of the bulk over that at the wall.
template <class T>
T gap_nusselt(const T& reynolds, const T& prandtl, double diameter_ratio, double length_ratio) {
  const T laminar = laminar_gap_nusselt(reynolds, prandtl, diameter_ratio, length_ratio);
  const T share = smooth_step(T((reynolds - 2300.0) / 7700.0));
  if (!(share > 0.0)) return laminar;
  const T turbulent = turbulent_gap_nusselt(reynolds, prandtl, diameter_ratio, length_ratio);
  return laminar + share * (turbulent - laminar);
}

}  // namespace kettlecast
