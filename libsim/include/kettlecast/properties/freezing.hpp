#pragma once

#include <algorithm>
#include <cmath>

#include "kettlecast/base/constants.hpp"
#include "kettlecast/properties/composition.hpp"
#include "kettlecast/properties/food.hpp"

namespace kettlecast {

/// Latent heat of fusion of ice [J/kg]. Source: IAPWS R10-06 (2009) and IF97 at 273.15 K.
inline constexpr double fusion_heat = 333.43e3;

/// Water that can freeze, x_water - 0.4 x_protein, per mass of food and not below zero [kg/kg].
///
/// Source: bound water by Pham, J. Food Sci. 52 (1987) 210 (from memory), in ASHRAE Handbook
/// Refrigeration,
///         Thermal Properties of Foods. Fractions are scaled to add up to 1.
inline double freezable_water(const Composition& composition) {
  const double sum = composition.water + dry_fraction(composition);
  return std::max(0.0, composition.water - 0.4 * composition.protein) / sum;
}

/// Enthalpy of a food that freezes over a range of temperatures.
///
///     t >= t_f:  h = c_u t
///     t <  t_f:  h = c_u t_f + c_f (t - t_f) - L x_ice,   x_ice = x_f (1 - t_f / t)
///
/// t in degC, t_f initial freezing point, x_f = x_water - 0.4 x_protein freezable water, c_u and
/// c_f specific heat without any and with all of it frozen, L heat of fusion. Its slope below t_f
/// is the apparent specific heat c_f - L x_f t_f / t^2.
///
/// Source: Miles, van Beek & Veerkamp (1983) for the ice, Schwartzberg, J. Food Sci. 41 (1976) 152,
///         for the enthalpy; both in ASHRAE Handbook Refrigeration, Thermal Properties of Foods.
/// Range:  -40 to 100 degC. c_u is taken at 50 degC, the mean over 0-100 degC; c_f at -20 degC.
/// Needs a food that passed check(const Food&).
struct FreezingFood {
  double unfrozen_specific_heat;  ///< c_u [J/(kg K)]
  double frozen_specific_heat;    ///< c_f [J/(kg K)]
  double freezing_point;          ///< at most 273.14 K, so that plain water stays regular [K]
  double freezable_water;         ///< x_f [kg/kg]

  /// @param food  composition and initial freezing point; default plain water
  explicit FreezingFood(const Food& food = {}) {
    const Composition& all = food.composition;
    freezing_point = std::min(food.freezing_point, constants::ice_point - 0.01);
    freezable_water = kettlecast::freezable_water(all);
    unfrozen_specific_heat = kettlecast::specific_heat(all, 323.15);
    const double cold = 253.15;  // [K]
    frozen_specific_heat = kettlecast::specific_heat(all, cold) +
                           freezable_water * (component::ice.specific_heat(cold) -
                                              component::water.specific_heat(cold));
  }

  /// Specific enthalpy, zero at 273.15 K for the food extrapolated unfrozen [J/kg].
  template <class T>
  T specific_enthalpy(const T& temperature) const {
    if (temperature >= freezing_point)
      return unfrozen_specific_heat * (temperature - constants::ice_point);
    return onset_enthalpy() + frozen_specific_heat * (temperature - freezing_point) -
           fusion_heat * ice_fraction(temperature);
  }

  /// Apparent specific heat, slope of the specific enthalpy [J/(kg K)]:
  /// c_u above t_f, c_f - L x_f t_f / t^2 below.
  template <class T>
  T specific_heat(const T& temperature) const {
    if (temperature >= freezing_point) return T(unfrozen_specific_heat);
    const T t = temperature - constants::ice_point;
    const double onset = freezing_point - constants::ice_point;
    return frozen_specific_heat - fusion_heat * freezable_water * onset / (t * t);
  }

  /// Temperature at a specific enthalpy, inverse of specific_enthalpy [K].
  ///
  ///     c_f t^2 - b t + L x_f t_f = 0,   b = c_f t_f + L x_f + h - h(t_f),   the root below zero
  ///
  /// @param enthalpy  [J/kg]
  template <class T>
  T temperature(const T& enthalpy) const {
    using std::sqrt;
    if (enthalpy >= onset_enthalpy())
      return constants::ice_point + enthalpy / unfrozen_specific_heat;
    const double onset = freezing_point - constants::ice_point;  // t_f [degC]
    const double latent = fusion_heat * freezable_water;
    const T b = frozen_specific_heat * onset + latent + (enthalpy - onset_enthalpy());
    const T root = sqrt(b * b - 4.0 * frozen_specific_heat * latent * onset);
    // Two forms of the same root; each where it does not cancel.
    if (b > 0.0) return constants::ice_point + 2.0 * latent * onset / (b + root);
    return constants::ice_point + (b - root) / (2.0 * frozen_specific_heat);
  }

  /// Mass of ice per mass of food [kg/kg].
  template <class T>
  T ice_fraction(const T& temperature) const {
    if (temperature >= freezing_point) return T(0.0);
    const double onset = freezing_point - constants::ice_point;
    return freezable_water * (1.0 - onset / (temperature - constants::ice_point));
  }

 private:
  double onset_enthalpy() const {
    return unfrozen_specific_heat * (freezing_point - constants::ice_point);
  }
};

}  // namespace kettlecast
