#pragma once

#include <cmath>

#include "kettlecast/base/constants.hpp"

/// Dry air, and water vapour in it, near atmospheric pressure. Temperatures in K, pressures in Pa.
namespace kettlecast::air {

/// Density of dry air as an ideal gas, p / (R T) [kg/m3].
///
/// Source: ideal gas; R = 287.0528 J/(kg K), US Standard Atmosphere 1976.
/// Range:  250-500 K, below 200 kPa; within 0.1 % of the real gas.
template <class T>
T density(const T& temperature, const T& pressure) {
  return pressure / (constants::dry_air_gas * temperature);
}

/// Density of moist air as an ideal mixture [kg/m3].
///
///     rho = p / T ((1 - x) / R_a + x / R_w),   R_a, R_w gas constants of dry air and steam
///
/// Source: ideal gas law for mixtures; below the real mixture of CoolProp 8.0 by 0.05 % at 20, 0.5
/// % at 80 and 1.2 %
///         at 95 degC when saturated at 101325 Pa.
/// Range:  250-400 K, below 200 kPa.
///
/// @param temperature      [K]
/// @param pressure         [Pa]
/// @param vapour_fraction  mole fraction x of water vapour, 0..1 [-]
template <class T>
T moist_density(const T& temperature, const T& pressure, const T& vapour_fraction) {
  constexpr double dry = 1.0 / constants::dry_air_gas;
  constexpr double steam = constants::water_molar_mass / constants::molar_gas;
  return pressure / temperature * (dry + vapour_fraction * (steam - dry));
}

/// Specific heat at constant pressure of dry air [J/(kg K)].
///
/// Source: quadratic through the equation of state of Lemmon et al., J. Phys. Chem. Ref. Data 29
///         (2000) 331, at 101325 Pa; largest relative error 1.3e-4.
/// Range:  250-500 K.
template <class T>
T specific_heat(const T& temperature) {
  const T x = temperature - 300.0;
  return 1006.3738 + x * (0.037210336 + x * 4.04573769e-4);
}

/// Conductivity of dry air [W/(m K)].
///
///     k = 2.64638e-3 T^(3/2) / (T + 245.4 * 10^(-12/T))
///
/// Source: US Standard Atmosphere 1976, equation 53; 1.3 % below Lemmon & Jacobsen (2004) at most.
/// Range:  250-500 K.
template <class T>
T conductivity(const T& temperature) {
  using std::exp;
  using std::sqrt;
  constexpr double twelve_decades = 12.0 * 2.302585092994046;  // 12 ln 10
  return 2.64638e-3 * temperature * sqrt(temperature) /
         (temperature + 245.4 * exp(-twelve_decades / temperature));
}

/// Dynamic viscosity of dry air [Pa s].
///
///     mu = 1.458e-6 T^(3/2) / (T + 110.4)
///
/// Source: Sutherland's equation, US Standard Atmosphere 1976, equation 51; 1.4 % below Lemmon &
///         Jacobsen (2004) at most.
/// Range:  250-500 K.
template <class T>
T viscosity(const T& temperature) {
  using std::sqrt;
  return 1.458e-6 * temperature * sqrt(temperature) / (temperature + 110.4);
}

/// Thermal diffusivity of dry air, k / (rho cp) [m2/s].
///
/// Source: definition, with the three properties above.
/// Range:  250-500 K, below 200 kPa.
template <class T>
T thermal_diffusivity(const T& temperature, const T& pressure) {
  return conductivity(temperature) / (density(temperature, pressure) * specific_heat(temperature));
}

/// Diffusivity of water vapour in air [m2/s].
///
///     D = 1.87e-10 T^2.072 / (p / 101325 Pa)
///
/// Source: Marrero & Mason, J. Phys. Chem. Ref. Data 1 (1972) 3, correlation for H2O-air (from
///         memory); stated uncertainty 5 %.
/// Range:  282-450 K.
template <class T>
T vapour_diffusivity(const T& temperature, const T& pressure) {
  using std::pow;
  return 1.87e-10 * pow(temperature, 2.072) * constants::atmosphere / pressure;
}

}  // namespace kettlecast::air
