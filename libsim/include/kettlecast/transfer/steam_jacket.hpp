#pragma once

#include <cmath>

#include "kettlecast/transfer/condensing_wall.hpp"

/// The steam side of a jacket, with what air does to it.
namespace kettlecast {

/// Coefficient between resting steam with air in it and the film [W/(m2 K)].
///
///     h = 380 ((1 - w) / w)^0.7
///
/// Source: Uchida, Oyama & Togo (1965), fit in use for containments, total heat flux.
/// Range:  air 0.2 < w < 0.9 at about 1 bar, vertical wall, no draught.
/// @note Caution: below 20 % air this is extended, and a jacket that is vented or swept by fast
///       steam does better. Read it as a warning of the size, half or more lost to a per cent of
///       air, not as a design value.
///
/// @param air_mass_fraction  w, above 0 to below 1 [-]
template <class T>
T resting_air_coefficient(const T& air_mass_fraction) {
  using std::pow;
  return 380.0 * pow((1.0 - air_mass_fraction) / air_mass_fraction, 0.7);
}

/// Film and air in the steam in series [W/(m2 K)]; without air the film alone.
///
///     1/h = 1/h_film + 1/h_air
///
/// Source: resistances in series; resting_air_coefficient. A film of 10000 W/(m2 K) is halved by
///         0.9 % of air; Othmer (1929) measured a loss of half at 0.5 % (from memory).
/// Range:  0 <= w <= 0.9.
template <class T>
T coefficient_with_air(const T& film_coefficient, const T& air_mass_fraction) {
  if (!(air_mass_fraction > 0.0)) return film_coefficient;
  return 1.0 / (1.0 / film_coefficient + 1.0 / resting_air_coefficient(air_mass_fraction));
}

/// Coefficient on the steam side of a jacket [W/(m2 K)].
///
///     h = condensing_wall_coefficient in series with the air
///
/// Source: condensing_wall.hpp and above. Kern, Process Heat Transfer, takes 1500 Btu/(h ft2 degF),
///         8500 W/(m2 K), for any jacket of steam (example 20.1).
/// Range:  jacketed wall of the height L, condensate drained. Of a round floor take its depth as
///         the height; a film on its under side is not thicker.
///
/// @param prandtl            of the condensate [-]
/// @param subcooling         steam less wall temperature [K]
/// @param height             of the jacketed wall L [m]
/// @param air_mass_fraction  of the steam, 0 if vented [-]
template <class T>
T steam_jacket_coefficient(const Condensate<T>& film, const T& prandtl, const T& subcooling,
                           const T& height, const T& air_mass_fraction) {
  return coefficient_with_air(condensing_wall_coefficient(film, prandtl, subcooling, height),
                              air_mass_fraction);
}

/// Condensate of a surface, h A dT / h_fg [kg/s].
///
/// Source: heat balance of the condensing steam.
/// Range:  saturated steam in, condensate at saturation out.
///
/// @param heat_flow    h A dT [W]
/// @param latent_heat  h_fg [J/kg]
template <class T>
T condensate_rate(const T& heat_flow, const T& latent_heat) {
  return heat_flow / latent_heat;
}

}  // namespace kettlecast
