#pragma once

#include <cmath>

#include "kettlecast/base/constants.hpp"
#include "kettlecast/numerics/polynomial.hpp"
#include "kettlecast/numerics/smooth.hpp"
#include "kettlecast/properties/elevation.hpp"

/// Sucrose in water: activity of the water, boiling, saturation. Sugar as mass fraction [kg/kg].
namespace kettlecast::sugar {

/// Molar mass of sucrose, C12H22O11 [kg/mol]. Source: IUPAC atomic weights.
inline constexpr double molar_mass = 342.2965e-3;

/// Logarithm of the activity coefficient of the water over the square of the mole fraction of
/// sugar [-].
///
///     k = -6.47                                up to 80 % sugar
///     k = -5.135 (1 - 1.0038 x - 0.24653 x^2)  from 95 % sugar
///
/// Source: Norrish, J. Food Technol. 1 (1966) 25, constant from memory; Starzak & Peacock,
///         Zuckerindustrie 122 (1997) 380, -17638 J/mol over R T, here with T = 413.15 K, where
///         syrup of 95 % boils. Between them smooth_step of the mass fraction: Norrish meets the
///         boiling points of Brown (1912) up to 86 % but has none beyond 98 %; Starzak & Peacock
///         meet the stages of candy but lie 2.5 to 5.4 K below Brown from 80 to 90 %.
/// Range:  0-99.9 % sugar, near the boiling point; up to 80 % also at 25 degC.
///
/// @param mole_fraction  x of the sugar [-]
/// @param mass_fraction  of the sugar [kg/kg]
template <class T>
T activity_constant(const T& mole_fraction, const T& mass_fraction) {
  constexpr double norrish = -6.47;
  constexpr double margules = -17638.0 / (constants::molar_gas * 413.15);
  const T share = smooth_step(T((mass_fraction - 0.80) / 0.15));
  const T dense = margules * (1.0 + mole_fraction * (-1.0038 - 0.24653 * mole_fraction));
  return norrish + share * (dense - norrish);
}

/// Activity of the water in syrup, from masses [-]; 1 without sugar, 0 without water.
///
///     a = (1 - x) exp(k x^2),   x mole fraction of the sugar, k from activity_constant
///
/// Source: see activity_constant.
/// Range:  any masses >= 0, both zero included.
///
/// @param water  [kg]
/// @param sugar  [kg]
template <class T>
T water_activity(const T& water, const T& sugar) {
  using std::exp;
  constexpr double trace = 1e-12;  // [mol], [kg]: makes a dry and empty kettle finite
  const T moles = water / constants::water_molar_mass + trace;
  const T all = moles + sugar / molar_mass;
  const T x = sugar / molar_mass / all;
  const T k = activity_constant(x, T(sugar / (water + sugar + trace)));
  return moles / all * exp(k * x * x);
}

/// Activity of the water in syrup [-].
///
/// Source, range: see activity_constant.
template <class T>
T water_activity(const T& sugar) {
  return water_activity(T(1.0 - sugar), sugar);
}

/// Temperature at which syrup boils [K].
///
///     a p_sat(T) = p
///
/// Source: activity as above. Within 0.4 K of Brown (1912) for 40-60 %, 1.2 K to 84 %, 3.4 K at
///         90 % sugar. His values below 40 % do not go to zero with the sugar; these do.
/// Range:  0-99.9 % sugar, p < 440 kPa. Above 165 degC sugar breaks down while it boils.
///
/// @param sugar     mass fraction [kg/kg]
/// @param pressure  [Pa]
template <class T>
T boiling_temperature(const T& sugar, const T& pressure) {
  return kettlecast::boiling_temperature(pressure, water_activity(sugar));
}

/// How much hotter than water syrup boils [K].
///
/// Source, range: see boiling_temperature.
template <class T>
T boiling_elevation(const T& sugar, const T& pressure) {
  return kettlecast::boiling_elevation(pressure, water_activity(sugar));
}

/// Sugar in syrup that boils at a temperature [kg/kg]: the inverse of boiling_temperature.
///
/// Source: bisection to 1e-12 of a rising function.
/// Range:  0 below the boiling point of water, 1 above that of a melt.
///
/// @param temperature  [K]
/// @param pressure     [Pa]
template <class T>
T boiling_concentration(const T& temperature, const T& pressure) {
  T low(0.0);
  T high(1.0);
  for (int i = 0; i < 40; ++i) {
    const T middle = 0.5 * (low + high);
    (boiling_temperature(middle, pressure) < temperature ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

/// Sugar in a saturated solution [kg/kg].
///
///     w = 64.18 + 0.1348 t + 0.000531 t^2,   w in per cent, t in degC
///
/// Source: Herzfeld (1892), quadratic from memory; it gives Mohos, Confectionery and Chocolate
///         Engineering (2010), Table A2.3, to its last digit but for 90 degC, a misprint there.
///         Vavrinecz (1962; 64.447 + 0.08222 t + 1.6169e-3 t^2 - 1.558e-6 t^3 - 4.63e-8 t^4) lies
///         0.4 below at 20, 0.1 above at 60 and 0.3 below at 100 degC.
/// Range:  0-100 degC.
template <class T>
T saturation(const T& temperature) {
  constexpr PolynomialCoefficients<3> herzfeld{0.6418, 1.348e-3, 5.31e-6};
  return polynomial(herzfeld, T(temperature - constants::ice_point));
}

}  // namespace kettlecast::sugar
