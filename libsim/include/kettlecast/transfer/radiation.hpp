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

/// Coefficient of radiation to large surroundings, the flux per kelvin of difference [W/(m2 K)].
///
///     h_r = e sigma (T + T_s) (T^2 + T_s^2)
///
/// Source: Stefan-Boltzmann law, divided by T - T_s; Incropera & DeWitt, equation 1.9.
/// Range:  0 <= e <= 1; exact at any difference, finite at none.
template <class T>
T radiation_coefficient(double emissivity, const T& surface, const T& surroundings) {
  return emissivity * constants::stefan_boltzmann * (surface + surroundings) *
         (surface * surface + surroundings * surroundings);
}

/// Emissivity that stands for a body inside another one [-], to use with radiative_heat_flux per
/// area of the inner body.
///
///     1/e = 1/e_1 + (A_1/A_2) (1/e_2 - 1)
///
/// Source: exchange of two grey diffuse surfaces, Incropera & DeWitt, table 13.3: A_1/A_2 = 1 large
///         parallel plates, 0 large surroundings, between them concentric cylinders and spheres.
/// Range:  0 < e_1, e_2 <= 1; the inner body must not see itself.
///
/// @param inner       emissivity e_1 of the inner body
/// @param outer       emissivity e_2 of the outer body
/// @param area_ratio  inner over outer area A_1/A_2, 0..1 [-]
inline double exchange_emissivity(double inner, double outer, double area_ratio) {
  return 1.0 / (1.0 / inner + area_ratio * (1.0 / outer - 1.0));
}

/// Emissivity that stands for two parallel plates with one thin sheet between them [-].
///
///     1/e = 1/e_1 + 1/e_2 - 1 + 2/e_s - 1
///
/// Source: radiation shields, Incropera & DeWitt, equation 13.27 with the same emissivity on both
///         sides; with equal emissivities all over one sheet halves the exchange.
/// Range:  0 < e <= 1, no convection between the plates.
///
/// @param shield  emissivity e_s of both sides of the sheet
inline double shielded_emissivity(double first, double second, double shield) {
  return 1.0 / (1.0 / first + 1.0 / second - 1.0 + 2.0 / shield - 1.0);
}

}  // namespace kettlecast
