#pragma once

#include "kettlecast/base/constants.hpp"

namespace kettlecast {

/// Exponent of Arrhenius' law between two temperatures [-]; a viscosity rises with it, a rate
/// falls.
///
///     (E / R) (1/T - 1/T_0)
///
/// Source: Arrhenius (1889).
/// Range:  T > 0.
///
/// @param energy       E [J/mol]
/// @param reference    T_0 [K]
/// @param temperature  T [K]
template <class T, class Energy, class Reference>
T arrhenius_exponent(const Energy& energy, const Reference& reference, const T& temperature) {
  return energy / constants::molar_gas * (1.0 / temperature - 1.0 / reference);
}

}  // namespace kettlecast
