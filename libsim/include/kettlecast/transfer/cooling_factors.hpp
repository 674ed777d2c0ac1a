#pragma once

#include <algorithm>
#include <cmath>

#include "kettlecast/numerics/polynomial.hpp"
#include "kettlecast/numerics/smooth.hpp"
#include "kettlecast/transfer/transient_conduction.hpp"

/// Straight lines of cooling on a logarithmic scale: y = j 10^(-t/f). Doubles only.
namespace kettlecast {

/// Polynomials of Lacroix & Castaigne in ln Bi, lowest power first.
///
/// Source: ASHRAE Handbook Refrigeration, Cooling and Freezing Times of Foods, tables 1 (slab) and
///         2 (cylinder); table 3 (sphere) from memory, checked against the exact root.
/// Range:  0.1 < Bi <= 100.
namespace cooling_root {
inline constexpr PolynomialCoefficients<6> slab{0.860972,  0.312133,  0.007986,
                                                -0.016192, -0.001190, 0.000581};
inline constexpr PolynomialCoefficients<6> cylinder{1.257493,  0.487941,  0.025322,
                                                    -0.026568, -0.002888, 0.001078};
inline constexpr PolynomialCoefficients<6> sphere{1.573729,  0.642906,  0.047859,
                                                  -0.035530, -0.004907, 0.001563};
}  // namespace cooling_root

/// Polynomial of a shape at ln Bi [-]. Source, Range: cooling_root.
inline double cooling_polynomial(Shape shape, double log_biot) {
  if (shape == Shape::slab) return polynomial(cooling_root::slab, log_biot);
  if (shape == Shape::cylinder) return polynomial(cooling_root::cylinder, log_biot);
  return polynomial(cooling_root::sphere, log_biot);
}

/// Share of the body that is warm alike throughout (Bi <= 0.1) in the factors [-].
///
/// Source: limit in ASHRAE tables 1 to 3; the join over Bi 0.08..0.1 is ours.
/// Range:  Bi > 0.
inline double lumped_share(double biot) {
  return 1.0 - smooth_step(std::log(biot / 0.08) / std::log(0.1 / 0.08));
}

/// Root u of the factors; an explicit stand-in for the first eigenvalue [-].
///
///     u^2 = d Bi (Bi <= 0.1),  polynomial in ln Bi,  pi/2, 2.4048, pi (Bi > 100)
///
/// Source: Lacroix & Castaigne, Can. Inst. Food Sci. Technol. J. 20 (1987) 252, in ASHRAE tables
///         1 to 3. Their jumps (1.6 % and 1 %) are spread over Bi 0.08..0.1 and 100..125.
/// Range:  Bi > 0. Within 1.1 % of the eigenvalue for Bi <= 15, up to 3.6 % low up to Bi 100.
inline double cooling_factor_root(Shape shape, double biot) {
  const double log_biot = std::log(biot);
  const double known = std::clamp(log_biot, std::log(0.08), std::log(100.0));
  const double lumped = lumped_share(biot);
  const double fixed = smooth_step((log_biot - std::log(100.0)) / std::log(1.25));
  const double limit = shape == Shape::slab       ? 0.5 * constants::pi
                       : shape == Shape::cylinder ? 2.404825557695773
                                                  : constants::pi;
  return lumped * std::sqrt(dimensions(shape) * biot) + fixed * limit +
         (1.0 - lumped - fixed) * cooling_polynomial(shape, known);
}

/// Time factor f: time in which the change falls tenfold, as f a / L^2 [-].
///
///     f a / L^2 = ln 10 / u^2,   L half thickness or radius, a diffusivity
///
/// Source: as cooling_factor_root.
/// Range:  Bi > 0. Within 2.2 % of the exact value for Bi <= 15, up to 7.4 % high up to Bi 100.
inline double cooling_time_factor(Shape shape, double biot) {
  const double root = cooling_factor_root(shape, biot);
  return std::log(10.0) / (root * root);
}

/// Lag factor j of the centre: where the straight line starts [-].
///
///     j = 1 (Bi <= 0.1), else the amplitude of the mode u, see mode_amplitude
///
/// Source: as cooling_factor_root; ASHRAE prints 1.273, 1.6015, 2 for Bi > 100.
/// Range:  Bi > 0. Within 1.1 % of the exact amplitude for Bi >= 0.1, 3 % below.
inline double cooling_lag_factor(Shape shape, double biot) {
  const double lumped = lumped_share(biot);
  return lumped + (1.0 - lumped) * mode_amplitude(shape, cooling_factor_root(shape, biot));
}

}  // namespace kettlecast
