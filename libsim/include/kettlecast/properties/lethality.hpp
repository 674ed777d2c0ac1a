#pragma once

#include <cmath>

#include "kettlecast/base/constants.hpp"

/// Thermal death of micro-organisms by D and z (Bigelow), at one temperature and over a ramp. What
/// adds these up along a whole series is properties/process_time.hpp. Numbers for planning; whether
/// a process is safe is for the local code and licensed practice to say.
namespace kettlecast::lethality {

/// Lethal rate: minutes at the reference temperature that a minute at a temperature is worth [-].
///
///     L = 10^((T - Tref) / z)
///
/// Source: Bigelow et al., Bull. 16L, Natl. Canners Assoc. (1920), the general method.
/// Range:  the temperatures over which z was measured, usually some 20 K; z > 0.
///
/// @param temperature  T [K]
/// @param reference    Tref [K]
/// @param z            rise of temperature that makes death ten times as fast [K]
template <class T>
T lethal_rate(const T& temperature, const T& reference, const T& z) {
  using std::exp;
  return exp(constants::ln10 * (temperature - reference) / z);
}

/// Decimal reduction time: time for one more tenth to survive, at a temperature [s].
///
///     D(T) = Dref 10^((Tref - T) / z)
///
/// Source: Stumbo, Thermobacteriology in Food Processing (1973), chapter 7.
/// Range:  as lethal_rate.
///
/// @param temperature        T [K]
/// @param decimal_reduction  Dref, at the reference [s]
/// @param reference          Tref [K]
/// @param z                  [K]
template <class T>
T decimal_reduction_time(const T& temperature, const T& decimal_reduction, const T& reference,
                         const T& z) {
  return decimal_reduction * lethal_rate(reference, temperature, z);
}

/// z from the decimal reduction times at two temperatures [K].
///
///     z = (T2 - T1) / log10(D1 / D2)
///
/// Source: definition of z, Stumbo (1973), chapter 7.
/// Range:  D > 0, D1 and D2 different.
///
/// @param temperature_1  T1 [K]
/// @param decimal_reduction_1  D1 [s]
/// @param temperature_2  T2 [K]
/// @param decimal_reduction_2  D2 [s]
template <class T>
T z_value(const T& temperature_1, const T& decimal_reduction_1, const T& temperature_2,
          const T& decimal_reduction_2) {
  using std::log10;
  return (temperature_2 - temperature_1) / log10(decimal_reduction_1 / decimal_reduction_2);
}

/// Decimal (log10) reductions in a time [-].
///
///     n = t / D
///
/// Source: definition of D. Range: t >= 0, D > 0, log-linear survivors.
///
/// @param time               t, at one temperature or equivalent to it [s]
/// @param decimal_reduction  D at the same temperature [s]
template <class T>
T log_reductions(const T& time, const T& decimal_reduction) {
  return time / decimal_reduction;
}

/// Time that a number of decimal reductions takes [s].
///
///     t = n D
///
/// Source: definition of D. Range: n >= 0, log-linear survivors.
///
/// @param reductions         n [-]
/// @param decimal_reduction  D at the temperature of the hold [s]
template <class T>
T hold_time(const T& reductions, const T& decimal_reduction) {
  return reductions * decimal_reduction;
}

/// Temperature at which a minute is one pasteurisation unit, 60 degC [K].
inline constexpr double pasteurisation_reference = 60.0 + constants::ice_point;
/// Factor of the pasteurisation rate per kelvin [-]; see pasteurisation_rate.
inline constexpr double pasteurisation_factor = 1.393;

/// z that the factor per kelvin of the pasteurisation unit stands for [K]; 6.947.
///
///     z = 1 / log10(1.393)
///
/// Source: from the rate form, see pasteurisation_rate.
/// Range:  as there.
inline double pasteurisation_z() { return constants::ln10 / std::log(pasteurisation_factor); }

/// Pasteurisation units per minute [1/min].
///
///     1.393^(T / degC - 60)
///
/// Source: Del Vecchio, Dayharsh & Baselt, Proc. Am. Soc. Brew. Chem. (1951) 45 (from memory).
/// Range:  50 to 75 degC; drinks with alcohol and hops, not foods in general.
///
/// @param temperature  T [K]
template <class T>
T pasteurisation_rate(const T& temperature) {
  return lethal_rate(temperature, T(pasteurisation_reference), T(pasteurisation_z()));
}

/// (e^x - 1) / x [-], its series near 0, where the quotient would lose digits.
template <class T>
T mean_of_exponential(const T& x) {
  using std::exp;
  if (x > -0.01 && x < 0.01) {
    return 1.0 + x / 2.0 * (1.0 + x / 3.0 * (1.0 + x / 4.0 * (1.0 + x / 5.0 * (1.0 + x / 6.0))));
  }
  return (exp(x) - 1.0) / x;
}

/// Mean lethal rate of a linear ramp [-], exact.
///
///     Lm = L(T1) (e^x - 1) / x,   x = ln(10) (T2 - T1) / z
///
/// Source: integral of 10^((T - Tref)/z) over T linear in time; at T1 = T2 the rate itself.
/// Range:  as lethal_rate.
///
/// @param from       T1 [K]
/// @param to         T2 [K]
/// @param reference  Tref [K]
/// @param z          [K]
template <class T>
T mean_lethal_rate(const T& from, const T& to, const T& reference, const T& z) {
  return lethal_rate(from, reference, z) *
         mean_of_exponential(T(constants::ln10 * (to - from) / z));
}

}  // namespace kettlecast::lethality
