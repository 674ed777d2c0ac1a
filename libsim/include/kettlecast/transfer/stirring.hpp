#pragma once

#include <cmath>

#include "kettlecast/numerics/smooth.hpp"
#include "kettlecast/transfer/impeller.hpp"

/// Power of an agitator, which ends as heat in the product.
namespace kettlecast {

/// Constants of an agitator for power and shear rate.
struct StirringConstants {
  double laminar;    ///< K_p = Np Re while the flow is laminar [-]
  double turbulent;  ///< Np while the flow is turbulent [-]
  double join;       ///< exponent of the blend between the two [-]
  double shear;      ///< k_s, shear rate over turns per second [-]
};

/// Constants of a shape.
///
/// Source: K_p and Np of anchor, paddle, pitched turbine and propeller: McCabe, Smith & Harriott,
///         Unit Operations, table of K_L and K_T (from memory). Disc turbine: K_p 70, Np 5.2, k_s
///         11.5 and k_s 9.5 of the pitched turbine and 5 of the hydrofoil: reference sheet MET-F845
///         on power numbers of non-Newtonian liquids (other sources for Np: 5.0-6). Flat turbine,
///         hydrofoil, K_p 350 of the ribbon (pitch as long as the diameter) and the other k_s:
///         Handbook of Industrial Mixing (from memory). Np 0.35 of the ribbon: as the anchor,
///         common practice, no source. Exponents of the blend: ours; anchors and ribbons pass
///         slowly.
/// Range:  anchor and ribbon near the wall, others a third of the vessel wide with baffles. Proved
///         to 10-30 %.
inline StirringConstants stirring_constants(Impeller impeller) {
  switch (impeller) {
    case Impeller::anchor:
      return {300.0, 0.35, 1.0, 25.0};
    case Impeller::paddle:
      return {36.5, 1.7, 4.0, 11.0};
    case Impeller::helical_ribbon:
      return {350.0, 0.35, 1.0, 30.0};
    case Impeller::disc_turbine:
      return {70.0, 5.2, 4.0, 11.5};
    case Impeller::flat_turbine:
      return {50.0, 3.0, 4.0, 11.5};
    case Impeller::pitched_turbine:
      return {44.5, 1.27, 4.0, 9.5};
    case Impeller::hydrofoil:
      return {43.0, 0.30, 4.0, 5.0};
    default:
      return {41.0, 0.32, 4.0, 10.0};
  }
}

/// Power number [-].
///
///     Np = ((K_p / Re)^j + Np_t^j)^(1/j)
///
/// Source: K_p / Re for laminar and a constant for turbulent flow: Rushton, Costich & Everett,
/// Chem.
///         Eng. Prog. 46 (1950) 395; the smooth blend is ours.
/// Range:  Re > 0. Measured curves of baffled turbines dip by up to 35 % near Re 100.
template <class T>
T power_number(const T& reynolds, const StirringConstants& constants) {
  return blend(T(constants.laminar / reynolds), T(constants.turbulent), constants.join);
}

/// Power of an agitator of known power number [W].
///
///     P = Np rho N^3 d^5
///
/// Source: definition of the power number.
/// Range:  N >= 0.
///
/// @param number    Np [-]
/// @param density   rho [kg/m3]
/// @param speed     turns per second N [1/s]
/// @param diameter  of the agitator d [m]
template <class T>
T stirring_power(const T& number, const T& density, double speed, double diameter) {
  const double square = diameter * diameter;
  return number * density * (speed * speed * speed * square * square * diameter);
}

/// Power of an agitator, all of which becomes heat in the product; zero at rest [W].
///
///     P = ((K_p mu N^2 d^3)^j + (Np_t rho N^3 d^5)^j)^(1/j)
///
/// Source: power_number times rho N^3 d^5, written so that nothing is divided by the speed.
/// Range:  N >= 0. Friction in seals and gears is outside the product.
///
/// @param viscosity  of the bulk, for power-law liquids the apparent one mu [Pa s]
template <class T>
T stirring_power(const StirringConstants& constants, const T& density, const T& viscosity,
                 double speed, double diameter) {
  const T laminar =
      constants.laminar * viscosity * (speed * speed * diameter * diameter * diameter);
  const T turbulent = stirring_power(T(constants.turbulent), density, speed, diameter);
  return blend(laminar, turbulent, constants.join);
}

/// Mean over the cycles of an agitator that runs part of the time [unit of the values].
///
///     v = s v_on + (1 - s) v_off
///
/// Source: arithmetic mean over time.
/// Range:  cycles short against the time in which the product warms, so that the wall and the
///         product keep their temperatures over a cycle. For stirring heat v_off = 0.
/// @note Reversing agitation: blades pass as often as when they turn one way, so films, contact
/// time
///       and power are taken as those of steady turning. Just after a reversal the liquid still
///       runs against the blade; that lasts about one turn and is left out (common practice, no
///       source).
///
/// @param on        value while the agitator turns
/// @param off       value while it rests
/// @param on_share  share of the time in which it turns s, 0 to 1 [-]
template <class T>
T mean_over_cycle(const T& on, const T& off, double on_share) {
  return on_share * on + (1.0 - on_share) * off;
}

}  // namespace kettlecast
