#pragma once

#include "kettlecast/properties/component.hpp"
#include "kettlecast/properties/food.hpp"

namespace kettlecast {

/// Calls visit(mass fraction, component) for every component that is not water.
template <class Visitor>
void visit_dry(const Composition& composition, Visitor&& visit) {
  visit(composition.protein, component::protein);
  visit(composition.fat, component::fat);
  visit(composition.carbohydrate, component::carbohydrate);
  visit(composition.fibre, component::fibre);
  visit(composition.ash, component::ash);
}

/// Calls visit(mass fraction, component) for every component, water first.
template <class Visitor>
void visit_all(const Composition& composition, Visitor&& visit) {
  visit(composition.water, component::water);
  visit_dry(composition, visit);
}

/// Mass fraction of everything that is not water, as given [kg/kg].
inline double dry_fraction(const Composition& composition) {
  double sum = 0.0;
  visit_dry(composition, [&](double fraction, const Component&) { sum += fraction; });
  return sum;
}

/// Specific heat of unfrozen food, mean of its components by mass [J/(kg K)].
///
/// Source: Choi & Okos (1986). Fractions are scaled to add up to 1.
/// Range:  0-150 degC; smooth below 0 degC, where it means food that is not frozen.
template <class T>
T specific_heat(const Composition& composition, const T& temperature) {
  T sum(0.0);
  visit_all(composition, [&](double fraction, const Component& part) {
    sum += fraction * part.specific_heat(temperature);
  });
  return sum / (composition.water + dry_fraction(composition));
}

/// Density of unfrozen food without pores, volumes of the components added [kg/m3].
///
/// Source: Choi & Okos (1986). Fractions are scaled to add up to 1.
/// Range:  0-150 degC.
template <class T>
T density(const Composition& composition, const T& temperature) {
  T volume(0.0);
  visit_all(composition, [&](double fraction, const Component& part) {
    volume += fraction / part.density(temperature);
  });
  return (composition.water + dry_fraction(composition)) / volume;
}

/// Conductivity of unfrozen food, mean of its components by volume (parallel model) [W/(m K)].
///
/// Source: Choi & Okos (1986).
/// Range:  0-150 degC.
template <class T>
T conductivity(const Composition& composition, const T& temperature) {
  T volume(0.0);
  T sum(0.0);
  visit_all(composition, [&](double fraction, const Component& part) {
    const T share = fraction / part.density(temperature);
    volume += share;
    sum += share * part.conductivity(temperature);
  });
  return sum / volume;
}

/// Conductivity of unfrozen food across layers of its components (perpendicular or series model),
/// the least that the composition allows [W/(m K)].
///
///     1/k = sum v_i / k_i,   v_i volume fractions
///
/// Source: mixing rule in ASHRAE Handbook Refrigeration, Thermal Properties of Foods; components of
///         Choi & Okos (1986).
/// Range:  0-150 degC.
template <class T>
T series_conductivity(const Composition& composition, const T& temperature) {
  T volume(0.0);
  T resistance(0.0);
  visit_all(composition, [&](double fraction, const Component& part) {
    const T share = fraction / part.density(temperature);
    volume += share;
    resistance += share / part.conductivity(temperature);
  });
  return volume / resistance;
}

/// Composition without its water; pure water is kept, so that no dry matter has finite properties.
inline Composition dried(const Composition& composition) {
  Composition dry = composition;
  if (dry_fraction(composition) > 0.0) dry.water = 0.0;
  return dry;
}

/// Density of everything in the food that is not water [kg/m3]; that of water for pure water.
///
/// Source: Choi & Okos (1986).
/// Range:  0-150 degC.
template <class T>
T dry_density(const Composition& composition, const T& temperature) {
  return density(dried(composition), temperature);
}

/// Specific heat of everything in the food that is not water [J/(kg K)]; that of water for pure
/// water.
///
/// Source: Choi & Okos (1986).
/// Range:  0-150 degC.
template <class T>
T dry_specific_heat(const Composition& composition, const T& temperature) {
  return specific_heat(dried(composition), temperature);
}

}  // namespace kettlecast
