#pragma once

#include <cmath>

#include "kettlecast/base/constants.hpp"

/// Condensation in a film that runs down by its weight, laminar after Nusselt. Waves and turbulence
/// are in condensing_wall.hpp, jackets and air in steam_jacket.hpp.
namespace kettlecast {

/// Condensate at film temperature, (T_sat + T_wall) / 2, and its vapour at saturation.
template <class T>
struct Condensate {
  T density;         ///< of the liquid [kg/m3]
  T vapour_density;  ///< [kg/m3]
  T conductivity;    ///< of the liquid [W/(m K)]
  T viscosity;       ///< of the liquid [Pa s]
  T latent_heat;     ///< at saturation, plain or modified [J/kg]
};

/// Shares of cp dT that sources add to the latent heat for the cooling of the film.
namespace film_cooling {
inline constexpr double none = 0.0;
inline constexpr double nusselt = 0.375;  ///< linear profile: Bromley (1952), Kreith, Som
inline constexpr double rohsenow = 0.68;  ///< with convection: Rohsenow (1956), Incropera & DeWitt
}  // namespace film_cooling

/// Coefficients of a horizontal tube by source.
namespace tube_film {
inline constexpr double nusselt = 0.728;  ///< exact integral; Nusselt's own graph gave 0.725
inline constexpr double som = 0.745;      ///< Som, Introduction to Heat Transfer, example 9.2
inline constexpr double janna = 0.782;    ///< Janna, Engineering Heat Transfer, example 10.2
inline constexpr double inside = 0.555;   ///< inside a tube at low flow, Chato (1962); Som, ex. 9.4
inline constexpr double sphere = 0.826;   ///< Incropera & DeWitt, section 10.9 (from memory)
}  // namespace tube_film

/// Latent heat with the heat of cooling the film below saturation [J/kg].
///
///     h' = h_fg + share cp dT
///
/// Source: film_cooling.
/// Range:  cp dT / h_fg < 0.1; the two shares differ by 0.3 % in h at 20 K below steam.
///
/// @param latent_heat    h_fg [J/kg]
/// @param specific_heat  of the liquid cp [J/(kg K)]
/// @param subcooling     saturation less wall temperature dT [K]
/// @param share          of film_cooling [-]
template <class T>
T modified_latent_heat(const T& latent_heat, const T& specific_heat, const T& subcooling,
                       double share) {
  return latent_heat + share * specific_heat * subcooling;
}

/// Group k^3 rho (rho - rho_v) g h_fg / (mu dT L) of Nusselt's film, to the power of 1/4
/// [W/(m2 K)].
///
/// Source: Nusselt (1916); dT is held above 1e-6 K, where h is without bound.
/// Range:  as the functions below.
template <class T>
T nusselt_film_group(const Condensate<T>& film, const T& subcooling, const T& length) {
  using std::sqrt;
  const T difference = subcooling > 1e-6 ? subcooling : T(1e-6);
  const T cube = film.conductivity * film.conductivity * film.conductivity;
  return sqrt(sqrt(cube * film.density * (film.density - film.vapour_density) * constants::gravity *
                   film.latent_heat / (film.viscosity * difference * length)));
}

/// Mean coefficient of a laminar film on a plate [W/(m2 K)].
///
///     h = (2 sqrt(2) / 3) (g sin(a) rho (rho - rho_v) k^3 h_fg / (mu dT L))^(1/4)
///
/// Source: Nusselt (1916); Incropera & DeWitt, equation 10.31, 0.943.
/// Range:  film Reynolds number below 30; up to 1800 real films are up to 20 % better. Still
/// vapour.
///
/// @param subcooling   dT [K]
/// @param length       along the plate L [m]
/// @param inclination  from the horizontal a, pi/2 for a wall [rad]
template <class T>
T laminar_film_coefficient(const Condensate<T>& film, const T& subcooling, const T& length,
                           double inclination) {
  constexpr double constant = 0.94280904158206336;  // 2 sqrt(2) / 3
  return constant * std::pow(std::sin(inclination), 0.25) *
         nusselt_film_group(film, subcooling, length);
}

/// Thickness of a laminar film on a wall [m].
///
///     d = (4 mu k dT x / (g h_fg rho (rho - rho_v)))^(1/4)
///
/// Source: Nusselt (1916); Incropera & DeWitt, equation 10.26. The local coefficient is k / d.
/// Range:  as laminar_film_coefficient.
///
/// @param distance  from the upper edge x [m]
template <class T>
T film_thickness(const Condensate<T>& film, const T& subcooling, const T& distance) {
  constexpr double fourth_root_of_4 = 1.4142135623730951;
  return fourth_root_of_4 * film.conductivity / nusselt_film_group(film, subcooling, distance);
}

/// Mean coefficient of a film around a horizontal tube or sphere [W/(m2 K)].
///
///     h = C (g rho (rho - rho_v) k^3 h_fg / (mu dT D))^(1/4)
///
/// Source: Nusselt (1916); C by tube_film. Sources differ by 8 %.
/// Range:  laminar film, which a tube below 0.1 m always has; still vapour.
///
/// @param diameter     D [m]
/// @param coefficient  C of tube_film [-]
template <class T>
T tube_film_coefficient(const Condensate<T>& film, const T& subcooling, const T& diameter,
                        double coefficient) {
  return coefficient * nusselt_film_group(film, subcooling, diameter);
}

/// Reynolds number of the film at the lower edge [-].
///
///     Re = 4 G / mu = 4 h dT L / (mu h_fg),   G condensate per width [kg/(m s)]
///
/// Source: definition; Incropera & DeWitt, equation 10.36.
/// Range:  laminar below 30, wavy to 1800, turbulent above (2000 in Kreith).
///
/// @param coefficient  mean h over L [W/(m2 K)]
template <class T>
T film_reynolds_number(const Condensate<T>& film, const T& coefficient, const T& subcooling,
                       const T& length) {
  return 4.0 * coefficient * subcooling * length / (film.viscosity * film.latent_heat);
}

}  // namespace kettlecast
