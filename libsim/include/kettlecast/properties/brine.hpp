#pragma once

#include <cmath>

#include "kettlecast/base/constants.hpp"
#include "kettlecast/properties/water.hpp"

/// Density, viscosity and heat of brine, NaCl as mass fraction w [kg/kg].
///
/// Source of all three: Laliberte, J. Chem. Eng. Data 54 (2009) 1725, constants of NaCl. The water
///         is that of water.hpp, on its saturation line.
namespace kettlecast::salt {

/// Density of brine [kg/m3].
///
///     1/rho = (1 - w)/rho_w + w/rho_s
///     rho_s = (c0 w + c1) exp(1e-6 (t + c4)^2) / (w + c2 + c3 t),   t in degC
///
/// Source: Laliberte (2009), 869 points.
/// Range:  0-26.6 % salt, 0-140 degC.
///
/// @param salt         w [kg/kg]
/// @param temperature  [K]
template <class T>
T density(const T& salt, const T& temperature) {
  using std::exp;
  const T t = temperature - constants::ice_point;
  const T shifted = t + 3317.34854426537;
  const T apparent = (-0.00324112223655149 * salt + 0.0636354335906616) *
                     exp(1e-6 * shifted * shifted) /
                     (salt + 1.01371399467365 + 0.0145951015210159 * t);
  return 1.0 / ((1.0 - salt) / water::density(temperature) + salt / apparent);
}

/// Dynamic viscosity of brine [Pa s].
///
///     ln mu = (1 - w) ln mu_w + w ln mu_s
///     mu_s = exp((v1 w^v2 + v3) / (v4 t + 1)) / (v5 w^v6 + 1) mPa s,   t in degC
///
/// Source: Laliberte (2009), 552 points.
/// Range:  0-26.4 % salt, 5-154 degC.
template <class T>
T viscosity(const T& salt, const T& temperature) {
  using std::exp;
  using std::log;
  using std::pow;
  const T t = temperature - constants::ice_point;
  const T w = salt + 1e-12;  // finite slope without salt
  const T thick = (16.221788633396 * pow(w, 1.32293086770011) + 1.48485985010431) /
                  (0.00746912559657377 * t + 1.0);
  const T thin = log(30.7802007540575 * pow(w, 2.05826852322558) + 1.0);
  constexpr double ln_milli = -6.907755278982137;
  return exp((1.0 - salt) * log(water::viscosity(temperature)) + salt * (thick - thin + ln_milli));
}

/// Specific heat of brine [J/(kg K)].
///
///     cp = (1 - w) cp_w + w cp_s
///     cp_s = a1 exp(a2 t + a3 exp(0.01 t) + a4 w) + a5 w^a6 kJ/(kg K),   t in degC
///
/// Source: Laliberte (2009), 356 points.
/// Range:  0-26.1 % salt, 1.5-120 degC.
template <class T>
T specific_heat(const T& salt, const T& temperature) {
  using std::exp;
  using std::pow;
  const T t = temperature - constants::ice_point;
  const T alpha =
      -0.0782134167486952 * t + 3.84798479408635 * exp(0.01 * t) - 11.2762109247072 * salt;
  const T apparent =
      -0.0693559668993322 * exp(alpha) + 8.73187698542672 * pow(T(salt + 1e-12), 1.81245930472755);
  return (1.0 - salt) * water::specific_heat(temperature) + salt * 1e3 * apparent;
}

}  // namespace kettlecast::salt
