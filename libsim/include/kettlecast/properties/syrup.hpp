#pragma once

#include <cmath>

#include "kettlecast/base/constants.hpp"
#include "kettlecast/numerics/polynomial.hpp"
#include "kettlecast/properties/sugar.hpp"
#include "kettlecast/properties/water.hpp"

/// Density, viscosity and heat of sucrose syrup. Sugar as mass fraction [kg/kg].
namespace kettlecast::sugar {

/// Coefficients of the density, without the constant. Source: see density.
namespace icumsa {
inline constexpr PolynomialCoefficients<7> at_20{0.0,     385.1761, 135.3705, 40.9299,
                                                 -3.9646, 13.4853,  -17.2890};
inline constexpr PolynomialCoefficients<6> first{0.0, -46.2720, -7.1720, 1.1597, 5.1126, 17.5254};
inline constexpr PolynomialCoefficients<5> second{0.0, 59.7712, 7.2491, 12.3630, -35.4791};
inline constexpr PolynomialCoefficients<4> third{0.0, -47.2207, -21.6977, 27.6301};
inline constexpr PolynomialCoefficients<3> fourth{0.0, 18.3184, 12.3081};
}  // namespace icumsa

/// Density of syrup [kg/m3].
///
///     rho = rho_w(T) + sum of c_ij w^i u^j,   u = (t - 20) / 100
///
/// Source: ICUMSA (1990), in Bubnik, Kadlec, Urban & Bruhns, Sugar Technologists Manual (1995)
///         164, read in two transcriptions; water from water.hpp.
/// Range:  0-85 % sugar, 0-100 degC. Positive and rising with sugar to 100 % and 150 degC.
///
/// @param sugar        w [kg/kg]
/// @param temperature  [K]
template <class T>
T density(const T& sugar, const T& temperature) {
  const T u = (temperature - constants::ice_point - 20.0) / 100.0;
  const T warm = polynomial(icumsa::third, sugar) + u * polynomial(icumsa::fourth, sugar);
  const T sum =
      polynomial(icumsa::at_20, sugar) +
      u * (polynomial(icumsa::first, sugar) + u * (polynomial(icumsa::second, sugar) + u * warm));
  return water::density(temperature) + sum;
}

/// Density over that of water at the same temperature [-].
///
/// Source: definition, with the density above.
/// Range:  0-85 % sugar, 0-100 degC.
template <class T>
T relative_density(const T& sugar, const T& temperature) {
  return density(sugar, temperature) / water::density(temperature);
}

/// Density of a saturated solution at its own temperature [kg/m3].
///
/// Source: density at the saturation of sugar.hpp. Tables such as Mohos (2010), A2.2, print
///         another figure, 1000 times the relative density at 17.5 degC of the solution saturated
///         at t: 1435.9 for 100 degC, where the hot syrup weighs 1384 kg/m3.
/// Range:  0-100 degC.
template <class T>
T saturated_density(const T& temperature) {
  return density(saturation(temperature), temperature);
}

/// Degrees Baume at 20 degC [degBe].
///
///     B = 145 (1 - 1 / d),   d relative density at 20 degC
///
/// Source: modulus 145 of the scale for heavy liquids; gives Mohos (2010), Table A2.1.
/// Range:  0-95 % sugar.
template <class T>
T baume(const T& sugar) {
  return 145.0 * (1.0 - 1.0 / relative_density(sugar, T(constants::ice_point + 20.0)));
}

/// Sugar of syrup with a Baume degree at 20 degC [kg/kg]: the inverse of baume.
///
/// Source: bisection to 1e-12 of a rising function.
/// Range:  0-51 degBe.
template <class T>
T sugar_of_baume(const T& degrees) {
  T low(0.0);
  T high(1.0);
  for (int i = 0; i < 40; ++i) {
    const T middle = 0.5 * (low + high);
    (baume(middle) < degrees ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

/// Dynamic viscosity of syrup [Pa s].
///
///     log10(mu / mPa s) = 22.46 N - 0.114 + f (1.1 + 43.1 N^1.25)
///     N = w / (1900 - 18 w),  f = (30 - t) / (91 + t),   w in per cent, t in degC
///
/// Source: Genotelle (1978), in Mathlouthi & Genotelle, Sucrose (1995) 126; 1 % of its data.
/// Range:  0-75 % sugar, 0-100 degC. Falls with temperature up to 200 degC, rises with sugar up to
///         90 % and 150 degC.
///
/// @param sugar        mass fraction [kg/kg]
/// @param temperature  [K]
template <class T>
T viscosity(const T& sugar, const T& temperature) {
  using std::exp;
  using std::sqrt;
  constexpr double ln_10 = 2.302585092994046;
  const T t = temperature - constants::ice_point;
  const T n = sugar / (19.0 - 18.0 * sugar);
  const T f = (30.0 - t) / (91.0 + t);
  const T power = n * sqrt(sqrt(n + 1e-12));  // N^1.25 with a finite slope at N = 0
  return 1e-3 * exp(ln_10 * (22.46 * n - 0.114 + f * (1.1 + 43.1 * power)));
}

/// Specific heat of syrup [J/(kg K)].
///
///     cp = 4184 - 2511 w + 7.5 w t,   t in degC
///
/// Source: Bubnik et al. (1995) for pure sucrose, as Llano-Restrepo (2005) prints it; 0.8 % below
///         water at 100 degC where there is no sugar.
/// Range:  0-90 % sugar, 0-100 degC.
template <class T>
T specific_heat(const T& sugar, const T& temperature) {
  return 4184.0 + sugar * (7.5 * (temperature - constants::ice_point) - 2511.0);
}

/// Specific heat of solid sucrose [J/(kg K)].
///
///     cp = 0.2712 + 0.00103 t,   in kcal/(kg K), 1 kcal = 4186.8 J, t in degC
///
/// Source: Mohos, Confectionery and Chocolate Engineering (2010), appendix 2.
/// Range:  0-100 degC.
template <class T>
T solid_specific_heat(const T& temperature) {
  return 4186.8 * (0.2712 + 0.00103 * (temperature - constants::ice_point));
}

/// Conductivity of syrup [W/(m K)].
///
///     k = (0.565 + 1.8e-3 t - 6e-6 t^2) (1 - 0.54 w),   t in degC
///
/// Source: Riedel, Chem.-Ing.-Tech. 21 (1949) 340 (from memory); 1 % of its data.
/// Range:  0-80 % sugar, 0-80 degC. Used to 150 degC, where it levels off.
template <class T>
T conductivity(const T& sugar, const T& temperature) {
  const T t = temperature - constants::ice_point;
  return (0.565 + t * (1.8e-3 - 6e-6 * t)) * (1.0 - 0.54 * sugar);
}

}  // namespace kettlecast::sugar
