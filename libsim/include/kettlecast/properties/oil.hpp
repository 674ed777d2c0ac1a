#pragma once

#include <cmath>

#include "kettlecast/base/constants.hpp"
#include "kettlecast/properties/arrhenius.hpp"
#include "kettlecast/properties/composition.hpp"

/// Liquid cooking oil, a mean of rapeseed, soybean, corn, sunflower and the like. Temperatures in
/// K.
namespace kettlecast::oil {

/// Slope of the density [kg/(m3 K)]. Source: see density.
inline constexpr double density_slope = -0.6625;

/// Density [kg/m3].
///
///     rho = 890.9 - 0.6625 (t - 60),   t in degC
///
/// Source: line through rapeseed, corn and soybean oil at 24-110 degC of Noureddini, Teoh &
/// Clements,
///         J. Am. Oil Chem. Soc. 69 (1992) 1184; largest deviation 0.9 %, the spread of the oils.
/// Range:  5-200 degC, extended beyond the data as a line.
template <class T>
T density(const T& temperature) {
  return 890.9 + density_slope * (temperature - constants::ice_point - 60.0);
}

/// Thermal expansivity, -(d rho / dT) / rho [1/K].
///
/// Source: derivative of the density above.
/// Range:  5-200 degC.
template <class T>
T expansivity(const T& temperature) {
  return -density_slope / density(temperature);
}

/// Specific heat [J/(kg K)].
///
///     cp = 1900 + 3.6 t,   t in degC
///
/// Source: line through olive oil at 20 degC (Geankoplis, Transport Processes, Table A.4-1: 2010)
/// and
///         recalled values of refined soybean oil at 40, 100 and 180 degC (2030, 2250, 2550; from
///         memory). That it rises in a line is the finding of Fasina & Colley, Int. J. Food Prop.
///         11 (2008) 738, for twelve oils. Oils differ by 10 %.
/// Range:  5-200 degC.
template <class T>
T specific_heat(const T& temperature) {
  return 1900.0 + 3.6 * (temperature - constants::ice_point);
}

/// Specific enthalpy, integral of the specific heat, zero at 273.15 K [J/kg].
///
/// Source: integral of the specific heat above.
/// Range:  5-200 degC.
template <class T>
T specific_enthalpy(const T& temperature) {
  const T t = temperature - constants::ice_point;
  return t * (1900.0 + 1.8 * t);
}

/// Conductivity [W/(m K)].
///
/// Source: fat component of Choi & Okos (1986), see composition.hpp.
/// Range:  -40 to 150 degC, used up to 200 degC.
template <class T>
T conductivity(const T& temperature) {
  return component::fat.conductivity(temperature);
}

/// Dynamic viscosity [Pa s].
///
///     ln mu = -8.6575 + 784.36 / (T - 162.02)
///
/// Source: fitted to 125 kinematic viscosities (0-110 degC) of rapeseed, canola, soybean, corn,
///         cottonseed, sunflower, peanut, olive and palm oil collected from ten papers 1936-2006,
///         times the density above, to 3.6 mPa s at 150 degC (soybean, from memory) and to
///         2.6 mPa s at 180 degC (least of 13 oils, Stanciu, Grasas y Aceites). Deviation 14 % RMS,
///         89 % of the points within 20 %, largest 45 %: the spread of oils and papers.
/// Range:  5-200 degC.
template <class T>
T viscosity(const T& temperature) {
  using std::exp;
  return exp(-8.6575 + 784.36 / (temperature - 162.02));
}

/// Viscosity at one temperature from that at another, Arrhenius' law [unit of the reference].
///
///     mu = mu_0 exp(E / R (1/T - 1/T_0))
///
/// Source: as used for fourteen vegetable oils, E = 21-30 kJ/mol, by Diamante & Lan, J. Food
///         Processing (2014) 234583.
/// Range:  26-90 degC. Beyond, the curve above bends as oils do; see viscosity_like.
///
/// @param reference              mu_0 at T_0 [any unit of viscosity]
/// @param reference_temperature  T_0 [K]
/// @param energy                 E of flow [J/mol]
/// @param temperature            T [K]
template <class T>
T arrhenius_viscosity(const T& reference, const T& reference_temperature, const T& energy,
                      const T& temperature) {
  using std::exp;
  return reference * exp(arrhenius_exponent(energy, reference_temperature, temperature));
}

/// Viscosity of one oil that is known at one temperature, falling as that of the mean oil [Pa s].
///
///     mu = mu_0 mu_mean(T) / mu_mean(T_0)
///
/// Source: curve of the mean oil above; common oils keep their order from 5 to 110 degC.
/// Range:  5-200 degC.
///
/// @param reference              mu_0 at T_0 [Pa s]
/// @param reference_temperature  T_0 [K]
/// @param temperature            T [K]
template <class T>
T viscosity_like(const T& reference, const T& reference_temperature, const T& temperature) {
  return reference * viscosity(temperature) / viscosity(reference_temperature);
}

}  // namespace kettlecast::oil
