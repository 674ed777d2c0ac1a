#pragma once

#include <cmath>

#include "kettlecast/numerics/power_laws.hpp"
#include "kettlecast/transfer/natural_convection.hpp"

/// Horizontal plates by three sources. "Up" is a hot plate facing up, or a cold one facing down:
/// the layer at the plate rises from it or falls off it. "Down" is a hot plate facing down, or a
/// cold one facing up, where the layer stays and slides to the edge. L = area / perimeter.
/// At Ra of 1e5 to 1e10 and Pr of water the sources differ by up to 33 % up and 35 % down.
namespace kettlecast {

/// Nusselt number up by McAdams [-]; as plate_facing_up_nusselt, with a narrow join.
///
///     Nu = 0.54 Ra^(1/4) below 1e7, 0.15 Ra^(1/3) above
///
/// Source: McAdams (1954), as plate_facing_up_nusselt. The source steps up by 6 % at 1e7; here that
///         is spread over 0.95e7 to 1.05e7.
/// Range:  1e4 < Ra < 1e11.
template <class T>
T plate_up_mcadams_nusselt(const T& rayleigh) {
  constexpr PowerLaws<2> narrow_join{{{{0.54, 0.25}, {0.15, 1.0 / 3.0}}}, {{1e7}}, 1.05};
  return joined_power_laws(T(smooth_positive(rayleigh, 1.0)), narrow_join);
}

/// Nusselt number up by the VDI Heat Atlas [-].
///
///     x  = Ra (1 + (0.322/Pr)^(11/20))^(-20/11)
///     Nu = 0.766 x^(1/5) below 7e4, 0.15 x^(1/3) above
///
/// Source: VDI Heat Atlas, 2nd ed. (2010), section F2, equations 7 to 9; Stewartson (1958). Some
///         transcriptions print the outer exponent as +20/11. The source steps down by 13 % at 7e4;
///         here that is spread over 5 % to either side, where Nu falls.
/// Range:  1 < Ra < 1e11, all Pr.
template <class T>
T plate_up_vdi_nusselt(const T& rayleigh, const T& prandtl) {
  using std::pow;
  constexpr PowerLaws<2> laws{{{{0.766, 0.2}, {0.15, 1.0 / 3.0}}}, {{7e4}}, 1.05};
  const T effect = pow(1.0 + pow(0.322 / prandtl, 11.0 / 20.0), -20.0 / 11.0);
  return joined_power_laws(T(smooth_positive(rayleigh, 1e-4) * effect), laws);
}

/// Nusselt number up by Raithby & Hollands [-].
///
///     Nu   = (Nu_l^10 + Nu_t^10)^(1/10),   Nu_l = 1.4 / ln(1 + 1.4 / Nu_T)
///     Nu_T = 0.835 C_l Ra^(1/4),           C_l  = 0.671 / (1 + (0.492/Pr)^(9/16))^(4/9)
///     Nu_t = 0.14 (1 + 0.0107 Pr) / (1 + 0.01 Pr) Ra^(1/3)
///
/// Source: Raithby & Hollands, in Rohsenow, Hartnett & Cho, Handbook of Heat Transfer, 3rd ed.
///         (1998), chapter 4; Nellis & Klein, Heat Transfer (2009), equations 6-55 to 6-58.
/// Range:  1 < Ra < 1e11, all Pr.
template <class T>
T plate_up_raithby_nusselt(const T& rayleigh, const T& prandtl) {
  using std::log;
  using std::pow;
  using std::sqrt;
  const T ra = smooth_positive(rayleigh, 1e-4);
  const T thin_layer =
      0.835 * 0.671 * sqrt(sqrt(ra)) / pow(1.0 + pow(0.492 / prandtl, 9.0 / 16.0), 4.0 / 9.0);
  const T laminar = 1.4 / log(1.0 + 1.4 / thin_layer);
  const T turbulent = 0.14 * (1.0 + 0.0107 * prandtl) / (1.0 + 0.01 * prandtl) * pow(ra, 1.0 / 3.0);
  return blend(laminar, turbulent, 10.0);
}

/// Nusselt number down by the VDI Heat Atlas [-].
///
///     Nu = 0.6 (Ra (1 + (0.492/Pr)^(9/16))^(-16/9))^(1/5)
///
/// Source: VDI Heat Atlas, 2nd ed. (2010), section F2. McAdams: plate_facing_down_nusselt.
/// Range:  1e3 < Ra f < 1e10, laminar, all Pr.
template <class T>
T plate_down_vdi_nusselt(const T& rayleigh, const T& prandtl) {
  using std::pow;
  const T effect = pow(1.0 + pow(0.492 / prandtl, 9.0 / 16.0), -16.0 / 9.0);
  return 0.6 * pow(smooth_positive(rayleigh, 1e-4) * effect, 0.2);
}

/// Nusselt number down by Raithby & Hollands [-].
///
///     Nu = 2.5 / ln(1 + 2.5 / Nu_T),   Nu_T = 0.527 Ra^(1/5) / (1 + (1.9/Pr)^(9/10))^(2/9)
///
/// Source: as plate_up_raithby_nusselt.
/// Range:  1e3 < Ra < 1e10, laminar, all Pr.
template <class T>
T plate_down_raithby_nusselt(const T& rayleigh, const T& prandtl) {
  using std::log;
  using std::pow;
  const T thin_layer = 0.527 * pow(smooth_positive(rayleigh, 1e-4), 0.2) /
                       pow(1.0 + pow(1.9 / prandtl, 0.9), 2.0 / 9.0);
  return 2.5 / log(1.0 + 2.5 / thin_layer);
}

}  // namespace kettlecast
