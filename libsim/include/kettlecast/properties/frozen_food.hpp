#pragma once

#include "kettlecast/properties/composition.hpp"

/// Density and conductivity of food of which a part is ice. Temperatures in K.
///
/// Ice takes the place of as much water; below 0 degC both follow the components of Choi & Okos.
namespace kettlecast {

/// Density of partly frozen food without pores [kg/m3].
///
///     1/rho = 1/rho_u + x_ice (1/rho_ice - 1/rho_water),   rho_u density without ice
///
/// Source: Choi & Okos (1986), volumes of the components added.
/// Range:  -40 to 0 degC.
///
/// @param composition   of the food before freezing
/// @param temperature   [K]
/// @param ice_fraction  mass of ice per mass of food x_ice, at most its water [kg/kg]
template <class T>
T frozen_density(const Composition& composition, const T& temperature, const T& ice_fraction) {
  const T swelling = 1.0 / component::ice.density(temperature) -
                     1.0 / component::supercooled_water.density(temperature);
  return 1.0 / (1.0 / density(composition, temperature) + ice_fraction * swelling);
}

/// Conductivity of partly frozen food along layers of its components (parallel model), the most
/// that the composition allows [W/(m K)].
///
///     k = sum v_i k_i,   v_i volume fractions, ice among them
///
/// Source: Choi & Okos (1986); mixing rule in ASHRAE Handbook Refrigeration, Thermal Properties of
///         Foods.
/// Range:  -40 to 0 degC.
template <class T>
T frozen_conductivity(const Composition& composition, const T& temperature, const T& ice_fraction) {
  const Component& ice = component::ice;
  const Component& water = component::supercooled_water;
  const T gain = ice.conductivity(temperature) / ice.density(temperature) -
                 water.conductivity(temperature) / water.density(temperature);
  const T unfrozen = conductivity(composition, temperature) / density(composition, temperature);
  return (unfrozen + ice_fraction * gain) * frozen_density(composition, temperature, ice_fraction);
}

/// Conductivity of partly frozen food across layers of its components (perpendicular or series
/// model), the least that the composition allows [W/(m K)].
///
///     1/k = sum v_i / k_i,   v_i volume fractions, ice among them
///
/// Source: as the parallel model.
/// Range:  -40 to 0 degC.
template <class T>
T frozen_series_conductivity(const Composition& composition, const T& temperature,
                             const T& ice_fraction) {
  const Component& ice = component::ice;
  const Component& water = component::supercooled_water;
  const T gain = 1.0 / (ice.conductivity(temperature) * ice.density(temperature)) -
                 1.0 / (water.conductivity(temperature) * water.density(temperature));
  const T unfrozen =
      1.0 / (series_conductivity(composition, temperature) * density(composition, temperature));
  return 1.0 / ((unfrozen + ice_fraction * gain) *
                frozen_density(composition, temperature, ice_fraction));
}

}  // namespace kettlecast
