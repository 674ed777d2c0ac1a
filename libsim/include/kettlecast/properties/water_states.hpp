#pragma once

#include <array>
#include <cmath>

/// Compressed liquid water. Temperatures in K, pressures in Pa.
///
/// Everything in namespace `water_states` is reference-grade: the released equations themselves,
/// tens of powers per call. The model runs on the compact fits of water.hpp and air.hpp; these
/// here are for checking them and for single questions, not for an inner loop.
namespace kettlecast::water_states {

/// Dimensionless Gibbs energy of region 1. Source: IAPWS R7-97(2012), Table 2 and equation 7.
namespace region1 {
struct Term {
  double i, j, n;
};
inline constexpr double gas_constant = 461.526;  // [J/(kg K)]
inline constexpr std::array<Term, 34> terms{
    {{0, -2, 0.14632971213167},       {0, -1, -0.84548187169114},
     {0, 0, -3.756360367204},         {0, 1, 3.3855169168385},
     {0, 2, -0.95791963387872},       {0, 3, 0.15772038513228},
     {0, 4, -0.016616417199501},      {0, 5, 0.00081214629983568},
     {1, -9, 0.00028319080123804},    {1, -7, -0.00060706301565874},
     {1, -1, -0.018990068218419},     {1, 0, -0.032529748770505},
     {1, 1, -0.021841717175414},      {1, 3, -5.283835796993e-05},
     {2, -3, -0.00047184321073267},   {2, 0, -0.00030001780793026},
     {2, 1, 4.7661393906987e-05},     {2, 3, -4.4141845330846e-06},
     {2, 17, -7.2694996297594e-16},   {3, -4, -3.1679644845054e-05},
     {3, 0, -2.8270797985312e-06},    {3, 6, -8.5205128120103e-10},
     {4, -5, -2.2425281908e-06},      {4, -2, -6.5171222895601e-07},
     {4, 10, -1.4341729937924e-13},   {5, -8, -4.0516996860117e-07},
     {8, -11, -1.2734301741641e-09},  {8, -6, -1.7424871230634e-10},
     {21, -29, -6.8762131295531e-19}, {23, -31, 1.4478307828521e-20},
     {29, -38, 2.6335781662795e-23},  {30, -39, -1.1947622640071e-23},
     {31, -40, 1.8228094581404e-24},  {32, -41, -9.3537087292458e-26}}};

/// Slopes of gamma = sum n (7.1 - pi)^I (tau - 1.222)^J, pi = p / 16.53 MPa, tau = 1386 K / T.
template <class T>
struct Slopes {
  T pi{0.0}, tau{0.0}, tau_tau{0.0};
};

/// The slopes at a temperature [K] and pressure [Pa], all from one pass over the terms [-].
template <class T>
Slopes<T> slopes(const T& temperature, const T& pressure) {
  using std::pow;
  const T a = 7.1 - pressure / 16.53e6;
  const T b = 1386.0 / temperature - 1.222;
  Slopes<T> sum;
  for (const Term& term : terms) {
    const T power = term.n * pow(a, term.i) * pow(b, term.j);
    sum.pi -= power * term.i / a;
    sum.tau += power * term.j / b;
    sum.tau_tau += power * term.j * (term.j - 1.0) / (b * b);
  }
  return sum;
}
}  // namespace region1

/// Specific volume of liquid water [m3/kg].
///
///     v = R T / p* dgamma/dpi,   p* = 16.53 MPa
///
/// Source: IAPWS R7-97(2012), region 1, Table 3.
/// Range:  273.15-623.15 K, from the saturation pressure to 100 MPa.
///
/// @param temperature  [K]
/// @param pressure     [Pa]
template <class T>
T compressed_volume(const T& temperature, const T& pressure) {
  return region1::gas_constant * temperature / 16.53e6 * region1::slopes(temperature, pressure).pi;
}

/// Density of liquid water, 1 / v [kg/m3].
///
/// Source: IAPWS R7-97(2012), region 1, Table 3.
/// Range:  273.15-623.15 K, from the saturation pressure to 100 MPa.
template <class T>
T compressed_density(const T& temperature, const T& pressure) {
  return 1.0 / compressed_volume(temperature, pressure);
}

/// Specific enthalpy of liquid water, zero near the triple point [J/kg].
///
///     h = R T* dgamma/dtau,   T* = 1386 K
///
/// Source: IAPWS R7-97(2012), region 1, Table 3.
/// Range:  273.15-623.15 K, from the saturation pressure to 100 MPa.
template <class T>
T compressed_enthalpy(const T& temperature, const T& pressure) {
  return region1::gas_constant * 1386.0 * region1::slopes(temperature, pressure).tau;
}

/// Specific heat at constant pressure of liquid water [J/(kg K)].
///
///     cp = -R tau^2 d2gamma/dtau2
///
/// Source: IAPWS R7-97(2012), region 1, Table 3.
/// Range:  273.15-623.15 K, from the saturation pressure to 100 MPa.
template <class T>
T compressed_specific_heat(const T& temperature, const T& pressure) {
  const T tau = 1386.0 / temperature;
  return -region1::gas_constant * tau * tau * region1::slopes(temperature, pressure).tau_tau;
}

}  // namespace kettlecast::water_states
