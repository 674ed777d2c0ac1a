#pragma once

#include "kettlecast/properties/salt.hpp"
#include "kettlecast/properties/sugar.hpp"

/// Sugar and salt in one liquid, by mass; cheap and smooth, for a right-hand side.
namespace kettlecast::solutes {

/// Constants of brine at 373.15 K. Source: salt.hpp at that temperature.
inline constexpr salt::PitzerConstants<double> at_boiling{0.460524785, 0.100200148, 0.332647515,
                                                          -0.00330789661};
/// Salt in brine saturated at 373.15 K [kg/kg]. Source: salt.hpp.
inline constexpr double saturated_salt = 0.27998;

/// Activity of the water in a liquid with sugar and salt [-].
///
///     a = a_sugar(sugar in all the water) a_salt(salt in all the water)
///
/// Source: Ross, Food Technol. 29(3) (1975) 26. Salt with the constants of 100 degC: the boiling
///         point is off by 0.1 K at most from 50 kPa to 1 atm, by 0.4 K at 200 kPa near saturation.
///         Salt that is not dissolved is left out.
/// Range:  any masses >= 0. 1 without solutes; goes to 0 with the water where there is sugar, to
///         that of saturated brine, 0.74, where there is salt alone.
///
/// @param water  [kg]
/// @param sugar  sucrose [kg]
/// @param salt   NaCl [kg]
template <class T>
T water_activity(const T& water, const T& sugar, const T& salt) {
  constexpr double trace = 1e-12;  // [kg]
  const T brine = salt / (water + salt + trace);
  return sugar::water_activity(water, sugar) *
         salt::water_activity(brine, saturated_salt, at_boiling);
}

/// Temperature at which a liquid with sugar and salt boils [K].
///
/// Source: activity as above, equilibrium of elevation.hpp.
/// Range:  any masses >= 0, p < 440 kPa.
///
/// @param water     [kg]
/// @param sugar     sucrose [kg]
/// @param salt      NaCl [kg]
/// @param pressure  [Pa]
template <class T>
T boiling_temperature(const T& water, const T& sugar, const T& salt, const T& pressure) {
  return kettlecast::boiling_temperature(pressure, water_activity(water, sugar, salt));
}

}  // namespace kettlecast::solutes
