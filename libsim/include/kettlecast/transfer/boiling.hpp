#pragma once

#include <cmath>

#include "kettlecast/base/constants.hpp"
#include "kettlecast/numerics/smooth.hpp"

namespace kettlecast {

/// Properties of a boiling liquid at saturation.
template <class T>
struct BoilingLiquid {
  T density;          ///< of the liquid [kg/m3]
  T vapour_density;   ///< [kg/m3]
  T specific_heat;    ///< of the liquid [J/(kg K)]
  T latent_heat;      ///< [J/kg]
  T surface_tension;  ///< [N/m]
  T viscosity;        ///< of the liquid [Pa s]
  T prandtl;          ///< of the liquid [-]
};

/// What the surface and the kind of liquid add to Rohsenow's equation.
struct BoilingSurface {
  double constant = 0.0132;       ///< C_sf; 0.0132 polished stainless steel with water [-]
  double prandtl_exponent = 1.0;  ///< s; 1.0 for water in most books, 1.7 in others [-]
};

/// Heat flux of nucleate pool boiling [W/m2].
///
///     q = mu h_fg sqrt(g (rho_l - rho_v) / sigma) (cp dT / (C_sf h_fg Pr^s))^3
///
/// Source: Rohsenow, Trans. ASME 74 (1952) 969; Incropera & DeWitt, equation 10.5.
/// Range:  0 < dT below the critical flux; fluxes are good within a factor of 2.
///
/// @param excess   surface less saturation temperature dT [K]; zero flux at dT <= 0
/// @note Twice continuously differentiable at dT = 0.
template <class T>
T rohsenow_heat_flux(const BoilingLiquid<T>& liquid, const T& excess,
                     const BoilingSurface& surface) {
  using std::pow;
  using std::sqrt;
  if (!(excess > 0.0)) return T(0.0);
  const T spacing =
      sqrt(constants::gravity * (liquid.density - liquid.vapour_density) / liquid.surface_tension);
  const T ratio =
      liquid.specific_heat * excess /
      (surface.constant * liquid.latent_heat * pow(liquid.prandtl, surface.prandtl_exponent));
  return liquid.viscosity * liquid.latent_heat * spacing * ratio * ratio * ratio;
}

/// Excess temperature that passes a heat flux by nucleate boiling [K].
///
///     dT = C_sf h_fg Pr^s / cp (q / (mu h_fg) sqrt(sigma / (g (rho_l - rho_v))))^(1/3)
///
/// Source: rohsenow_heat_flux, solved for dT.
/// Range:  as there; within 25 %, as fluxes are within a factor of 2.
///
/// @param heat_flux  q, >= 0 [W/m2]
template <class T>
T rohsenow_excess(const BoilingLiquid<T>& liquid, const T& heat_flux,
                  const BoilingSurface& surface) {
  using std::pow;
  return pow(heat_flux / rohsenow_heat_flux(liquid, T(1.0), surface), 1.0 / 3.0);
}

/// Critical heat flux with a constant of one's own choice [W/m2].
///
///     q_c = K h_fg rho_v^(1/2) (sigma g (rho_l - rho_v))^(1/4)
///
/// Source: form of Kutateladze (1948) and Zuber (1958). K is 0.131 (Zuber, pi/24), 0.149 (Lienhard
///         & Dhir 1973, large plates; Incropera & DeWitt, equation 10.6), 0.18 (Janna; Rohsenow's
///         own reading of Zuber): sources differ by 37 %.
/// Range:  large clean surface, pressure well below the critical one.
///
/// @param constant  K [-]
template <class T>
T critical_heat_flux(const BoilingLiquid<T>& liquid, double constant) {
  using std::sqrt;
  const T lift =
      liquid.surface_tension * constants::gravity * (liquid.density - liquid.vapour_density);
  return constant * liquid.latent_heat * sqrt(liquid.vapour_density) * sqrt(sqrt(lift));
}

/// Critical heat flux of pool boiling on a large plate [W/m2].
///
///     q_c = (pi/24) h_fg rho_v^(1/2) (sigma g (rho_l - rho_v))^(1/4) (1 + rho_v / rho_l)^(1/2)
///
/// Source: Zuber (1958).
/// Range:  large clean horizontal surface; 0.149 instead of pi/24 is common.
template <class T>
T critical_heat_flux(const BoilingLiquid<T>& liquid) {
  using std::sqrt;
  return critical_heat_flux(liquid, constants::pi / 24.0) *
         sqrt(1.0 + liquid.vapour_density / liquid.density);
}

/// Nucleate heat flux that levels off at the critical flux instead of passing it [W/m2].
///
///     q = q_R / (1 + (q_R / q_c)^4)^(1/4)
///
/// Source: Rohsenow and Zuber as above; the smooth limit is ours.
/// Range:  any dT. The fall beyond the critical point (film boiling) is left out.
template <class T>
T nucleate_heat_flux(const BoilingLiquid<T>& liquid, const T& excess,
                     const BoilingSurface& surface) {
  const T limit = critical_heat_flux(liquid);
  return limit * saturating(T(rohsenow_heat_flux(liquid, excess, surface) / limit));
}

/// Water that boils off at a heat flow, the level kept by a feed or not [kg/s].
///
///     m = Q / (h_fg + cp (T_b - T_f))
///
/// Source: balance of heat and mass of a boiling vessel.
/// Range:  Q >= 0, what is left of the heat after losses.
///
/// @param heat_flow    into the boiling liquid Q [W]
/// @param latent_heat  h_fg [J/kg]
/// @param feed_heat    cp (T_b - T_f), heat that brings the feed to the boil; 0 without feed [J/kg]
template <class T>
T boil_off_rate(const T& heat_flow, const T& latent_heat, const T& feed_heat) {
  return heat_flow / (latent_heat + feed_heat);
}

}  // namespace kettlecast
