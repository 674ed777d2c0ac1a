#pragma once

#include <cmath>

/// Helical ribbons in laminar flow.
namespace kettlecast {

/// Measures of a helical ribbon.
struct RibbonGeometry {
  double diameter;         ///< of the ribbon d [m]
  double vessel_diameter;  ///< D > d [m]
  double height;           ///< h [m]
  double pitch;            ///< height of one turn p [m]
  double width;            ///< of a blade w [m]
};

/// Product of power number and Reynolds number of a helical ribbon in laminar flow [-].
///
///     K_p = 82.8 (h/d) (c/d)^-0.38 (p/d)^-0.35 (w/d)^0.20 n^0.78,   c = (D - d) / 2
///
/// Source: Rieger, Novak & Havelkova, Int. Chem. Eng. 28 (1988) 376, in Handbook of Industrial
///         Mixing (2004), chapter 9.
/// Range:  Re < 10-100; ribbons close to the wall.
///
/// @param ribbon  measures, D > d
/// @param blades  number of ribbons n [-]
template <class T>
T ribbon_laminar_constant(const RibbonGeometry& ribbon, const T& blades) {
  using std::pow;
  const double clearance = 0.5 * (ribbon.vessel_diameter - ribbon.diameter);
  const double shape = ribbon.height / ribbon.diameter * pow(clearance / ribbon.diameter, -0.38) *
                       pow(ribbon.pitch / ribbon.diameter, -0.35) *
                       pow(ribbon.width / ribbon.diameter, 0.20);
  return 82.8 * shape * pow(blades, 0.78);
}

/// Time in which a helical ribbon mixes the vessel in laminar flow [s].
///
///     t = 896e3 K_p^-1.69 / N
///
/// Source: Grenville, Hutchinson & Higbee (2001), in Handbook of Industrial Mixing (2004), chapter
/// 9. Range:  laminar flow, N > 0; the degree of mixing is not printed.
///
/// @param laminar_constant  K_p [-]
/// @param speed             turns per second N [1/s]
template <class T>
T ribbon_mixing_time(const T& laminar_constant, const T& speed) {
  using std::pow;
  return 896e3 * pow(laminar_constant, -1.69) / speed;
}

}  // namespace kettlecast
