#pragma once

#include <cmath>

#include "kettlecast/base/constants.hpp"

namespace kettlecast {

/// Pressure of the standard atmosphere at a height above sea level [Pa].
///
///     p = p0 (1 - L H / T0)^(g / (R L)),   H = r z / (r + z)
///     p0 = 101325 Pa, T0 = 288.15 K, L = 6.5 K/km, r = 6356766 m
///
/// Source: US Standard Atmosphere 1976 (NOAA-S/T 76-1562), equations 18 and 33a, M = 28.9644 g/mol.
/// Range:  -2000 m to 11000 m.
///
/// @param altitude  geometric altitude z [m]
template <class T>
T pressure_at_altitude(const T& altitude) {
  using std::pow;
  constexpr double earth_radius = 6356766.0;   // [m]
  constexpr double base_temperature = 288.15;  // [K]
  constexpr double lapse = 6.5e-3;             // [K/m]
  constexpr double exponent = 5.255877;        // g M / (R L) with the constants of the source
  const T height = earth_radius * altitude / (earth_radius + altitude);
  return constants::atmosphere * pow(1.0 - lapse * height / base_temperature, exponent);
}

}  // namespace kettlecast
