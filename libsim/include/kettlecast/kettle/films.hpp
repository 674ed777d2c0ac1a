#pragma once

#include <cmath>

#include "kettlecast/kettle/kettle.hpp"
#include "kettlecast/transfer/fluid.hpp"

/// Film coefficients of a kettle: the correlations of transfer/ joined for its agitator.
/// Forced and natural convection blend by h = (h_f^3 + h_n^3)^(1/3). Source of the exponent:
/// Churchill and Usagi, AIChE J. 18 (1972) 1121; 3 for assisting flows (from memory).
namespace kettlecast {

/// What drives a film between a surface and the liquid.
template <class T>
struct Stirring {
  double speed;       ///< of the agitator [1/s], 0: at rest
  T difference;       ///< surface less liquid temperature [K], either sign
  T viscosity_ratio;  ///< viscosity of the bulk over that at the surface [-]
};

/// Film coefficient between the heated floor and the stirred liquid [W/(m2 K)].
///
/// Forced: the wall constants of anchors and ribbons also at the floor (they sweep it as they
/// sweep the wall); bottom-head constants for turbines. Natural: heated plate facing up.
///
/// @param kettle   agitator and diameter
/// @param fluid    liquid at its bulk temperature, thickened by its pieces
/// @param stirring  what drives the film
template <class T>
T floor_film_coefficient(const Kettle& kettle, const Fluid<T>& fluid, const Stirring<T>& stirring);

/// Film coefficient between the wetted wall and the stirred liquid [W/(m2 K)].
/// Arguments as for the floor.
template <class T>
T wall_film_coefficient(const Kettle& kettle, const Fluid<T>& fluid, const Stirring<T>& stirring);

/// Film coefficient between pieces and liquid [W/(m2 K)]: sphere correlation with the velocity of
/// the liquid past the pieces, from agitator and buoyancy.
///
///     v^2 = (0.1 pi d N)^2 + g beta |dT| size
///
/// The share 0.1 of the tip speed is common practice, no source; a fitted factor scales the film.
/// @param size  thickness or diameter of the pieces [m]
template <class T>
T piece_film_coefficient(const Kettle& kettle, const Fluid<T>& fluid, double speed,
                         const T& difference, double size);

/// Nucleate boiling at the floor [W/m2], limited by the critical flux; zero below saturation.
/// @param excess         floor surface less boiling temperature [K]
/// @param boiling_point  of the liquid [K]
template <class T>
T boiling_heat_flux(const T& excess, double boiling_point);

/// Heat flux where convection and nucleate boiling act together [W/m2].
///
///     q = q_c + sqrt(q_c^2 + q_b^2) - |q_c|
///
/// Source: Bergles and Rohsenow, J. Heat Transfer 86 (1964) 365, with the flux at incipience left
/// out (from memory); for q_c > 0 it is their q^2 = q_c^2 + q_b^2.
/// @param convection  q_c, either sign [W/m2]
/// @param boiling     q_b, >= 0 [W/m2]
template <class T>
T boiling_with_convection(const T& convection, const T& boiling) {
  using std::sqrt;
  if (boiling <= 0.0) return convection;
  const T together = sqrt(convection * convection + boiling * boiling);
  return convection < 0.0 ? T(together + 2.0 * convection) : together;
}

/// What leaves one square metre of free surface.
template <class T>
struct SurfaceLoss {
  T vapour;      ///< [kg/(m2 s)]
  T convection;  ///< [W/m2]
  T radiation;   ///< [W/m2]
};

/// Losses of an open wet surface, at the temperature of its skin.
///
/// The skin is cooler than the bulk by the flux over the liquid film; found by one Newton step
/// from the bulk temperature with the slope of the flux over 1 K.
/// Source: evaporation.hpp, radiation.hpp. Range: 0 to the boiling point.
///
/// @param kettle       diameter and surroundings
/// @param bulk         temperature of the product [K]
/// @param liquid_film  film coefficient from bulk to skin [W/(m2 K)]
template <class T>
SurfaceLoss<T> surface_loss(const Kettle& kettle, const T& bulk, const T& liquid_film);

}  // namespace kettlecast
