#pragma once

#include "kettlecast/transfer/two_node_modes.hpp"

/// A heated floor and the liquid on it: temperatures over time, switching off, and overshoot.
namespace kettlecast {

/// Highest temperature of the liquid and when it is reached.
template <class T>
struct TwoNodePeak {
  T time;         ///< [s]; infinite where the liquid rises for ever
  T temperature;  ///< [K]; the limit where the liquid rises for ever
};

/// Temperatures of floor and liquid after a time at constant power [K].
///
/// Source, range: of the file.
///
/// @param kettle  floor and liquid
/// @param power   P into the floor [W]
/// @param start   temperatures at the start [K]
/// @param time    >= 0 [s]
template <class T>
TwoNodeState<T> two_node_after(const TwoNodeKettle<T>& kettle, const T& power,
                               const TwoNodeState<T>& start, const T& time) {
  const auto modes = two_node_modes(kettle, power, start);
  return {start.floor + detail::mode_after(modes.floor_fast, modes.fast, time) +
              detail::mode_after(modes.floor_slow, modes.slow, time),
          detail::liquid_after(modes, start.liquid, time)};
}

/// Highest temperature that the liquid reaches at constant power, and when [K], [s].
///
///     liquid_slow exp(l_slow t) = -liquid_fast exp(l_fast t)
///
/// With no power it is the overshoot after the heat is switched off. Source, range: of the file.
///
/// @param kettle  floor and liquid
/// @param power   P into the floor, 0 after switch-off [W]
/// @param start   temperatures at the start, such as at switch-off [K]
template <class T>
TwoNodePeak<T> two_node_peak(const TwoNodeKettle<T>& kettle, const T& power,
                             const TwoNodeState<T>& start) {
  const auto modes = two_node_modes(kettle, power, start);
  const T end = detail::rise_of_liquid(modes).end;
  const T highest = detail::liquid_after(modes, start.liquid, end);
  if (!(highest > start.liquid)) return {T(0.0), start.liquid};
  return {end, highest};
}

/// Time at which the liquid first reaches a temperature from below [s]; infinite if never.
///
/// Source, range: of the file; a bracketed Newton iteration on the exact solution.
///
/// @param kettle  floor and liquid
/// @param power   P into the floor [W]
/// @param start   temperatures at the start [K]
/// @param target  temperature of the liquid; zero time if it is there already [K]
template <class T>
T two_node_time_to(const TwoNodeKettle<T>& kettle, const T& power, const TwoNodeState<T>& start,
                   const T& target) {
  if (!(start.liquid < target)) return T(0.0);
  const T never(std::numeric_limits<double>::infinity());
  const auto modes = two_node_modes(kettle, power, start);
  auto span = detail::rise_of_liquid(modes);
  if (!(detail::liquid_after(modes, start.liquid, span.end) > target)) return never;
  T width = -1.0 / modes.fast;
  for (; span.begin + width < span.end; width = 2.0 * width) {
    if (!(detail::liquid_after(modes, start.liquid, T(span.begin + width)) < target)) {
      span.end = span.begin + width;
    }
  }
  if (!(span.end < never)) return never;  // nearer to the limit than numbers can tell
  return detail::meet(modes, start.liquid, target, span);
}

/// Overshoot of the liquid after switch-off if nothing were lost [K].
///
///     dT = C_1 (T_1 - T_2) / (C_1 + C_2)
///
/// Source: heat balance. Range: upper bound if both nodes are warmer than the room.
///
/// @param kettle  floor and liquid
/// @param state   temperatures at switch-off [K]
template <class T>
T two_node_overshoot_bound(const TwoNodeKettle<T>& kettle, const TwoNodeState<T>& state) {
  return kettle.floor_capacity * (state.floor - state.liquid) /
         (kettle.floor_capacity + kettle.liquid_capacity);
}

}  // namespace kettlecast
