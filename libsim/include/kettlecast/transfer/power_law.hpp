#pragma once

#include <cmath>

#include "kettlecast/numerics/smooth.hpp"

/// Power-law liquids under an agitator, by the concept of Metzner and Otto.
namespace kettlecast {

/// Shear stress K gamma^n of a liquid.
struct PowerLaw {
  double consistency;  ///< K [Pa s^n]
  double exponent;     ///< n, below 1 if the liquid thins when stirred [-]
};

/// Mean shear rate around an agitator [1/s].
///
///     gamma = k_s N
///
/// Source: Metzner & Otto, AIChE J. 3 (1957) 3. k_s by shape in stirring.hpp.
/// Range:  laminar and transitional flow.
///
/// @param shear_constant  k_s [-]
/// @param speed           turns per second N [1/s]
template <class T>
T shear_rate(double shear_constant, const T& speed) {
  return shear_constant * speed;
}

/// Apparent viscosity of a power-law liquid [Pa s].
///
///     mu = K gamma^(n - 1)
///
/// Source: definition (Ostwald & de Waele).
/// Range:  shear rates of the fit of K and n.
/// @note gamma is held smoothly above 5e-4 1/s, so that the viscosity stays finite at rest.
///
/// @param rate  shear rate gamma, >= 0 [1/s]
template <class T>
T apparent_viscosity(const PowerLaw& liquid, const T& rate) {
  using std::pow;
  return liquid.consistency * pow(smooth_positive(rate, 1e-3), liquid.exponent - 1.0);
}

/// Reynolds number of an agitator in a power-law liquid [-].
///
///     Re = rho N d^2 / mu,   mu at the shear rate k_s N, so Re = rho N^(2-n) d^2 / (K k_s^(n-1))
///
/// Source: Metzner & Otto (1957).
/// Range:  N >= 0.
///
/// @param density         rho [kg/m3]
/// @param shear_constant  k_s [-]
/// @param speed           turns per second N [1/s]
/// @param diameter        of the agitator d [m]
template <class T>
T power_law_reynolds_number(const PowerLaw& liquid, const T& density, double shear_constant,
                            const T& speed, double diameter) {
  return density * speed * (diameter * diameter) /
         apparent_viscosity(liquid, shear_rate(shear_constant, speed));
}

}  // namespace kettlecast
