#pragma once

#include <algorithm>
#include <cstddef>
#include <vector>

#include "kettlecast/numerics/dual.hpp"
#include "kettlecast/numerics/integrator.hpp"

/// States of dual numbers as the integrator sees them: plain numbers, all values first, then all
/// slopes by the first parameter, by the second... Values alone then steer the steps, and a watch
/// on plain numbers sees the same value as without slopes.
namespace kettlecast {

/// Number of plain numbers that one T takes.
template <class T>
inline constexpr std::size_t packed_size = 1;
template <std::size_t N>
inline constexpr std::size_t packed_size<Dual<N>> = N + 1;

/// Writes a state as plain numbers.
inline void pack(const std::vector<double>& x, State& packed) { packed = x; }
/// Reads a state back.
inline void unpack(const State& packed, std::vector<double>& x) { x = packed; }

/// As above, values first.
template <std::size_t N>
void pack(const std::vector<Dual<N>>& x, State& packed) {
  const std::size_t n = x.size();
  packed.resize(n * (N + 1));
  for (std::size_t i = 0; i < n; ++i) {
    packed[i] = x[i].value;
    for (std::size_t k = 0; k < N; ++k) packed[(k + 1) * n + i] = x[i].slope[static_cast<int>(k)];
  }
}

/// As above, values first.
template <std::size_t N>
void unpack(const State& packed, std::vector<Dual<N>>& x) {
  const std::size_t n = packed.size() / (N + 1);
  x.resize(n);
  for (std::size_t i = 0; i < n; ++i) {
    x[i].value = packed[i];
    for (std::size_t k = 0; k < N; ++k) x[i].slope[static_cast<int>(k)] = packed[(k + 1) * n + i];
  }
}

/// Moves slopes at a fixed time along the flow of a state, by the slopes of a time.
inline void follow(const std::vector<double>&, double, std::vector<double>&) {}
/// x' + dx/dt time', with x' the slopes.
template <std::size_t N>
void follow(const std::vector<Dual<N>>& rates, const Dual<N>& time, std::vector<Dual<N>>& x) {
  for (std::size_t i = 0; i < x.size(); ++i) {
    x[i].slope += rates[i].value * time.slope;
  }
}

/// Whether a number has slopes other than zero.
inline bool has_slopes(double) { return false; }
/// Whether any slope differs from zero.
template <std::size_t N>
bool has_slopes(const Dual<N>& u) {
  return (u.slope != 0.0).any();
}

/// A number with the slopes of one and the value of another.
inline double with_value(double, double value) { return value; }
/// As above.
template <std::size_t N>
Dual<N> with_value(Dual<N> slopes, double value) {
  slopes.value = value;
  return slopes;
}

/// Slopes of the time at which a watched value crosses zero, from a start that does not move.
///
///     dt/dp = -(dg/dp at a fixed time) / (dg/dt),   dg/dt along the rates
///
/// A value that only touches zero has no such slope: 0 is given.
template <std::size_t N, class Value>
Dual<N> crossing_slopes(const Value& value, const std::vector<Dual<N>>& x,
                        const std::vector<Dual<N>>& rates) {
  const Dual<N> at = value(x);
  std::vector<Dual<N>> still(x), moving(x);
  for (std::size_t i = 0; i < x.size(); ++i) {
    still[i].slope.setZero();
    moving[i].slope.setZero();
    moving[i].slope[0] = rates[i].value;
  }
  const double speed = value(moving).slope[0] - value(still).slope[0];
  Dual<N> time;
  if (speed != 0.0) time.slope = -at.slope / speed;
  return time;
}

}  // namespace kettlecast
