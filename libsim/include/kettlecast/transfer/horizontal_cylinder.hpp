#pragma once

#include <cmath>

#include "kettlecast/numerics/power_laws.hpp"

/// Natural convection around a horizontal cylinder, Nu = h D / k, by three sources which differ by
/// 20 %.
namespace kettlecast {

/// Nusselt number by Churchill & Chu [-].
///
///     Nu = (0.60 + 0.387 Ra^(1/6) / (1 + (0.559/Pr)^(9/16))^(8/27))^2
///
/// Source: Churchill & Chu, Int. J. Heat Mass Transfer 18 (1975) 1049; Incropera & DeWitt, equation
///         9.34.
/// Range:  1e-3 < Ra < 1e12, all Pr.
template <class T>
T horizontal_cylinder_nusselt(const T& rayleigh, const T& prandtl) {
  using std::pow;
  const T root = 0.60 + 0.387 * pow(smooth_positive(rayleigh, 1e-6), 1.0 / 6.0) /
                            pow(1.0 + pow(0.559 / prandtl, 9.0 / 16.0), 8.0 / 27.0);
  return root * root;
}

/// Nusselt number by Kuehn & Goldstein [-].
///
///     2/Nu = ln(1 + 2 / ((0.518 Ra^(1/4) (1 + (0.559/Pr)^(3/5))^(-5/12))^15
///                        + (0.1 Ra^(1/3))^15)^(1/15))
///
/// Source: Kuehn & Goldstein, Int. J. Heat Mass Transfer 19 (1976) 1127.
/// Range:  1e-3 < Ra < 1e12, Pr > 0.01.
template <class T>
T horizontal_cylinder_kuehn_nusselt(const T& rayleigh, const T& prandtl) {
  using std::log;
  using std::pow;
  using std::sqrt;
  const T ra = smooth_positive(rayleigh, 1e-6);
  const T laminar = 0.518 * sqrt(sqrt(ra)) * pow(1.0 + pow(0.559 / prandtl, 0.6), -5.0 / 12.0);
  return 2.0 / log(1.0 + 2.0 / blend(laminar, T(0.1 * pow(ra, 1.0 / 3.0)), 15.0));
}

/// Nusselt number by Morgan [-].
///
///     Nu = C Ra^n,   C, n by decades of Ra
///
/// Source: Morgan, Adv. Heat Transfer 11 (1975) 199; Incropera & DeWitt, table 9.1. Its steps of
///         up to 5 % are spread over 5 % to either side of each change.
/// Range:  1e-3 < Ra < 1e12, all Pr but liquid metals.
template <class T>
T horizontal_cylinder_morgan_nusselt(const T& rayleigh) {
  constexpr PowerLaws<5> laws{
      {{{0.675, 0.058}, {1.02, 0.148}, {0.850, 0.188}, {0.480, 0.250}, {0.125, 0.333}}},
      {{1e-2, 1e2, 1e4, 1e7}},
      1.05};
  return joined_power_laws(T(smooth_positive(rayleigh, 1e-6)), laws);
}

}  // namespace kettlecast
