#pragma once

#include <cmath>

#include "kettlecast/transfer/batch_time.hpp"

/// Effective conductances for batch_time.hpp where the medium changes its temperature on its way,
/// or the batch is pumped through an exchanger outside of the kettle.
///
/// All are heat flow over (temperature of the entering medium less that of the batch). Source of
/// all: D. Q. Kern, Process Heat Transfer (1950), ch. 18, in the form effectiveness times the
/// smaller capacity flow (Kays & London, Compact Heat Exchangers). Range of all: constant
/// coefficient and properties; no phase change, except that an isothermal side counts as an
/// infinite capacity flow.
namespace kettlecast {

/// Ratio of the largest to the smallest temperature difference along coil, jacket or exchanger [-].
///
///     K = exp(U A / (W C))
///
/// Source: Kern (1950), ch. 18, K1 and K2. Range: both > 0.
///
/// @param conductance    U A [W/K]
/// @param capacity_flow  mass flow times specific heat, W C [W/K]
template <class T>
T difference_ratio(const T& conductance, const T& capacity_flow) {
  using std::exp;
  return exp(conductance / capacity_flow);
}

/// Effective conductance of a medium that flows through coil or jacket of a stirred batch [W/K].
///
///     G = W C (1 - 1/K),   K = exp(U A / (W C))
///
/// Source: Kern (1950), ch. 18: non-isothermal heating and cooling medium. With the capacity flow
///         of the circulated batch it is his external exchanger with isothermal medium.
/// Range:  both > 0.
///
/// @param conductance    U A [W/K]
/// @param capacity_flow  W C of the medium (or of the circulated batch) [W/K]
template <class T>
T flowing_medium_conductance(const T& conductance, const T& capacity_flow) {
  return conductance * detail::mean_of_exponential(T(conductance / capacity_flow));
}

/// U A of coil or jacket that has a wanted effective conductance [W/K]; infinite if the medium
/// cannot bring that much.
///
///     U A = -W C ln(1 - G / (W C))
///
/// Source: inverse of flowing_medium_conductance. Range: 0 < G < W C.
///
/// @param effective      G [W/K]
/// @param capacity_flow  W C of the medium [W/K]
template <class T>
T flowing_medium_area_conductance(const T& effective, const T& capacity_flow) {
  const T share = effective / capacity_flow;
  if (!(share < 1.0)) return T(std::numeric_limits<double>::infinity());
  return effective * detail::mean_of_decay(share);
}

namespace detail {

/// Reciprocals of two capacity flows, the larger reciprocal first [K/W].
template <class T>
struct Reciprocals {
  T large, small;
};

/// Reciprocals of two capacity flows in order [K/W].
template <class T>
Reciprocals<T> reciprocals(const T& one, const T& other) {
  return one < other ? Reciprocals<T>{1.0 / one, 1.0 / other}
                     : Reciprocals<T>{1.0 / other, 1.0 / one};
}

}  // namespace detail

/// Effective conductance of an external counterflow exchanger [W/K].
///
///     G = F / (1 + F / C_max),   F = (1 - exp(-U A d)) / d,   d = 1/C_min - 1/C_max
///
/// Source: Kern (1950), ch. 18: external exchanger, non-isothermal medium, K3 and K4.
/// Range:  all > 0; the batch stirred, so that exchanger and kettle see one batch temperature.
///
/// @param conductance          U A [W/K]
/// @param medium_capacity_flow  W C of the medium [W/K]
/// @param batch_capacity_flow   w c of the circulated batch [W/K]
template <class T>
T counterflow_conductance(const T& conductance, const T& medium_capacity_flow,
                          const T& batch_capacity_flow) {
  const auto r = detail::reciprocals(medium_capacity_flow, batch_capacity_flow);
  const T passed = conductance * detail::mean_of_exponential(T(conductance * (r.large - r.small)));
  return passed / (1.0 + r.small * passed);
}

/// Effective conductance of external shell-and-tube exchangers in series: n shells with 2 n tube
/// passes [W/K].
///
///     e_1 = 2 / (1 + R + S (1 + exp(-N S)) / (1 - exp(-N S))),   S = sqrt(1 + R^2)
///     N = U A / (n C_min),   R = C_min / C_max
///
/// Source: Kern (1950), ch. 18, external 1-2 and 2-4 exchangers; effectiveness of one shell by
///         Bowman, Mueller & Nagle, Trans. ASME 62 (1940) 283; shells joined in counterflow.
/// Range:  all > 0, at least one shell; else as counterflow_conductance.
///
/// @param conductance           U A of all shells [W/K]
/// @param medium_capacity_flow  W C of the medium [W/K]
/// @param batch_capacity_flow   w c of the circulated batch [W/K]
/// @param shells                n [-]
template <class T>
T shell_and_tube_conductance(const T& conductance, const T& medium_capacity_flow,
                             const T& batch_capacity_flow, int shells) {
  using std::expm1;
  using std::sqrt;
  const auto r = detail::reciprocals(medium_capacity_flow, batch_capacity_flow);
  const T ratio = r.small / r.large;
  const T root = sqrt(1.0 + ratio * ratio);
  const T spent = -expm1(-conductance / shells * r.large * root);
  const T one = 2.0 / ((1.0 + ratio + root * (2.0 - spent) / spent) * r.large);
  // In counterflow the differences at both ends multiply from shell to shell.
  const T single = one / (1.0 - r.small * one);
  const T left = 1.0 - (r.large - r.small) * single;
  T passed(0.0);
  for (int n = 0; n < shells; ++n) passed = single + left * passed;
  return passed / (1.0 + r.small * passed);
}

}  // namespace kettlecast
