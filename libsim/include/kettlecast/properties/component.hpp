#pragma once

#include "kettlecast/base/constants.hpp"
#include "kettlecast/numerics/polynomial.hpp"

/// What foods are made of, each component alone.
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

}  // namespace kettlecast
