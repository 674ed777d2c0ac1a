#pragma once

#include <array>
#include <cmath>
#include <cstddef>

#include "kettlecast/base/constants.hpp"
#include "kettlecast/numerics/polynomial.hpp"

/// Mixtures of propylene glycol and water without additives, as in cook-chill jackets.
///
/// Each property is a polynomial of the third degree in s = (w - 0.3) / 0.3 and in y = (T - 313.15
/// K) / 60 K, w the mass of glycol per mass of mixture, fitted for the smallest largest error to
/// 1137 liquid states of the correlation of Melinder, Properties of Secondary Working Fluids for
/// Indirect Systems (IIR, 2010), as evaluated by CoolProp 8 (INCOMP::MPG). The error stated is that
/// of the fit; Melinder's own, and inhibitors of commercial mixtures, add up to 1 % in density, 2 %
/// in heat, 5 % in conductivity and 10 % in viscosity. Below the freezing point they describe a
/// liquid that would freeze.
namespace kettlecast::glycol {

namespace fit {
/// Coefficients by power of y, and in each row by power of s.
using Surface = std::array<PolynomialCoefficients<4>, 4>;

inline constexpr Surface density{{{{1013.578, 20.55212, -3.001808, -2.582068}},
                                  {{-34.16449, -15.41703, -0.09313609, 4.214472}},
                                  {{-8.655998, 5.512695, -1.084842, -0.3756838}},
                                  {{2.930895, -0.8411846, 0.6570248, -0.1142228}}}};  // [kg/m3]
inline constexpr Surface specific_heat{{{{3904.241, -360.9203, -105.291, -13.01829}},
                                        {{162.3934, 101.1064, -32.44171, 41.39763}},
                                        {{-4.602063, -4.645898, 31.90578, -25.66729}},
                                        {{-3.656105, 14.54691, 4.597891, -19.56339}}}};
inline constexpr Surface conductivity{{{{0.4608273, -0.1485347, 0.0188586, -0.002136142}},
                                       {{0.0484282, -0.02791683, 0.00348368, -0.002602584}},
                                       {{-0.0008297282, 0.01110145, -0.01478181, 0.006228113}},
                                       {{-0.001091241, 0.0006172374, 0.001918128, 8.249329e-05}}}};
inline constexpr Surface log_viscosity{{{{-6.453372, 0.8885253, 0.03655019, 0.02506406}},
                                        {{-1.607719, -0.5925305, -0.007583745, 0.1090877}},
                                        {{0.7891277, 0.4208197, -0.0442359, -0.1459196}},
                                        {{-0.298527, -0.1391295, -0.009297614, 0.02894827}}}};
inline constexpr PolynomialCoefficients<6> freezing{0.0,      -18.41894, -128.3017,
                                                    306.4125, -529.8427, 124.9744};  // [K] in w

/// Coefficients in y at a mass share.
inline PolynomialCoefficients<4> at_share(const Surface& surface, double share) {
  PolynomialCoefficients<4> row{};
  for (std::size_t i = 0; i < row.size(); ++i) {
    row[i] = polynomial(surface[i], (share - 0.3) / 0.3);
  }
  return row;
}
}  // namespace fit

/// Place on the scale of the polynomials y [-].
template <class T>
T scaled_temperature(const T& temperature) {
  return (temperature - 313.15) / 60.0;
}

/// Density [kg/m3].
///
/// Source: fit to Melinder (2010), largest relative error 3e-4.
/// Range:  w 0-0.6, freezing point or -20 degC to 100 degC.
///
/// @param share        mass of glycol per mass of mixture w [kg/kg]
/// @param temperature  [K]
template <class T>
T density(double share, const T& temperature) {
  return polynomial(fit::at_share(fit::density, share), scaled_temperature(temperature));
}

/// Thermal expansivity, -(d rho / dT) / rho [1/K].
///
/// Source: derivative of the density above.
/// Range:  that of the density.
template <class T>
T expansivity(double share, const T& temperature) {
  const auto slope = derivative(fit::at_share(fit::density, share));
  return polynomial(slope, scaled_temperature(temperature)) / (-60.0 * density(share, temperature));
}

/// Specific heat [J/(kg K)].
///
/// Source: fit to Melinder (2010), largest relative error 2.1e-3.
/// Range:  w 0-0.6, freezing point or -20 degC to 100 degC.
template <class T>
T specific_heat(double share, const T& temperature) {
  return polynomial(fit::at_share(fit::specific_heat, share), scaled_temperature(temperature));
}

/// Conductivity [W/(m K)].
///
/// Source: fit to Melinder (2010), largest relative error 7e-4.
/// Range:  w 0-0.6, freezing point or -20 degC to 100 degC.
template <class T>
T conductivity(double share, const T& temperature) {
  return polynomial(fit::at_share(fit::conductivity, share), scaled_temperature(temperature));
}

/// Dynamic viscosity [Pa s].
///
/// Source: fit of the logarithm to Melinder (2010), largest relative error 8e-3.
/// Range:  w 0-0.6, freezing point or -20 degC to 100 degC.
template <class T>
T viscosity(double share, const T& temperature) {
  using std::exp;
  return exp(polynomial(fit::at_share(fit::log_viscosity, share), scaled_temperature(temperature)));
}

/// Temperature at which the first ice forms [K].
///
/// Source: fit to Melinder (2010), largest error 0.03 K.
/// Range:  w 0-0.6.
inline double freezing_temperature(double share) {
  return constants::ice_point + polynomial(fit::freezing, share);
}

}  // namespace kettlecast::glycol
