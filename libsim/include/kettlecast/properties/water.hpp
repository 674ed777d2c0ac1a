#pragma once

#include "kettlecast/base/constants.hpp"
#include "kettlecast/numerics/polynomial.hpp"
#include "kettlecast/properties/saturation.hpp"

/// Water and steam on the saturation line. Temperatures in K, pressures in Pa.
///
/// Saturation (saturation.hpp) is IAPWS-IF97 itself. The rest are polynomials in x = (T - 353.15 K)
/// / 80 K fitted for the smallest largest error to 401 states of IAPWS-IF97 (density, heat), R12-08
/// (viscosity), R15-11 (conductivity) and R1-76 (surface tension); the error of each was measured
/// on them. Beyond 0-160 degC they stay finite and positive from 240 K to 490 K, with no claim to
/// accuracy.
namespace kettlecast::water {

/// Place on the scale of the polynomials [-].
template <class T>
T scaled_temperature(const T& temperature) {
  return (temperature - 353.15) / 80.0;
}

namespace fit {
inline constexpr PolynomialCoefficients<8> specific_heat{4195.47758,  68.4527999,  70.9644326,
                                                         -10.7500871, -15.7350564, 34.0049753,
                                                         28.0107336,  -32.7124996};  // [J/(kg K)]
inline constexpr PolynomialCoefficients<7> density{971.78315,   -49.7758281, -16.2311825,
                                                   2.49607191,  -1.15785692, 1.10075763,
                                                   -0.771948463};  // [kg/m3]
inline constexpr PolynomialCoefficients<8> conductivity{
    0.666985569,    0.0516628792,   -0.0462115277,  0.0100272124,
    -7.21345681e-4, -6.47653738e-3, -2.94963728e-3, 6.36193396e-3};  // [W/(m K)]
inline constexpr PolynomialCoefficients<7> fluidity{2824.40355,  2822.29334,  387.009002,
                                                    -181.559934, -3.92798117, 14.1165215,
                                                    5.38725165};  // [1/(Pa s)]
inline constexpr PolynomialCoefficients<5> latent_heat{2308055.49, -201974.014, -15777.8686,
                                                       -7540.32009, -884.861825};  // [J/kg]
inline constexpr PolynomialCoefficients<4> surface_tension{0.0626714144, -0.0146628722,
                                                           -1.55374395e-3, 1.34742348e-4};  // [N/m]
inline constexpr PolynomialCoefficients<5> vapour_excess{1.00945654, 0.0203098795, 0.0170032721,
                                                         6.45164067e-3, 8.45981341e-4};  // [-]
}  // namespace fit

/// Specific heat at constant pressure of the saturated liquid [J/(kg K)].
///
/// Source: fit to IAPWS-IF97, largest relative error 5.1e-5.
/// Range:  0-160 degC.
template <class T>
T specific_heat(const T& temperature) {
  return polynomial(fit::specific_heat, scaled_temperature(temperature));
}

/// Specific enthalpy of the liquid, exact integral of the specific heat, zero at 273.15 K [J/kg].
///
/// Source: fit to IAPWS-IF97. Leaves out v dp along the saturation line: below the enthalpy of the
///         tables by the work of pressing, 0.04 kJ/kg at 100, 0.4 kJ/kg at
///         160 degC.
/// Range:  0-160 degC.
template <class T>
T specific_enthalpy(const T& temperature) {
  constexpr auto coefficients =
      integral(fit::specific_heat, (constants::ice_point - 353.15) / 80.0);
  return 80.0 * polynomial(coefficients, scaled_temperature(temperature));
}

/// Density of the saturated liquid [kg/m3].
///
/// Source: fit to IAPWS-IF97, largest relative error 8.2e-6.
/// Range:  0-160 degC.
template <class T>
T density(const T& temperature) {
  return polynomial(fit::density, scaled_temperature(temperature));
}

/// Thermal expansivity of the liquid, -(d rho / dT) / rho [1/K].
///
/// Source: derivative of the fitted density; within 8.2e-6 1/K of IAPWS-IF97, 0.5 % over 27-127
/// degC. Range:  0-160 degC. Negative below 4 degC, as water is.
template <class T>
T expansivity(const T& temperature) {
  constexpr auto slope = derivative(fit::density);
  const T x = scaled_temperature(temperature);
  return -polynomial(slope, x) / (80.0 * polynomial(fit::density, x));
}

/// Conductivity of the saturated liquid [W/(m K)].
///
/// Source: fit to IAPWS R15-11, largest relative error 8.5e-5.
/// Range:  0-160 degC.
template <class T>
T conductivity(const T& temperature) {
  return polynomial(fit::conductivity, scaled_temperature(temperature));
}

/// Dynamic viscosity of the saturated liquid [Pa s].
///
/// Source: fit of 1/mu to IAPWS R12-08, largest relative error 3.8e-5.
/// Range:  0-160 degC.
template <class T>
T viscosity(const T& temperature) {
  return 1.0 / polynomial(fit::fluidity, scaled_temperature(temperature));
}

/// Latent heat of vaporisation [J/kg].
///
/// Source: fit to IAPWS-IF97, largest relative error 1.1e-5.
/// Range:  0-160 degC.
template <class T>
T latent_heat(const T& temperature) {
  return polynomial(fit::latent_heat, scaled_temperature(temperature));
}

/// Surface tension against steam [N/m].
///
/// Source: fit to IAPWS R1-76, largest relative error 2.5e-5.
/// Range:  0-160 degC.
template <class T>
T surface_tension(const T& temperature) {
  return polynomial(fit::surface_tension, scaled_temperature(temperature));
}

/// Density of saturated steam [kg/m3].
///
///     rho = z(T) p_sat M / (R T),   z the excess over an ideal gas, 1.000 at 0, 1.054 at 160 degC
///
/// Source: z fitted to IAPWS-IF97, largest relative error 1.0e-5.
/// Range:  0-160 degC.
template <class T>
T vapour_density(const T& temperature) {
  const T excess = polynomial(fit::vapour_excess, scaled_temperature(temperature));
  return excess * saturation_pressure(temperature) * constants::water_molar_mass /
         (constants::molar_gas * temperature);
}

}  // namespace kettlecast::water
