#pragma once

#include <cmath>

#include "kettlecast/base/constants.hpp"

namespace kettlecast {

/// Temperature of the standard atmosphere at a height above sea level [K].
///
///     T = T0 - L H,   H = r z / (r + z),   T0 = 288.15 K, L = 6.5 K/km, r = 6356766 m
///
/// Source: US Standard Atmosphere 1976 (NOAA-S/T 76-1562), equations 18 and 23.
/// Range:  -2000 m to 11000 m.
///
/// @param altitude  geometric altitude z [m]
template <class T>
T temperature_at_altitude(const T& altitude) {
  constexpr double earth_radius = 6356766.0;  // [m]
  constexpr double lapse = 6.5e-3;            // [K/m]
  return 288.15 - lapse * earth_radius * altitude / (earth_radius + altitude);
}

/// Pressure of the standard atmosphere at a height above sea level [Pa].
///
///     p = p0 (T / T0)^(g / (R L)),   p0 = 101325 Pa
///
/// Source: US Standard Atmosphere 1976 (NOAA-S/T 76-1562), equation 33a, M = 28.9644 g/mol.
/// Range:  -2000 m to 11000 m.
///
/// @param altitude  geometric altitude z [m]
template <class T>
T pressure_at_altitude(const T& altitude) {
  using std::pow;
  constexpr double exponent = 5.255877;  // g M / (R L) with the constants of the source
  return constants::atmosphere * pow(temperature_at_altitude(altitude) / 288.15, exponent);
}

/// Density of the standard atmosphere at a height above sea level, p / (R T) [kg/m3].
///
/// Source: US Standard Atmosphere 1976 (NOAA-S/T 76-1562), equation 42.
/// Range:  -2000 m to 11000 m.
///
/// @param altitude  geometric altitude z [m]
template <class T>
T density_at_altitude(const T& altitude) {
  return pressure_at_altitude(altitude) /
         (constants::dry_air_gas * temperature_at_altitude(altitude));
}

}  // namespace kettlecast
