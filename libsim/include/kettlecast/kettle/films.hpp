#pragma once

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

/// Mean shear rate around the agitator [1/s], by Metzner and Otto; 0 at rest.
double agitator_shear_rate(const Kettle& kettle, double speed);

/// Power of the agitator [W]; 0 without one or at rest. Source: transfer/stirring.hpp.
///
/// @param fluid  what it stirs, thickened by its pieces
/// @param speed  turns per second [1/s]
template <class T>
T agitator_power(const Kettle& kettle, const Fluid<T>& fluid, double speed);

/// What moves the liquid past the pieces.
template <class T>
struct PieceMotion {
  double speed;  ///< of the agitator [1/s]
  T swimming;    ///< share of the pieces that swim [-]
  T coating;     ///< thickness of liquid per surface of all pieces [m]
  T difference;  ///< liquid less surface temperature [K], either sign
};

/// Film coefficient between pieces and liquid [W/(m2 K)].
///
///     h = s h_sphere + (1 - s) 2 k / e
///     h_sphere by the sphere correlation with v^2 = (0.1 pi d N)^2 + g beta |dT| size
///
/// with s the share of pieces that swim; in a heap liquid and pieces are turned over together, and
/// heat is conducted through half the film e of liquid that coats them. The share 0.1 of the tip
/// speed is common practice, no source; a fitted factor scales the film.
/// @param size  thickness or diameter of the pieces [m]
template <class T>
T piece_film_coefficient(const Kettle& kettle, const Fluid<T>& fluid, const PieceMotion<T>& motion,
                         double size);

/// Nucleate boiling at a surface [W/m2], limited by the critical flux; zero below saturation.
///
/// Source: boiling.hpp with the properties of water and the viscosity of the liquid. As q goes with
/// mu^-2, a sauce hardly boils at the wall: bubbles do not get away from it.
///
/// @param excess         surface less boiling temperature [K]
/// @param boiling_point  of the liquid [K]
/// @param viscosity      of the liquid at its boiling point mu [Pa s]
template <class T>
T boiling_heat_flux(const T& excess, const T& boiling_point, const T& viscosity);

/// Temperature of the steam in a jacket [K]: saturation at its part of the pressure.
double steam_temperature(const Kettle& kettle);

/// Film coefficient of steam that condenses in a jacket [W/(m2 K)]. Source: steam_jacket.hpp.
///
/// @param kettle  its jacket
/// @param steam   temperature in the jacket [K]
/// @param wall    temperature of the wall behind it [K]
template <class T>
T steam_film_coefficient(const Kettle& kettle, const T& steam, const T& wall);

/// Film coefficient of a liquid that flows through a jacket [W/(m2 K)]: along the gap between two
/// walls, or rising at the wall where it hardly flows.
///
/// Source: annular_gap.hpp and natural_convection.hpp. A jacket with one inlet along its wall does
/// better (jacket_flow.hpp); the fitted factor of the jacket takes that up.
///
/// @param kettle       its jacket and diameter
/// @param liquid       flow and mix
/// @param temperature  in the jacket [K]
/// @param wall         temperature of the wall behind it [K]
template <class T>
T jacket_flow_coefficient(const Kettle& kettle, const JacketFlow& liquid, const T& temperature,
                          const T& wall);

/// The free surface of the product.
template <class T>
struct FreeSurface {
  T temperature;  ///< [K]
  T activity;     ///< water activity [-]
  double speed;   ///< of the agitator, which moves the surface against the air [1/s]
};

/// Heat flux from liquid under a lid to the dry wall over it, by convection and by vapour that
/// condenses there [W/m2]; zero where the wall is hotter.
///
///     q = h (T - T_w) + h_m h_fg M/(R T) (p(T) - p(T_w)),   h_m from h by the Lewis analogy
///
/// Source: Chilton and Colburn, Ind. Eng. Chem. 26 (1934) 1183; h of an enclosure is common
/// practice, no source. Range: 0 to the boiling point.
///
/// @param kettle  pressure of the room
/// @param liquid  the upper liquid
/// @param wall    temperature of the dry wall [K]
template <class T>
T condensation_flux(const Kettle& kettle, const FreeSurface<T>& liquid, const T& wall);

/// What leaves one square metre of free surface.
template <class T>
struct SurfaceLoss {
  T vapour;      ///< [kg/(m2 s)]
  T convection;  ///< [W/m2]
  T radiation;   ///< [W/m2]
};

/// Losses of an open wet surface to the room.
///
/// Source: evaporation.hpp, radiation.hpp. Range: 0 to the boiling point; the vapour fraction is
/// cut off above (see limited_vapour_fraction).
///
/// @param kettle            diameter, pressure, humidity and air speed
/// @param room_temperature  of air and walls around [K]
template <class T>
SurfaceLoss<T> surface_loss(const Kettle& kettle, const FreeSurface<T>& surface,
                            const T& room_temperature);

}  // namespace kettlecast
