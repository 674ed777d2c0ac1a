#pragma once

#include <cmath>
#include <limits>

/// Times and temperatures of a batch that has one temperature: sums made before simulating.
///
/// One equation holds all of D. Q. Kern's agitated batches with coil or jacket, a batch under
/// constant power that loses heat to the room, and a lumped body in a bath.
namespace kettlecast {

/// A well-stirred batch between a medium (or the room) and a constant source of heat.
template <class T>
struct LumpedBatch {
  T heat_capacity;  ///< C, product and metal: sum of m cp, > 0 [J/K]
  T conductance;    ///< G to the medium: U A, or an effective one of batch_exchange.hpp; >= 0 [W/K]
  T medium;         ///< temperature T_m of medium or room, of either side [K]
  T power;          ///< P into the batch besides, 0 for none [W]
};

namespace detail {

/// -log(1 - x) / x, 1 at zero [-].
template <class T>
T mean_of_decay(const T& x) {
  using std::log1p;
  if (x * x < 1e-12) return T(1.0 + x * (0.5 + x / 3.0));
  return T(-log1p(-x) / x);
}

/// (1 - exp(-y)) / y, 1 at zero [-].
template <class T>
T mean_of_exponential(const T& y) {
  using std::expm1;
  if (y * y < 1e-12) return T(1.0 - y * (0.5 - y / 6.0));
  return T(-expm1(-y) / y);
}

}  // namespace detail

/// Net heat flow into the batch at a temperature [W].
template <class T>
T net_heat_flow(const LumpedBatch<T>& batch, const T& temperature) {
  return batch.power + batch.conductance * (batch.medium - temperature);
}

/// Temperature that the batch tends to [K]; infinite with power and no conductance.
///
///     T_s = T_m + P / G
///
/// Source: heat balance at rest. Range: G > 0.
template <class T>
T steady_temperature(const LumpedBatch<T>& batch) {
  return batch.medium + batch.power / batch.conductance;
}

/// Time in which a batch gets from one temperature to another, up or down [s]; infinite if never.
///
///     t = -(C / G) ln(1 - G (T - T_0) / q_0),   q_0 = P + G (T_m - T_0)
///     without power: ln((T_m - T_0) / (T_m - T)) = G t / C;   without losses: t = C (T - T_0) / P
///
/// Source: D. Q. Kern, Process Heat Transfer (1950), ch. 18, heating and cooling of agitated
///         batches with isothermal medium; with power by integration of the heat balance.
/// Range:  constant properties and conductance, no boiling.
///
/// @param batch   capacity, conductance, medium and power
/// @param start   T_0 [K]
/// @param target  T [K]
template <class T>
T time_to_temperature(const LumpedBatch<T>& batch, const T& start, const T& target) {
  const T rise = target - start;
  if (!(rise > 0.0) && !(rise < 0.0)) return T(0.0);
  const T heat_flow = net_heat_flow(batch, start);
  const T never(std::numeric_limits<double>::infinity());
  if (!(heat_flow * rise > 0.0)) return never;
  const T share = batch.conductance * rise / heat_flow;
  if (!(share < 1.0)) return never;
  return batch.heat_capacity * rise / heat_flow * detail::mean_of_decay(share);
}

/// Temperature of a batch after a time [K].
///
///     T = T_0 + q_0 (t / C) (1 - exp(-y)) / y,   y = G t / C
///
/// Source, range: as time_to_temperature, of which it is the inverse.
///
/// @param batch  capacity, conductance, medium and power
/// @param start  T_0 [K]
/// @param time   t, >= 0 [s]
template <class T>
T temperature_after(const LumpedBatch<T>& batch, const T& start, const T& time) {
  const T decay = batch.conductance * time / batch.heat_capacity;
  return start + net_heat_flow(batch, start) * time / batch.heat_capacity *
                     detail::mean_of_exponential(decay);
}

/// Constant power that brings a batch to a temperature in a time, losses included [W].
///
///     P = C (T - T_0) y / (t (1 - exp(-y))) - G (T_m - T_0)
///
/// Source, range: as temperature_after. The power in `batch` is not looked at.
///
/// @param batch   capacity, conductance and medium
/// @param start   T_0 [K]
/// @param target  T [K]
/// @param time    t, > 0 [s]
template <class T>
T required_power(const LumpedBatch<T>& batch, const T& start, const T& target, const T& time) {
  const T decay = batch.conductance * time / batch.heat_capacity;
  return batch.heat_capacity * (target - start) / (time * detail::mean_of_exponential(decay)) -
         batch.conductance * (batch.medium - start);
}

/// Conductance to a medium that brings a batch to a temperature in a time [W/K]; infinite if none
/// does.
///
///     G = (C / t) ln((T_m - T_0) / (T_m - T))
///
/// Source, range: as time_to_temperature. U A of coil or jacket if the medium stays at T_m; see
///         flowing_medium_area_conductance if it does not. The power in `batch` counts as zero,
///         its conductance is not looked at.
///
/// @param batch   capacity and medium
/// @param start   T_0 [K]
/// @param target  T [K]
/// @param time    t, > 0 [s]
template <class T>
T required_conductance(const LumpedBatch<T>& batch, const T& start, const T& target,
                       const T& time) {
  const LumpedBatch<T> unit{batch.heat_capacity, batch.heat_capacity, batch.medium, T(0.0)};
  return batch.heat_capacity * time_to_temperature(unit, start, target) / time;
}

}  // namespace kettlecast
