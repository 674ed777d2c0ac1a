#pragma once

#include <cmath>

#include "kettlecast/base/constants.hpp"
#include "kettlecast/properties/arrhenius.hpp"

/// How much faster hot surfaces brown: an indicator to compare runs with, not a measurement of
/// colour. It knows neither sugar, acid nor water of the food, and a wet surface hardly browns.
namespace kettlecast::browning {

/// Activation energy of a dry crust [J/mol].
///
/// Source: Zanoni, Peri & Bruno, LWT 28 (1995) 604: dried crumb on a hot plate, 140 to 250 degC,
///         colour difference of first order with k = 42000 1/s exp(-64151 J/mol / (R T)).
inline constexpr double dry_crust_energy = 64151.0;
/// The highest published activation energy known to us [J/mol]: 44 kcal/mol.
///
/// Source: lysine and glucose in a dry cellulose matrix at 40 to 60 degC, J. Food Sci. 57 (1992)
///         (abstract). In between: ascorbic acid and cysteine, 114.33 kJ/mol, 125 to 155 degC.
inline constexpr double highest_energy = 44.0 * 4184.0;
/// Temperature at which minutes are counted, 150 degC [K].
inline constexpr double reference_temperature = 150.0 + constants::ice_point;

/// Rate of browning over that at the reference temperature [-].
///
///     k / kref = exp(-(E / R) (1/T - 1/Tref))
///
/// Source: Arrhenius; dry_crust_energy for E.
/// Range:  140 to 250 degC for a dry crust; published E run from 64 to 184 kJ/mol.
///
/// @param temperature        T, > 0 [K]
/// @param reference          Tref [K]
/// @param activation_energy  E [J/mol]
template <class T>
T rate(const T& temperature, const T& reference, const T& activation_energy) {
  using std::exp;
  return exp(-arrhenius_exponent(activation_energy, reference, temperature));
}

/// Rise of temperature that makes a reaction ten times as fast, at a temperature [K].
///
///     z = ln(10) R T^2 / E
///
/// Source: slope of Arrhenius' law at T.
/// Range:  near T; z grows with the square of T.
///
/// @param temperature        T [K]
/// @param activation_energy  E [J/mol]
template <class T>
T z_from_activation_energy(const T& temperature, const T& activation_energy) {
  return constants::ln10 * constants::molar_gas * temperature * temperature / activation_energy;
}

/// Activation energy from z at a temperature [J/mol]; the inverse of z_from_activation_energy.
///
///     E = ln(10) R T^2 / z
///
/// Source: slope of Arrhenius' law at T.
/// Range:  near T.
///
/// @param temperature  T [K]
/// @param z            [K]
template <class T>
T activation_energy_from_z(const T& temperature, const T& z) {
  return z_from_activation_energy(temperature, z);
}

}  // namespace kettlecast::browning
