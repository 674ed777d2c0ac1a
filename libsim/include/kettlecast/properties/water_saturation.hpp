#pragma once

#include <cmath>

#include "kettlecast/numerics/power_sum.hpp"
#include "kettlecast/properties/water_transport.hpp"

/// Saturated water and steam up to the critical point by the auxiliary equations; reference-grade,
/// not for an inner loop (see water_states.hpp). Temperatures in K.
namespace kettlecast::water_states {

namespace auxiliary {
inline constexpr double critical_pressure = 22.064e6;  // [Pa]
/// Equations 1 to 4 of SR1-86; powers of 1 - T / T_c, in the last of T / T_c.
inline constexpr PowerTerms<6> pressure{{{-7.85951783, 1.0},
                                         {1.84408259, 1.5},
                                         {-11.7866497, 3.0},
                                         {22.6807411, 3.5},
                                         {-15.9618719, 4.0},
                                         {1.80122502, 7.5}}};
inline constexpr PowerTerms<6> liquid{{{1.99274064, 1.0 / 3.0},
                                       {1.09965342, 2.0 / 3.0},
                                       {-0.510839303, 5.0 / 3.0},
                                       {-1.75493479, 16.0 / 3.0},
                                       {-45.5170352, 43.0 / 3.0},
                                       {-6.74694450e5, 110.0 / 3.0}}};
inline constexpr PowerTerms<6> vapour{{{-2.03150240, 2.0 / 6.0},
                                       {-2.68302940, 4.0 / 6.0},
                                       {-5.38626492, 8.0 / 6.0},
                                       {-17.2991605, 18.0 / 6.0},
                                       {-44.7586581, 37.0 / 6.0},
                                       {-63.9201063, 71.0 / 6.0}}};
inline constexpr PowerTerms<6> alpha{{{-1135.905627715, 0.0},
                                      {-5.65134998e-8, -19.0},
                                      {2690.66631, 1.0},
                                      {127.287297, 4.5},
                                      {-135.003439, 5.0},
                                      {0.981825814, 54.5}}};

/// Distance from the critical temperature, 1 - T / T_c [-].
template <class T>
T distance(const T& temperature) {
  return 1.0 - temperature / critical_temperature;
}
}  // namespace auxiliary

/// Saturation pressure [Pa].
///
///     ln(p / p_c) = T_c / T sum a_i s^e_i,   s = 1 - T / T_c
///
/// Source: IAPWS SR1-86(1992), equation 1.
/// Range:  273.16-647.096 K.
template <class T>
T saturation_pressure(const T& temperature) {
  using std::exp;
  return auxiliary::critical_pressure *
         exp(critical_temperature / temperature *
             power_sum(auxiliary::pressure, auxiliary::distance(temperature)));
}

/// Slope of the saturation pressure, dp/dT [Pa/K].
///
///     dp/dT = -p / T (ln(p / p_c) + sum a_i e_i s^(e_i - 1))
///
/// Source: IAPWS SR1-86(1992), equation 1, differentiated.
/// Range:  273.16-647.096 K.
template <class T>
T saturation_pressure_slope(const T& temperature) {
  using std::log;
  using std::pow;
  const T s = auxiliary::distance(temperature);
  const T value = saturation_pressure(temperature);
  T slope = log(value / auxiliary::critical_pressure);
  for (const PowerTerm& term : auxiliary::pressure)
    slope += term.factor * term.power * pow(s, term.power - 1.0);
  return -value / temperature * slope;
}

/// Density of saturated liquid water [kg/m3].
///
///     rho / rho_c = 1 + sum b_i s^e_i
///
/// Source: IAPWS SR1-86(1992), equation 2.
/// Range:  273.16-647.096 K.
template <class T>
T saturated_liquid_density(const T& temperature) {
  return critical_density * (1.0 + power_sum(auxiliary::liquid, auxiliary::distance(temperature)));
}

/// Density of saturated steam [kg/m3].
///
///     ln(rho / rho_c) = sum c_i s^e_i
///
/// Source: IAPWS SR1-86(1992), equation 3.
/// Range:  273.16-647.096 K.
template <class T>
T saturated_vapour_density(const T& temperature) {
  using std::exp;
  return critical_density * exp(power_sum(auxiliary::vapour, auxiliary::distance(temperature)));
}

/// Specific enthalpy of saturated liquid water, zero at the triple point [J/kg].
///
///     h = alpha(T / T_c) + T / rho dp/dT
///
/// Source: IAPWS SR1-86(1992), equations 4 and 6.
/// Range:  273.16-647.096 K.
template <class T>
T saturated_liquid_enthalpy(const T& temperature) {
  return 1e3 * power_sum(auxiliary::alpha, T(temperature / critical_temperature)) +
         temperature * saturation_pressure_slope(temperature) /
             saturated_liquid_density(temperature);
}

/// Specific enthalpy of saturated steam, on the scale of the liquid [J/kg].
///
/// Source: IAPWS SR1-86(1992), equations 4 and 7.
/// Range:  273.16-647.096 K.
template <class T>
T saturated_vapour_enthalpy(const T& temperature) {
  return saturated_liquid_enthalpy(temperature) + temperature *
                                                      saturation_pressure_slope(temperature) *
                                                      (1.0 / saturated_vapour_density(temperature) -
                                                       1.0 / saturated_liquid_density(temperature));
}

}  // namespace kettlecast::water_states
