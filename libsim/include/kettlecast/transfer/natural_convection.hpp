#pragma once

#include <cmath>

#include "kettlecast/numerics/smooth.hpp"
#include "kettlecast/transfer/fluid.hpp"

/// Natural convection. Every function takes any Rayleigh number: below about 1 it is held smoothly
/// above zero (Ra = 0 counts as 0.5), so that a stable or resting layer keeps a small coefficient.
namespace kettlecast {

/// Nusselt number of a heated plate facing up [-].
///
///     Nu = 0.54 Ra^(1/4) below 1e6, 0.15 Ra^(1/3) above 1e8, passing smoothly in ln Ra between
///     Nu = h L / k, L = area / perimeter (a quarter of the diameter of a disc)
///
/// Source: McAdams, Heat Transmission, 3rd ed. (1954); in Incropera & DeWitt, equations 9.30, 9.31,
///         which change at 1e7.
/// Range:  1e4 < Ra < 1e11, surface warmer than the fluid above it.
template <class T>
T plate_facing_up_nusselt(const T& rayleigh) {
  using std::exp;
  using std::log;
  const T ln_ra = log(smooth_positive(rayleigh, 1.0));
  const T laminar = std::log(0.54) + 0.25 * ln_ra;
  const T turbulent = std::log(0.15) + ln_ra / 3.0;
  const double start = std::log(1e6);
  const T share = smooth_step(T((ln_ra - start) / (std::log(1e8) - start)));
  return exp(laminar + share * (turbulent - laminar));
}

/// Nusselt number of a heated plate facing down [-].
///
///     Nu = 0.27 Ra^(1/4),   Nu = h L / k, L = area / perimeter
///
/// Source: McAdams (1954); in Incropera & DeWitt, equation 9.32 of the 6th edition.
/// Range:  1e5 < Ra < 1e10. Published forms differ by 54 %.
template <class T>
T plate_facing_down_nusselt(const T& rayleigh) {
  using std::sqrt;
  return 0.27 * sqrt(sqrt(smooth_positive(rayleigh, 1.0)));
}

/// Nusselt number of a vertical wall [-].
///
///     Nu = (0.825 + 0.387 Ra^(1/6) / (1 + (0.492/Pr)^(9/16))^(8/27))^2,   Nu = h H / k, H height
///
/// Source: Churchill & Chu, Int. J. Heat Mass Transfer 18 (1975) 1323; Incropera & DeWitt,
/// eq. 9.26. Range:  Ra < 1e12, all Pr.
template <class T>
T vertical_wall_nusselt(const T& rayleigh, const T& prandtl) {
  using std::pow;
  const T prandtl_term = pow(1.0 + pow(0.492 / prandtl, 9.0 / 16.0), 8.0 / 27.0);
  const T root = 0.825 + 0.387 * pow(smooth_positive(rayleigh, 1.0), 1.0 / 6.0) / prandtl_term;
  return root * root;
}

}  // namespace kettlecast
