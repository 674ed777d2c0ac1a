#pragma once

#include <cmath>
#include <cstddef>

#include "kettlecast/numerics/power_sum.hpp"

/// Liquid water at 0.1 MPa by the released equations, also supercooled; reference-grade, not for an
/// inner loop (see water_states.hpp). Temperatures in K.
namespace kettlecast::water_states {

namespace ambient {
inline constexpr double gas_constant = 461.51805;  // [J/(kg K)]

/// Table 1 of SR6-08: powers of 10 K / (593 K - T) and of 10 K / (T - 232 K).
inline constexpr PowerTerms<3> gibbs_hot{
    {{-1.661470539e5, 4}, {2.708781640e6, 5}, {-1.557191544e8, 7}}};
inline constexpr PowerTerms<4> gibbs_cold{
    {{-8.237426256e-1, 2}, {1.908956353, 3}, {-2.017597384, 4}, {8.546361348e-1, 5}}};
inline constexpr PowerTerms<6> volume_hot{{{1.93763157e-2, 0},
                                           {6.74458446e3, 4},
                                           {-2.22521604e5, 5},
                                           {1.00231247e8, 7},
                                           {-1.63552118e9, 8},
                                           {8.32299658e9, 9}}};
inline constexpr PowerTerms<6> volume_cold{{{5.78545292e-3, 1},
                                            {-1.53195665e-2, 2},
                                            {3.11337859e-2, 3},
                                            {-4.23546241e-2, 4},
                                            {3.38713507e-2, 5},
                                            {-1.19946761e-2, 6}}};
/// Equations 7 and 8 of SR6-08: powers of T / 300 K.
inline constexpr PowerTerms<4> viscosity{
    {{280.68e-6, -1.9}, {511.45e-6, -7.7}, {61.131e-6, -19.6}, {0.45903e-6, -40.0}}};
inline constexpr PowerTerms<4> conductivity{
    {{1.6630, -1.15}, {-1.7781, -3.4}, {1.1567, -6.0}, {-0.432115, -7.6}}};

/// Sum of the second derivatives of the terms by 1 / base.
template <class T, std::size_t N>
T curvature(const PowerTerms<N>& terms, const T& base) {
  using std::pow;
  T total(0.0);
  for (const PowerTerm& term : terms)
    total += term.factor * term.power * (term.power + 1.0) * pow(base, term.power + 2.0);
  return total;
}

/// Base of the terms that grow towards 593 K, 10 K / (593 K - T) [-].
template <class T>
T hot(const T& temperature) {
  return 10.0 / (593.0 - temperature);
}
/// Base of the terms that grow towards 232 K, 10 K / (T - 232 K) [-].
template <class T>
T cold(const T& temperature) {
  return 10.0 / (temperature - 232.0);
}
}  // namespace ambient

/// Density of liquid water at 0.1 MPa [kg/m3].
///
///     1/rho = R T* / p0 (a_5 + sum a_i alpha^n_i + sum b_i beta^m_i),   T* = 10 K
///     alpha = T* / (593 K - T),   beta = T* / (T - 232 K)
///
/// Source: IAPWS SR6-08(2011), equation 2.
/// Range:  253.15-383.15 K, supercooled and superheated parts metastable.
template <class T>
T ambient_density(const T& temperature) {
  using namespace ambient;
  const T terms =
      power_sum(volume_hot, hot(temperature)) + power_sum(volume_cold, cold(temperature));
  return 0.1e6 / (gas_constant * 10.0 * terms);
}

/// Specific heat at constant pressure of liquid water at 0.1 MPa [J/(kg K)].
///
///     cp = -R (c_3 + tau (sum n (n+1) a alpha^(n+2) + sum m (m+1) b beta^(m+2))),   tau = T / T*
///
/// Source: IAPWS SR6-08(2011), equation 5.
/// Range:  253.15-383.15 K.
template <class T>
T ambient_specific_heat(const T& temperature) {
  using namespace ambient;
  constexpr double c3 = -8.983025854;
  const T bend = curvature(gibbs_hot, hot(temperature)) + curvature(gibbs_cold, cold(temperature));
  return -gas_constant * (c3 + 0.1 * temperature * bend);
}

/// Dynamic viscosity of liquid water at 0.1 MPa [Pa s].
///
///     mu = 1e-6 sum a_i (T / 300 K)^b_i
///
/// Source: IAPWS SR6-08(2011), equation 7.
/// Range:  253.15-383.15 K.
template <class T>
T ambient_viscosity(const T& temperature) {
  return power_sum(ambient::viscosity, T(temperature / 300.0));
}

/// Conductivity of liquid water at 0.1 MPa [W/(m K)].
///
///     k = sum c_i (T / 300 K)^d_i
///
/// Source: IAPWS SR6-08(2011), equation 8.
/// Range:  253.15-383.15 K.
template <class T>
T ambient_conductivity(const T& temperature) {
  return power_sum(ambient::conductivity, T(temperature / 300.0));
}

}  // namespace kettlecast::water_states
