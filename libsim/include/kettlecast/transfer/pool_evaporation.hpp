#pragma once

/// Evaporation from open water by the pool equation, a check on the analogy of evaporation.hpp that
/// needs no properties of moist air.
namespace kettlecast {

/// Constants of the pool equation in SI units.
///
/// Source: still 0.089 W/(m2 Pa) and velocity 0.0782 W s/(m3 Pa), ASHRAE Handbook, HVAC
///         Applications (from memory); Carrier's equation of 1918 in other units, W = (95 + 0.425
///         v) dp / Y with lb/(h ft2), ft/min, inHg and Btu/lb, gives 0.0885 and 0.0779.
/// Range:  that of pool_evaporation.
struct PoolConstants {
  double still = 0.089;      ///< a [W/(m2 Pa)]
  double velocity = 0.0782;  ///< b [W s/(m3 Pa)]
};

/// Share of the pool equation that undisturbed pools were measured to evaporate [-].
///
/// Source: measurements in ASHRAE Trans. 104 (1998) part 1A: 74 %.
/// Range:  still water, nobody in it; a stirred or simmering surface counts as 1.
inline constexpr double undisturbed_pool = 0.74;

/// Water that evaporates from an open pool [kg/(m2 s)].
///
///     W = F (a + b V) (p_w - p_a) / Y
///
/// Source: Carrier (1918); ASHRAE Handbook, HVAC Applications. F: undisturbed_pool.
/// Range:  pools of 20 to 30 degC, V < 0.7 m/s. Near the boil it is a rule only: the flux is not
///         limited as the vapour carries the air away. Negative: the surface gathers dew.
///
/// @param pressure_difference  vapour pressure at the water less that in the air p_w - p_a [Pa]
/// @param air_speed            over the water, of a hood or fan V, >= 0 [m/s]
/// @param latent_heat          at the temperature of the water Y [J/kg]
/// @param activity             F, 1 unless undisturbed [-]
template <class T>
T pool_evaporation(const T& pressure_difference, double air_speed, const T& latent_heat,
                   double activity, const PoolConstants& constants = PoolConstants{}) {
  return activity * (constants.still + constants.velocity * air_speed) * pressure_difference /
         latent_heat;
}

/// Evaporation under a hood or fan over that in still air [-].
///
///     W(V) / W(0) = 1 + b V / a
///
/// Source: the pool equation; a and b of PoolConstants.
/// Range:  V < 0.7 m/s, water well below the boil; a boil is limited by its heat, not by the air.
inline double draught_factor(double air_speed, const PoolConstants& constants = PoolConstants{}) {
  return 1.0 + constants.velocity * air_speed / constants.still;
}

/// Heat that evaporation takes from a surface, W Y [W/m2].
///
/// Source: definition.
/// Range:  any.
template <class T>
T latent_heat_flux(const T& evaporation, const T& latent_heat) {
  return evaporation * latent_heat;
}

}  // namespace kettlecast
