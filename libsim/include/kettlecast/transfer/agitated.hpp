#pragma once

#include <array>
#include <cmath>
#include <cstddef>

#include "kettlecast/numerics/smooth.hpp"

/// Films of stirred liquids at wall, floor and coil. Which agitator has constants in which source
/// is listed in film_cards.hpp.
namespace kettlecast {

/// Groups that the film of a stirred liquid depends on.
template <class T>
struct FilmGroups {
  T reynolds;         ///< rho N d^2 / mu, d diameter of the agitator, N turns per second [-]
  T prandtl;          ///< cp mu / k [-]
  T viscosity_ratio;  ///< mu of the bulk over mu at the surface [-]
};

/// Constants of Nu = C Re^a Pr^b Vi^m.
struct AgitatedConstants {
  double constant;                      ///< C [-]
  double reynolds_exponent;             ///< a [-]
  double viscosity_exponent;            ///< m [-]
  double prandtl_exponent = 1.0 / 3.0;  ///< b [-]
};

/// Constants that change at certain Reynolds numbers, lowest first.
template <std::size_t N>
struct AgitatedRegimes {
  std::array<AgitatedConstants, N> constants;
  std::array<double, N - 1> joins;  ///< Reynolds number between one regime and the next [-]
};

/// Nusselt number of the stirred liquid at wall, floor or coil [-].
///
///     Nu = C Re^a Pr^b Vi^m,   Nu = h D / k, D inner diameter of the vessel (coil: of coil_film)
///
/// Source: Chilton, Drew & Jebens, Ind. Eng. Chem. 36 (1944) 510, for the form; constants below.
/// Range:  that of the constants, Newtonian liquid. Sources differ by 10-40 %.
/// @note Re is held smoothly above 5e-4, so that the slope stays finite at rest. For a resting
///       agitator blend with natural_convection.hpp.
template <class T>
T agitated_nusselt(const FilmGroups<T>& groups, const AgitatedConstants& constants) {
  using std::pow;
  const T reynolds = smooth_positive(groups.reynolds, 1e-3);
  return constants.constant * pow(reynolds, constants.reynolds_exponent) *
         pow(groups.prandtl, constants.prandtl_exponent) *
         pow(groups.viscosity_ratio, constants.viscosity_exponent);
}

/// Nusselt number of a chart of the factor j [-].
///
///     Nu = j Pr^(1/3) Vi^0.14,   j read over the Reynolds number
///
/// Source: Kern, Process Heat Transfer (1950), figure 20.2.
/// Range:  that of the chart.
template <class T>
T chart_nusselt(const T& factor, const T& prandtl, const T& viscosity_ratio) {
  using std::pow;
  return factor * pow(prandtl, 1.0 / 3.0) * pow(viscosity_ratio, 0.14);
}

/// Nusselt number over several regimes [-], passing smoothly between 0.8 and 1.25 times each join.
template <class T, std::size_t N>
T agitated_nusselt(const FilmGroups<T>& groups, const AgitatedRegimes<N>& regimes) {
  T nusselt = agitated_nusselt(groups, regimes.constants[0]);
  for (std::size_t i = 1; i < N; ++i) {
    const T share = smooth_step(T((groups.reynolds / regimes.joins[i - 1] - 0.8) / 0.45));
    if (!(share > 0.0)) break;
    nusselt = nusselt + share * (agitated_nusselt(groups, regimes.constants[i]) - nusselt);
  }
  return nusselt;
}

/// Constants of the vessel wall.
///
/// Source: Penney & Atiemo-Obeng, Handbook of Industrial Mixing (2004), section 14.4: all but the
///         paddle. Paddle: Uhl, in Geankoplis, section 4.13 (from memory).
/// Range:  liquid as deep as the vessel is wide. Anchor Re > 12; paddle 300 < Re < 3e5.
namespace wall_film {
inline constexpr double two_thirds = 2.0 / 3.0;
inline constexpr AgitatedRegimes<2> anchor{{{{0.69, 0.5, 0.14}, {0.32, two_thirds, 0.14}}},
                                           {{100.0}}};
inline constexpr AgitatedRegimes<3> helical_ribbon{
    {{{0.94, 1.0 / 3.0, 0.14}, {0.61, 0.5, 0.14}, {0.25, two_thirds, 0.14}}}, {{13.0, 210.0}}};
inline constexpr AgitatedConstants paddle{0.36, two_thirds, 0.21};
inline constexpr AgitatedConstants disc_turbine{0.74, two_thirds, 0.14};
inline constexpr AgitatedConstants flat_turbine{0.66, two_thirds, 0.14};
inline constexpr AgitatedConstants pitched_turbine{0.45, two_thirds, 0.14};
inline constexpr AgitatedConstants hydrofoil{0.31, two_thirds, 0.14};
inline constexpr AgitatedConstants propeller{0.50, two_thirds, 0.14};
}  // namespace wall_film

/// Constants of a heated floor (bottom head). Axial agitators heat it better than the wall.
///
/// Source: Penney & Atiemo-Obeng (2004), section 14.4. None published for anchors and ribbons.
/// Range:  Re > 1e3, liquid as deep as the vessel is wide.
namespace floor_film {
inline constexpr AgitatedConstants disc_turbine{0.50, 2.0 / 3.0, 0.14};
inline constexpr AgitatedConstants flat_turbine{0.40, 2.0 / 3.0, 0.14};
inline constexpr AgitatedConstants pitched_turbine{1.08, 2.0 / 3.0, 0.14};
inline constexpr AgitatedConstants hydrofoil{0.90, 2.0 / 3.0, 0.14};
}  // namespace floor_film

/// Constants of a helical coil, Nu with the outer diameter of its tube. See coil_factor.
///
/// Source: Penney & Atiemo-Obeng (2004), section 14.4.
/// Range:  agitator a third of the vessel wide, tube 0.04 of it; else times coil_factor.
namespace coil_film {
inline constexpr AgitatedConstants disc_turbine{0.03, 2.0 / 3.0, 0.14};
inline constexpr AgitatedConstants propeller{0.016, 0.67, 0.14, 0.37};
}  // namespace coil_film

/// Constants of the vessel wall by another source.
///
/// Source: Uhl and others, in Geankoplis, Transport Processes and Unit Operations, section 4.13
///         (from memory); the baffled disc turbine is that of its example 4.13-1.
/// Range:  paddle 300-3e5, pitched 80-200, disc turbine 40-3e5 (baffled 500-3e5), anchor 10-4e4,
///         ribbon 8-1e5 in Re. Anchor and ribbon differ from Penney's by 15-45 %.
namespace geankoplis_wall_film {
inline constexpr AgitatedConstants paddle = wall_film::paddle;
inline constexpr AgitatedConstants pitched_turbine{0.53, 2.0 / 3.0, 0.24};
inline constexpr AgitatedConstants disc_turbine{0.54, 2.0 / 3.0, 0.14};
inline constexpr AgitatedConstants baffled_disc_turbine{0.74, 2.0 / 3.0, 0.14};
inline constexpr AgitatedRegimes<2> anchor{{{{1.0, 0.5, 0.18}, {0.36, 2.0 / 3.0, 0.18}}},
                                           {{300.0}}};
inline constexpr AgitatedConstants helical_ribbon{0.633, 0.5, 0.18};
}  // namespace geankoplis_wall_film

/// Constants of a flat paddle, coil with the inner diameter of the vessel in Nu.
///
/// Source: Chilton, Drew & Jebens (1944), as drawn in Kern (1950), figure 20.2 (exponents from
///         memory). At Re 1.6e5 the chart is read 4 % higher (wall) and 16 % higher (coil).
/// Range:  300 < Re < 3e5.
namespace kern_paddle_film {
inline constexpr AgitatedConstants wall{0.36, 2.0 / 3.0, 0.14};
inline constexpr AgitatedConstants coil{0.87, 0.62, 0.14};
}  // namespace kern_paddle_film

}  // namespace kettlecast
