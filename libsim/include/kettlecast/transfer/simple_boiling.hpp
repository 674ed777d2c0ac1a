#pragma once

#include <cmath>

#include "kettlecast/base/constants.hpp"
#include "kettlecast/numerics/power_laws.hpp"

/// Boiling water in a kettle by equations that need the excess temperature and pressure alone.
///
/// Source: Geankoplis, Transport Processes and Unit Operations, equations 4.8-5 to 4.8-8 (from
///         memory; after Jakob and McAdams, and Perry). Two laws each meet at an excess at which
///         they agree; there they pass into each other within 5 % of it, which is our own
///         smoothing.
/// Range:  clean water at 0.1 to 10 bar, flux below 240 kW/m2 on a floor (14.4 K at 1 atm) and
///         63 kW/m2 on a wall (9.4 K); above that the steep law is only extended. Sauces and milk
///         boil worse.
namespace kettlecast {

namespace simple_boiling {
/// 1043 dT^(1/3) = 5.56 dT^3 at 14.3 kW/m2; the source changes at 16 kW/m2.
inline constexpr PowerLaws<2> floor{{{{1043.0, 1.0 / 3.0}, {5.56, 3.0}}}, {{7.1196}}, 1.05};
/// 537 dT^(1/7) = 7.95 dT^3 at 2.9 kW/m2; the source changes at 3 kW/m2.
inline constexpr PowerLaws<2> wall{{{{537.0, 1.0 / 7.0}, {7.95, 3.0}}}, {{4.3688}}, 1.05};
}  // namespace simple_boiling

/// Coefficient of water boiling on a surface [W/(m2 K)], zero without excess.
///
///     h = C dT^a (p / 101.325 kPa)^0.4
///
/// Source: laws of simple_boiling; pressure: Geankoplis, equation 4.8-9 (from memory).
/// Range:  that of the laws.
///
/// @param excess    surface less saturation temperature dT [K]
/// @param pressure  absolute p [Pa]
/// @param laws      simple_boiling::floor or simple_boiling::wall
template <class T>
T simple_boiling_coefficient(const T& excess, double pressure, const PowerLaws<2>& laws) {
  if (!(excess > 0.0)) return T(0.0);
  return joined_power_laws(excess, laws) * std::pow(pressure / constants::atmosphere, 0.4);
}

/// Heat flux of water boiling on a surface, h dT [W/m2]; its slope is 0 at dT = 0.
///
/// Source: simple_boiling_coefficient.
/// Range:  as there.
template <class T>
T simple_boiling_heat_flux(const T& excess, double pressure, const PowerLaws<2>& laws) {
  return simple_boiling_coefficient(excess, pressure, laws) * excess;
}

}  // namespace kettlecast
