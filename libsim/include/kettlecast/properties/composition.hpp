#pragma once

#include "kettlecast/base/constants.hpp"
#include "kettlecast/numerics/polynomial.hpp"
#include "kettlecast/properties/food.hpp"

namespace kettlecast {

/// Property of a food component as a quadratic in degC, called with a temperature in K.
struct ComponentProperty {
  PolynomialCoefficients<3> coefficients;

  template <class T>
  T operator()(const T& temperature) const {
    return polynomial(coefficients, T(temperature - constants::ice_point));
  }
};

/// Properties of one component of food.
struct Component {
  ComponentProperty density;        ///< [kg/m3]
  ComponentProperty specific_heat;  ///< [J/(kg K)]
  ComponentProperty conductivity;   ///< [W/(m K)]
};

/// Components of food as functions of temperature.
///
/// Source: Choi & Okos, Effects of temperature and composition on the thermal properties of foods,
///         Food Engineering and Process Applications 1 (1986) 93-101. Misprints in circulation:
///         specific heat of water starts with 4.1762 (not 4.1289), conductivity with 0.57109.
/// Range:  -40 to 150 degC; `water` above 0 degC, its specific heat is smooth below and used there.
namespace component {
inline constexpr Component water{{{{997.18, 3.1439e-3, -3.7574e-3}}},
                                 {{{4176.2, -9.0864e-2, 5.4731e-3}}},
                                 {{{0.57109, 1.7625e-3, -6.7036e-6}}}};
/// Liquid water below 0 degC; only its specific heat differs, and it jumps by -2.3 % at 0 degC.
inline constexpr Component supercooled_water{
    water.density, {{{4081.7, -5.3062, 0.99516}}}, water.conductivity};
inline constexpr Component ice{
    {{{916.89, -0.13071, 0.0}}}, {{{2062.3, 6.0769, 0.0}}}, {{{2.2196, -6.2489e-3, 1.0154e-4}}}};
inline constexpr Component protein{{{{1329.9, -0.5184, 0.0}}},
                                   {{{2008.2, 1.2089, -1.3129e-3}}},
                                   {{{0.17881, 1.1958e-3, -2.7178e-6}}}};
inline constexpr Component fat{{{{925.59, -0.41757, 0.0}}},
                               {{{1984.2, 1.4733, -4.8008e-3}}},
                               {{{0.18071, -2.7604e-4, -1.7749e-7}}}};
inline constexpr Component carbohydrate{{{{1599.1, -0.31046, 0.0}}},
                                        {{{1548.8, 1.9625, -5.9399e-3}}},
                                        {{{0.20141, 1.3874e-3, -4.3312e-6}}}};
inline constexpr Component fibre{{{{1311.5, -0.36589, 0.0}}},
                                 {{{1845.9, 1.8306, -4.6509e-3}}},
                                 {{{0.18331, 1.2497e-3, -3.1683e-6}}}};
inline constexpr Component ash{{{{2423.8, -0.28063, 0.0}}},
                               {{{1092.6, 1.8896, -3.6817e-3}}},
                               {{{0.32962, 1.4011e-3, -2.9069e-6}}}};
}  // namespace component

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
