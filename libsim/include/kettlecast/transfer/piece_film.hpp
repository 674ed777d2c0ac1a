#pragma once

#include <cmath>

#include "kettlecast/numerics/smooth.hpp"

/// Film between pieces and the liquid around them.
namespace kettlecast {

/// Nusselt number of a sphere in a stream [-].
///
///     Nu = 2 + 0.6 Re^(1/2) Pr^(1/3),   Nu = h d / k, Re = rho v d / mu, d diameter
///
/// Source: Ranz & Marshall, Chem. Eng. Prog. 48 (1952) 141, 173.
/// Range:  0 <= Re < 200 in the source, used to 1e4; 0.6 < Pr < 380.
/// @note Re is held smoothly above 5e-7, so that the slope stays finite at rest.
template <class T>
T ranz_marshall_nusselt(const T& reynolds, const T& prandtl) {
  using std::pow;
  using std::sqrt;
  return 2.0 + 0.6 * sqrt(smooth_positive(reynolds, 1e-6)) * pow(prandtl, 1.0 / 3.0);
}

}  // namespace kettlecast
