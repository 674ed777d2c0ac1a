#pragma once

#include <array>
#include <cmath>
#include <cstddef>

#include "kettlecast/numerics/polynomial.hpp"

/// Viscosity, conductivity and surface tension of water and steam by the released equations;
/// reference-grade, not for an inner loop (see water_states.hpp). Temperatures in K.
namespace kettlecast::water_states {

inline constexpr double critical_temperature = 647.096;  ///< [K], IAPWS R2-83(1992)
inline constexpr double critical_density = 322.0;        ///< [kg/m3], IAPWS R2-83(1992)

namespace transport {
template <std::size_t I, std::size_t J>
using Table = std::array<PolynomialCoefficients<J>, I>;

/// Table 2 of R12-08: power of 1/Tr - 1 down, power of rho_r - 1 across.
inline constexpr Table<6, 7> viscosity{
    {{{0.520094, 0.222531, -0.281378, 0.161913, -0.0325372, 0.0, 0.0}},
     {{0.0850895, 0.999115, -0.906851, 0.257399, 0.0, 0.0, 0.0}},
     {{-1.08374, 1.88797, -0.772479, 0.0, 0.0, 0.0, 0.0}},
     {{-0.289555, 1.26613, -0.489837, 0.0, 0.0698452, 0.0, -0.00435673}},
     {{0.0, 0.0, -0.25704, 0.0, 0.0, 0.00872102, 0.0}},
     {{0.0, 0.120573, 0.0, 0.0, 0.0, 0.0, -0.000593264}}}};
/// Table 2 of R15-11, in the same order.
inline constexpr Table<5, 6> conductivity{
    {{{1.60397357, -0.646013523, 0.111443906, 0.102997357, -0.0504123634, 0.00609859258}},
     {{2.33771842, -2.78843778, 1.53616167, -0.463045512, 0.0832827019, -0.00719201245}},
     {{2.19650529, -4.54580785, 3.55777244, -1.40944978, 0.275418278, -0.0205938816}},
     {{-1.21051378, 1.60812989, -0.621178141, 0.0716373224, 0.0, 0.0}},
     {{-2.720337, 4.57586331, -3.18369245, 1.1168348, -0.19268305, 0.012913842}}}};
/// Table 1 of R12-08 and of R15-11: dilute gas, powers of 1/Tr.
inline constexpr PolynomialCoefficients<4> dilute_viscosity{1.67752, 2.20462, 0.6366564, -0.241605};
inline constexpr PolynomialCoefficients<5> dilute_conductivity{
    2.443221e-3, 1.323095e-2, 6.770357e-3, -3.454586e-3, 4.096266e-4};

/// exp(rho_r sum_ij c_ij (1/Tr - 1)^i (rho_r - 1)^j), factor of the finite density [-].
template <class T, std::size_t I, std::size_t J>
T dense_factor(const Table<I, J>& table, const T& inverse_temperature, const T& density) {
  using std::exp;
  const T x = inverse_temperature - 1.0;
  const T y = density - 1.0;
  T sum(0.0);
  for (std::size_t i = I; i-- > 0;) sum = sum * x + polynomial(table[i], y);
  return exp(density * sum);
}
}  // namespace transport

/// Dynamic viscosity of water and steam, critical enhancement left out [Pa s].
///
///     mu = mu_0(Tr) mu_1(Tr, rho_r)
///
/// Source: IAPWS R12-08, equations 10 to 12 with mu_2 = 1, which the release recommends for
///         industrial use.
/// Range:  273.16-1173.15 K, up to 1300 kg/m3, away from the critical point.
///
/// @param density      [kg/m3]
/// @param temperature  [K]
template <class T>
T viscosity(const T& density, const T& temperature) {
  using std::sqrt;
  const T inverse = critical_temperature / temperature;
  const T dilute = 1e-4 / (sqrt(inverse) * polynomial(transport::dilute_viscosity, inverse));
  return dilute *
         transport::dense_factor(transport::viscosity, inverse, T(density / critical_density));
}

/// Conductivity of water and steam, critical enhancement left out [W/(m K)].
///
///     k = k_0(Tr) k_1(Tr, rho_r)
///
/// Source: IAPWS R15-11, equations 15 to 17 with k_2 = 0. For saturated liquid the enhancement of
///         the release is zero up to 400 K and 4e-4 of the whole at 433 K, for saturated steam at
///         100 degC 4e-5.
/// Range:  273.16-1173.15 K, up to 1300 kg/m3, away from the critical point.
///
/// @param density      [kg/m3]
/// @param temperature  [K]
template <class T>
T conductivity(const T& density, const T& temperature) {
  using std::sqrt;
  const T inverse = critical_temperature / temperature;
  const T dilute = 1e-3 / (sqrt(inverse) * polynomial(transport::dilute_conductivity, inverse));
  return dilute *
         transport::dense_factor(transport::conductivity, inverse, T(density / critical_density));
}

/// Surface tension of water against steam [N/m].
///
///     sigma = 0.2358 s^1.256 (1 - 0.625 s),   s = 1 - T / T_c
///
/// Source: IAPWS R1-76(2014), equation 1.
/// Range:  248.15-647.096 K.
template <class T>
T surface_tension(const T& temperature) {
  using std::pow;
  const T s = 1.0 - temperature / critical_temperature;
  return 0.2358 * pow(s, 1.256) * (1.0 - 0.625 * s);
}

}  // namespace kettlecast::water_states
