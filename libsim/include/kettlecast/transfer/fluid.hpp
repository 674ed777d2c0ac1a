#pragma once

#include "kettlecast/base/constants.hpp"

namespace kettlecast {

/// Properties of a liquid or gas in a film; the correlations see no material, only these.
///
/// Source: the groups below are definitions.
/// Range:  any; all properties above zero except the expansivity.
template <class T>
struct Fluid {
  T density;        ///< [kg/m3]
  T specific_heat;  ///< [J/(kg K)]
  T conductivity;   ///< [W/(m K)]
  T viscosity;      ///< dynamic [Pa s]
  T expansivity;    ///< [1/K]
};

/// Prandtl number, cp mu / k [-].
template <class T>
T prandtl_number(const Fluid<T>& fluid) {
  return fluid.specific_heat * fluid.viscosity / fluid.conductivity;
}

/// Rayleigh number, g beta dT L^3 rho^2 cp / (mu k) [-].
///
/// @param fluid                   at film temperature
/// @param temperature_difference  surface less fluid dT, of either sign [K]
/// @param length                  L [m]
/// @note Has the sign of beta dT: positive if the layer at the surface is lighter than the fluid.
template <class T>
T rayleigh_number(const Fluid<T>& fluid, const T& temperature_difference, double length) {
  return constants::gravity * (length * length * length) * fluid.expansivity *
         temperature_difference * fluid.density * fluid.density * fluid.specific_heat /
         (fluid.viscosity * fluid.conductivity);
}

/// Reynolds number, rho v L / mu [-].
///
/// @param fluid     at bulk temperature
/// @param velocity  v [m/s]
/// @param length    L [m]
template <class T>
T reynolds_number(const Fluid<T>& fluid, const T& velocity, double length) {
  return fluid.density * velocity * length / fluid.viscosity;
}

/// Reynolds number of an agitator, rho N d^2 / mu [-].
///
/// @param fluid     at bulk temperature
/// @param speed     turns per second N [1/s]
/// @param diameter  of the agitator d [m]
template <class T>
T agitator_reynolds_number(const Fluid<T>& fluid, double speed, double diameter) {
  return fluid.density * (speed * diameter * diameter) / fluid.viscosity;
}

}  // namespace kettlecast
