#pragma once

#include "kettlecast/base/constants.hpp"

namespace kettlecast {

/// Net heat flux from a grey surface to large surroundings [W/m2].
///
///     q = e sigma (T^4 - T_s^4)
///
/// Source: Stefan-Boltzmann law; Incropera & DeWitt, equation 1.7.
/// Range:  0 <= e <= 1, surroundings much larger than the surface.
///
/// @param emissivity    e [-]
/// @param surface       temperature T of the surface [K]
/// @param surroundings  temperature T_s of the surroundings [K]
template <class T>
T radiative_heat_flux(double emissivity, const T& surface, const T& surroundings) {
  const T hot = surface * surface;
  const T cold = surroundings * surroundings;
  return emissivity * constants::stefan_boltzmann * (hot + cold) * (hot - cold);
}

}  // namespace kettlecast
