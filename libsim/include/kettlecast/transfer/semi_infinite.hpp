#pragma once

#include <cmath>

#include "kettlecast/base/constants.hpp"
#include "kettlecast/numerics/root.hpp"
#include "kettlecast/transfer/contact.hpp"

/// Heat into a body so thick that its far side does not feel it yet. x depth, a diffusivity.
namespace kettlecast {

/// exp(x^2) erfc(x), without overflow [-].
///
/// Source: Abramowitz & Stegun (1964), 7.1.2 and, for x > 25, the asymptotic series 7.1.23.
/// Range:  x >= 0; relative error below 1e-12.
template <class T>
T scaled_erfc(const T& x) {
  using std::erfc;
  using std::exp;
  using std::sqrt;
  if (x < 25.0) return exp(x * x) * erfc(x);
  const T half = 0.5 / (x * x);
  const T series = 1.0 - half * (1.0 - 3.0 * half * (1.0 - 5.0 * half * (1.0 - 7.0 * half)));
  return series / (sqrt(constants::pi) * x);
}

/// Depth in diffusion lengths [-].
///
///     X = x / (2 sqrt(a t))
///
/// Source: Carslaw & Jaeger, Conduction of Heat in Solids (1959), section 2.4.
/// Range:  t > 0.
///
/// @param depth        x from the surface [m]
/// @param diffusivity  a = k / (rho cp) [m2/s]
/// @param time         t since the surface changed [s]
template <class T>
T diffusion_depth(const T& depth, const T& diffusivity, const T& time) {
  using std::sqrt;
  return depth / (2.0 * sqrt(diffusivity * time));
}

/// Share of the change of a surface held at a temperature that has arrived at a depth [-].
///
///     (T - T0) / (Ts - T0) = erfc(X)
///
/// Source: Carslaw & Jaeger (1959), section 2.5, eq. (1).
/// Range:  X >= 0; body thicker than 4 sqrt(a t).
///
/// @param depth  X as of diffusion_depth [-]
template <class T>
T semi_infinite_fixed_surface(const T& depth) {
  using std::erfc;
  return erfc(depth);
}

/// Depth X that a share of the change of a fixed surface has reached; doubles only [-].
///
/// Source: inverse of semi_infinite_fixed_surface.
/// Range:  1e-12 < share < 1.
///
/// @param share  (T - T0) / (Ts - T0) [-]
inline double semi_infinite_depth(double share) {
  return bracketed_root(0.0, 6.0, [&](double x) { return std::log(std::erfc(x) / share); });
}

/// Flux into a surface held `difference` above the body [W/m2].
///
///     q = k (Ts - T0) / sqrt(pi a t),   half of the mean over 0..t of penetration_coefficient
///
/// Source: Carslaw & Jaeger (1959), section 2.5.
/// Range:  t > 0; body thicker than 4 sqrt(a t).
///
/// @param difference    Ts - T0 [K]
/// @param conductivity  k [W/(m K)]
/// @param diffusivity   a [m2/s]
/// @param time          t [s]
template <class T>
T semi_infinite_flux(const T& difference, const T& conductivity, const T& diffusivity,
                     const T& time) {
  return 0.5 * difference *
         penetration_coefficient(conductivity, T(1.0), T(conductivity / diffusivity), time);
}

/// Heat taken up since a surface was brought `difference` above the body [J/m2].
///
///     Q = 2 k (Ts - T0) sqrt(t / (pi a)) = 2 q t
///
/// Source: integral of semi_infinite_flux over time.
/// Range, @param: as there.
template <class T>
T semi_infinite_heat(const T& difference, const T& conductivity, const T& diffusivity,
                     const T& time) {
  return 2.0 * time * semi_infinite_flux(difference, conductivity, diffusivity, time);
}

/// Rise of temperature at a depth under a constant flux [K].
///
///     T - T0 = 2 q sqrt(a t) / k * (exp(-X^2) / sqrt(pi) - X erfc(X))
///
/// Source: Carslaw & Jaeger (1959), section 2.9, eq. (7).
/// Range:  t > 0; body thicker than 4 sqrt(a t).
///
/// @param flux          q [W/m2]
/// @param depth         x [m]
/// @param conductivity  k [W/(m K)]
/// @param diffusivity   a [m2/s]
/// @param time          t [s]
template <class T>
T semi_infinite_flux_rise(const T& flux, const T& depth, const T& conductivity,
                          const T& diffusivity, const T& time) {
  using std::erfc;
  using std::exp;
  using std::sqrt;
  const T x = diffusion_depth(depth, diffusivity, time);
  return 2.0 * flux * sqrt(diffusivity * time) / conductivity *
         (exp(-x * x) / sqrt(constants::pi) - x * erfc(x));
}

/// Share of the change of a fluid behind a film that has arrived at a depth [-].
///
///     (T - T0) / (Tf - T0) = erfc(X) - exp(2 X H + H^2) erfc(X + H),   H = h sqrt(a t) / k
///
/// Source: Carslaw & Jaeger (1959), section 2.7, eq. (1).
/// Range:  X >= 0, H >= 0; body thicker than 4 sqrt(a t).
///
/// @param depth  X as of diffusion_depth [-]
/// @param film   H [-]
template <class T>
T semi_infinite_film(const T& depth, const T& film) {
  using std::erfc;
  using std::exp;
  return erfc(depth) - exp(-depth * depth) * scaled_erfc(T(depth + film));
}

}  // namespace kettlecast
