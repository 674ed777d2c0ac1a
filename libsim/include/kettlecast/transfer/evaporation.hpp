#pragma once

#include <cmath>

#include "kettlecast/base/constants.hpp"
#include "kettlecast/numerics/smooth.hpp"
#include "kettlecast/transfer/natural_convection.hpp"

namespace kettlecast {

/// Lewis number, thermal diffusivity over diffusivity of the vapour, alpha / D [-].
///
/// Source: definition.
/// Range:  any; about 0.86 for steam in air near 300 K.
template <class T>
T lewis_number(const T& thermal_diffusivity, const T& vapour_diffusivity) {
  return thermal_diffusivity / vapour_diffusivity;
}

/// Mass-transfer coefficient from a heat-transfer coefficient by analogy [m/s].
///
///     h_m = h / (rho cp Le^(2/3)),   Le = alpha / D
///
/// Source: Chilton & Colburn, Ind. Eng. Chem. 26 (1934) 1183; Incropera & DeWitt, equation 6.60.
/// Range:  0.6 < Pr, Sc < 60.
///
/// @param film_coefficient  heat-transfer coefficient h [W/(m2 K)]
/// @param heat_capacity     rho cp of the gas [J/(m3 K)]
/// @param lewis_number      Le [-]
template <class T>
T lewis_mass_coefficient(const T& film_coefficient, const T& heat_capacity, const T& lewis_number) {
  using std::pow;
  return film_coefficient / (heat_capacity * pow(lewis_number, 2.0 / 3.0));
}

/// Vapour mole fraction p_v / p held smoothly below 0.97 [-].
///
/// Source: our own limit; it keeps the evaporation finite at boiling and above. 2e-5 off below 0.5.
/// Range:  any p_v, p > 0.
template <class T>
T limited_vapour_fraction(const T& vapour_pressure, const T& pressure) {
  constexpr double highest = 0.97;
  constexpr double rounding = 0.006;
  return highest - smooth_positive(T(highest - vapour_pressure / pressure), rounding);
}

/// Water that evaporates from an open surface into gas, with Stefan flow [kg/(m2 s)].
///
///     m = h_m p M / (R T) ln((1 - x_inf) / (1 - x_s))
///
/// Source: Bird, Stewart & Lightfoot, Transport Phenomena, section 18.2 (one-sided diffusion).
/// Range:  any surface; fractions above 0.9 are rounded towards the limit of 0.97, where the vapour
///         would carry the gas away and boiling takes over. Negative: the surface gathers dew.
///         With the coefficient below it lies within 12 % of Shah's correlation of still pools
///         (2014, from memory) at 30-60 degC and above it when hotter: 23 % at 70, 81 % at 90 degC.
///
/// @param mass_coefficient          h_m [m/s]
/// @param temperature               of the film T [K]
/// @param pressure                  p [Pa]
/// @param surface_vapour_pressure   at the surface, x_s p [Pa]
/// @param ambient_vapour_pressure   far away, x_inf p [Pa]
template <class T>
T open_surface_evaporation(const T& mass_coefficient, const T& temperature, const T& pressure,
                           const T& surface_vapour_pressure, const T& ambient_vapour_pressure) {
  using std::log;
  const T at_surface = limited_vapour_fraction(surface_vapour_pressure, pressure);
  const T far_away = limited_vapour_fraction(ambient_vapour_pressure, pressure);
  return mass_coefficient * pressure * constants::water_molar_mass /
         (constants::molar_gas * temperature) * log((1.0 - far_away) / (1.0 - at_surface));
}

/// Gas over a wet surface in a round vessel.
template <class T>
struct WetSurface {
  Fluid<T> film;      ///< gas at film temperature; its expansivity is not used
  T surface_density;  ///< of the moist gas at the surface [kg/m3]
  T ambient_density;  ///< of the moist gas far away [kg/m3]
  double diameter;    ///< [m]
  double air_speed;   ///< draught along the surface, >= 0 [m/s]
};

/// Heat-transfer coefficient of a warm wet surface, natural and forced convection together
/// [W/(m2 K)].
///
///     Nu_n  by plate_facing_up_nusselt with Ra = g (d rho / rho) L^3 rho^2 cp / (mu k), L = D/4
///     Nu_f  = 0.664 Re^(1/2) Pr^(1/3) with length D
///     h     = h_n + h_f
///
/// Source: Incropera & DeWitt, equations 9.30, 9.31 (natural), 7.30 (plate); still air and draught
///         add up in measured evaporation, W = (0.089 + 0.0782 V) dp / Y (ASHRAE pool equation).
/// Range:  Re < 5e5, 1e4 < Ra < 1e11. Moist gas is lighter: its density difference drives the flow,
///         not the temperature alone. A surface gas that is heavier lies still (smoothly).
template <class T>
T wet_surface_coefficient(const WetSurface<T>& surface) {
  using std::pow;
  using std::sqrt;
  const Fluid<T>& film = surface.film;
  const double length = surface.diameter / 4.0;
  const T lightness = (surface.ambient_density - surface.surface_density) / film.density;
  Fluid<T> buoyant = film;
  buoyant.expansivity = smooth_positive(lightness, 1e-4);  // as of a difference of 1 K
  const T natural = plate_facing_up_nusselt(rayleigh_number(buoyant, T(1.0), length)) *
                    film.conductivity / length;
  const T forced = 0.664 * std::sqrt(surface.air_speed) *
                   sqrt(surface.diameter * film.density / film.viscosity) *
                   pow(prandtl_number(film), 1.0 / 3.0) * film.conductivity / surface.diameter;
  return natural + forced;
}

}  // namespace kettlecast
