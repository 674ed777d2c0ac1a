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
/// Source: Churchill & Chu, Int. J. Heat Mass Transfer 18 (1975) 1323, equation 9; Incropera &
///         DeWitt, equation 9.26.
/// Range:  Ra < 1e12, all Pr.
template <class T>
T vertical_wall_nusselt(const T& rayleigh, const T& prandtl) {
  using std::pow;
  const T prandtl_term = pow(1.0 + pow(0.492 / prandtl, 9.0 / 16.0), 8.0 / 27.0);
  const T root = 0.825 + 0.387 * pow(smooth_positive(rayleigh, 1.0), 1.0 / 6.0) / prandtl_term;
  return root * root;
}

/// Nusselt number of a vertical wall in laminar flow [-].
///
///     Nu = 0.68 + 0.670 Ra^(1/4) / (1 + (0.492/Pr)^(9/16))^(4/9)
///
/// Source: Churchill & Chu (1975), equation 8; Incropera & DeWitt, equation 9.27. Slightly better
///         than vertical_wall_nusselt as long as the flow is laminar.
/// Range:  Ra < 1e9, all Pr.
template <class T>
T vertical_wall_laminar_nusselt(const T& rayleigh, const T& prandtl) {
  using std::pow;
  using std::sqrt;
  return 0.68 + 0.670 * sqrt(sqrt(smooth_positive(rayleigh, 1e-4))) /
                    pow(1.0 + pow(0.492 / prandtl, 9.0 / 16.0), 4.0 / 9.0);
}

/// Nusselt number of a turbulent wall, whose coefficient does not depend on the height [-].
///
///     Nu = 0.13 Ra^(1/3)
///
/// Source: McAdams (1954), also Bayley (1955) with 0.10; in Som, Introduction to Heat Transfer,
///         example 5.7.
/// Range:  1e9 < Ra < 1e12, Pr of gases and water. Rules for turbulent walls differ by 25 %.
template <class T>
T turbulent_wall_nusselt(const T& rayleigh) {
  using std::pow;
  return 0.13 * pow(smooth_positive(rayleigh, 1.0), 1.0 / 3.0);
}

/// Nusselt number of a sphere [-].
///
///     Nu = 2 + 0.589 Ra^(1/4) / f^(4/9) (1 + 7.44e-8 Ra / f^(16/9))^(1/12)
///     f  = 1 + (0.469/Pr)^(9/16),   Nu = h D / k
///
/// Source: Churchill, in Heat Exchanger Design Handbook (1983), section 2.5.7.
/// Range:  Ra < 1e13; 2 is pure conduction into still surroundings.
template <class T>
T sphere_nusselt(const T& rayleigh, const T& prandtl) {
  using std::pow;
  using std::sqrt;
  const T ra = smooth_positive(rayleigh, 1e-4);
  const T f = 1.0 + pow(0.469 / prandtl, 9.0 / 16.0);
  return 2.0 + 0.589 * sqrt(sqrt(ra)) / pow(f, 4.0 / 9.0) *
                   pow(1.0 + 7.44e-8 * ra / pow(f, 16.0 / 9.0), 1.0 / 12.0);
}

}  // namespace kettlecast
