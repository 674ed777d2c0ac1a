#pragma once

#include <cmath>
#include <limits>

#include "kettlecast/transfer/batch_time.hpp"

/// A heated floor and the liquid on it as two linear nodes, solved exactly.
///
///     C_1 T_1' = P - G (T_1 - T_2) - L_1 (T_1 - T_r)
///     C_2 T_2' =     G (T_1 - T_2) - L_2 (T_2 - T_r)
///
/// In u = sqrt(C) (T - T_r) the matrix is symmetric, so that its modes stand at right angles and
/// nothing is lost where the eigenvalues are nearly equal or far apart; (exp(l t) - 1) / l takes
/// the place of exp(l t), so that a kettle without losses needs no case of its own.
///
/// Source: linear systems with constant coefficients; spectral theorem of symmetric matrices.
/// Range:  constant capacities, conductance, losses and power; G > 0.
namespace kettlecast {

/// Floor and liquid.
template <class T>
struct TwoNodeKettle {
  T floor_capacity;   ///< C_1 [J/K]
  T liquid_capacity;  ///< C_2 [J/K]
  T conductance;      ///< G between them, > 0 [W/K]
  T floor_loss;       ///< L_1 from the floor to the room, >= 0 [W/K]
  T liquid_loss;      ///< L_2 from the liquid to the room, >= 0 [W/K]
  T surroundings;     ///< T_r [K]
};

/// Temperatures of both nodes [K].
template <class T>
struct TwoNodeState {
  T floor, liquid;
};

/// Modes of a run at constant power: the liquid is start + sum of liquid_i (exp(l_i t) - 1) / l_i.
template <class T>
struct TwoNodeModes {
  T fast, slow;                ///< eigenvalues, <= 0 [1/s]
  T floor_fast, floor_slow;    ///< share of each mode in the floor's rate at the start [K/s]
  T liquid_fast, liquid_slow;  ///< share of each mode in the liquid's rate at the start [K/s]
};

/// Eigenvalues and modes of a run that starts at a state [1/s], [K/s].
///
/// Source, range: of the file. The slow eigenvalue is determinant over fast one: no cancellation.
///
/// @param kettle  floor and liquid
/// @param power   P into the floor [W]
/// @param start   temperatures at the start [K]
template <class T>
TwoNodeModes<T> two_node_modes(const TwoNodeKettle<T>& kettle, const T& power,
                               const TwoNodeState<T>& start) {
  using std::sqrt;
  const T root_1 = sqrt(kettle.floor_capacity), root_2 = sqrt(kettle.liquid_capacity);
  const T coupling = kettle.conductance / (root_1 * root_2);
  const T floor_decay = (kettle.conductance + kettle.floor_loss) / kettle.floor_capacity;
  const T liquid_decay = (kettle.conductance + kettle.liquid_loss) / kettle.liquid_capacity;
  const T half = 0.5 * (floor_decay - liquid_decay);
  const T spread = sqrt(half * half + coupling * coupling);
  const T fast = -(0.5 * (floor_decay + liquid_decay) + spread);
  const T slow = (kettle.conductance * (kettle.floor_loss + kettle.liquid_loss) +
                  kettle.floor_loss * kettle.liquid_loss) /
                 (kettle.floor_capacity * kettle.liquid_capacity * fast);
  // Slow mode along (cosine, sine), fast mode along (-sine, cosine).
  const T slope = half > 0.0 ? T((half + spread) / coupling) : T(coupling / (spread - half));
  const T cosine = 1.0 / sqrt(1.0 + slope * slope), sine = slope * cosine;
  const T above_1 = start.floor - kettle.surroundings;
  const T above_2 = start.liquid - kettle.surroundings;
  const T passed = kettle.conductance * (start.floor - start.liquid);
  const T rate_1 = (power - passed - kettle.floor_loss * above_1) / root_1;
  const T rate_2 = (passed - kettle.liquid_loss * above_2) / root_2;
  const T in_fast = cosine * rate_2 - sine * rate_1;
  // By the eigenvalue and not by the rates: exactly zero without losses and power.
  const T in_slow =
      slow * (cosine * root_1 * above_1 + sine * root_2 * above_2) + cosine * power / root_1;
  return {fast,
          slow,
          -sine * in_fast / root_1,
          cosine * in_slow / root_1,
          cosine * in_fast / root_2,
          sine * in_slow / root_2};
}

namespace detail {

/// What a mode adds after a time, rate (exp(l t) - 1) / l; its limit for an infinite time.
template <class T>
T mode_after(const T& rate, const T& eigenvalue, const T& time) {
  if (!(rate > 0.0) && !(rate < 0.0)) return T(0.0);
  if (!(eigenvalue < 0.0)) return rate * time;
  if (std::numeric_limits<double>::max() < time) return T(-rate / eigenvalue);
  return rate * time * mean_of_exponential(T(-eigenvalue * time));
}

/// Temperature of the liquid after a time [K].
template <class T>
T liquid_after(const TwoNodeModes<T>& modes, const T& start, const T& time) {
  return start + mode_after(modes.liquid_fast, modes.fast, time) +
         mode_after(modes.liquid_slow, modes.slow, time);
}

/// Span of time in which the liquid gets hotter; it turns once at most.
template <class T>
struct Rise {
  T begin, end;
};

/// When the liquid gets hotter [s]; an empty span if it only cools.
template <class T>
Rise<T> rise_of_liquid(const TwoNodeModes<T>& modes) {
  using std::log;
  const T zero(0.0), forever(std::numeric_limits<double>::infinity());
  const T a = modes.liquid_slow, b = modes.liquid_fast;
  if (!(a > 0.0) && !(b > 0.0)) return {zero, zero};
  if (!(a < 0.0) && !(b < 0.0)) return {zero, forever};
  if (!(a > 0.0) && !(a < 0.0)) return b > 0.0 ? Rise<T>{zero, forever} : Rise<T>{zero, zero};
  const T turn = log(T(-b / a)) / (modes.slow - modes.fast);
  const T later = turn > 0.0 ? turn : zero;
  return a > 0.0 ? Rise<T>{later, forever} : Rise<T>{zero, later};
}

/// Where a rising liquid meets a temperature between two times: Newton, kept in its bracket.
template <class T>
T meet(const TwoNodeModes<T>& modes, const T& start, const T& target, Rise<T> span) {
  using std::exp;
  T time = 0.5 * (span.begin + span.end);
  for (int i = 0; i < 200; ++i) {
    const T miss = liquid_after(modes, start, time) - target;
    (miss > 0.0 ? span.end : span.begin) = time;
    const T slope = modes.liquid_fast * exp(T(modes.fast * time)) +
                    modes.liquid_slow * exp(T(modes.slow * time));
    T next = time - miss / slope;
    if (!(next > span.begin && next < span.end)) next = 0.5 * (span.begin + span.end);
    const T step = next - time;
    time = next;
    if (step * step <= 1e-30 * time * time) break;
  }
  return time;
}

}  // namespace detail

}  // namespace kettlecast
