#pragma once

#include <algorithm>
#include <array>
#include <vector>

#include "batch_run.hpp"
#include "kettlecast/base/errors.hpp"
#include "kettlecast/kettle/coefficients.hpp"
#include "kettlecast/kettle/model.hpp"
#include "kettlecast/numerics/dual.hpp"
#include "kettlecast/simulate/lever.hpp"

/// Gives the levers of one pass their slopes; not public.
namespace kettlecast {

/// The dual number of this size.
template <class T>
inline constexpr std::size_t slopes_of = 0;
template <std::size_t N>
inline constexpr std::size_t slopes_of<Dual<N>> = N;

/// A lever of one pass. Slopes are carried per `scale`, about what is not known of the lever, so
/// that they are as large as what is not known of the result and one tolerance suits all.
struct ScaledLever {
  Lever lever;
  double scale;
};
using Levers = std::vector<ScaledLever>;

/// Size of what is usually not known of a lever: a prior spread, some seconds, a kelvin.
inline double scale_of(const Lever& lever, const Coefficients& coefficients) {
  if (lever.kind == LeverKind::coefficient) {
    const auto& card = coefficient_cards()[lever.index];
    return card.positive ? card.spread * coefficients.values()[lever.index] : card.spread;
  }
  constexpr double hands = 10.0, kelvin = 1.0, scales = 0.03;
  return lever.kind == LeverKind::addition_delay  ? hands
         : lever.kind == LeverKind::addition_mass ? scales
                                                  : kelvin;
}

/// Throws InvalidArgument unless every lever exists in a run of so many additions and phases.
inline void check(const std::vector<Lever>& levers, std::size_t additions, std::size_t phases) {
  for (const auto& lever : levers) {
    const std::size_t count = lever.kind == LeverKind::coefficient ? coefficient_count
                              : lever.kind == LeverKind::start     ? 1
                              : lever.kind == LeverKind::set_point ? phases
                                                                   : additions;
    if (lever.index < count) continue;
    throw InvalidArgument("Lever: index " + std::to_string(lever.index) + ", there are " +
                          std::to_string(count) + " of its kind in this run");
  }
}

/// The scale of a lever as slope in its place, if it is of this kind and index.
template <class T>
T seed(const Levers& levers, LeverKind kind, std::size_t index) {
  T slopes(0.0);
  if constexpr (slopes_of < T >> 0) {
    for (std::size_t k = 0; k < levers.size(); ++k) {
      const auto& [lever, scale] = levers[k];
      if (lever.kind == kind && lever.index == index) slopes.slope[static_cast<int>(k)] = scale;
    }
  }
  return slopes;
}

template <class T>
std::array<T, coefficient_count> seeded(const Coefficients& coefficients, const Levers& levers) {
  std::array<T, coefficient_count> values;
  for (std::size_t i = 0; i < coefficient_count; ++i) {
    values[i] = coefficients.values()[i] + seed<T>(levers, LeverKind::coefficient, i);
  }
  return values;
}

template <class T>
void seed_run(const Levers& levers, BatchRun<T>& run) {
  run.warm_start(seed<T>(levers, LeverKind::start, 0));
  KettleModel<T>& model = run.model();
  for (std::size_t i = 0; i < model.additions().size(); ++i) {
    auto& change = model.change(i);
    change.delay += seed<T>(levers, LeverKind::addition_delay, i);
    change.temperature += seed<T>(levers, LeverKind::addition_temperature, i);
    change.mass_factor += seed<T>(levers, LeverKind::addition_mass, i);
  }
}

/// Calls `pass(levers, first)` for the levers in groups that fit one dual number.
template <std::size_t N, class Pass>
void in_groups(const std::vector<Lever>& levers, const Coefficients& coefficients,
               const Pass& pass) {
  for (std::size_t first = 0; first < levers.size() || first == 0; first += N) {
    Levers group;
    for (std::size_t i = first; i < std::min(first + N, levers.size()); ++i) {
      group.push_back({levers[i], scale_of(levers[i], coefficients)});
    }
    pass(group, first);
  }
}

}  // namespace kettlecast
