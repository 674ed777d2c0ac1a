#pragma once

#include <array>
#include <cmath>
#include <cstddef>
#include <vector>

#include "kettlecast/base/errors.hpp"
#include "kettlecast/properties/browning.hpp"
#include "kettlecast/properties/lethality.hpp"

/// Rates of change with temperature, added up along a series, and D and z from a table.
namespace kettlecast {

/// Integral over a series of times of the mean of a quantity between neighbours.
///
///     F = sum over i of (t[i+1] - t[i]) m(v[i], v[i+1])
///
/// Source: sum of integrals. Range: as the mean.
///
/// @param times   never falling [s]
/// @param values  one per time
/// @param mean    mean of what is summed over a line from one value to the next
/// @throws InvalidArgument if the series differ in length or a time falls
template <class T, class Mean>
T sum_along(const std::vector<double>& times, const std::vector<T>& values, Mean&& mean) {
  if (times.size() != values.size()) {
    throw InvalidArgument("series: as many values as times are needed");
  }
  T sum(0.0);
  for (std::size_t i = 0; i + 1 < times.size(); ++i) {
    const double step = times[i + 1] - times[i];
    if (!(step >= 0.0)) throw InvalidArgument("series: times must be numbers that never fall");
    if (step > 0.0) sum = sum + step * mean(values[i], values[i + 1]);
  }
  return sum;
}

/// Process time: time at the reference temperature that kills as much as a series does [s].
///
///     F = integral of 10^((T - Tref) / z) dt
///
/// exact for temperatures that are linear between neighbours; a trapezium rule is not.
///
/// Source: Bigelow et al. (1920), general method; see lethality::mean_lethal_rate.
/// Range:  as lethality::lethal_rate.
///
/// @param times         never falling [s]
/// @param temperatures  one per time [K]
/// @param reference     Tref [K]
/// @param z             [K]
/// @throws InvalidArgument if the series differ in length or a time falls
template <class T>
T process_time(const std::vector<double>& times, const std::vector<T>& temperatures,
               const T& reference, const T& z) {
  return sum_along(times, temperatures, [&](const T& from, const T& to) {
    return lethality::mean_lethal_rate(from, to, reference, z);
  });
}

/// Time at the reference temperature that browns as much as a series does [s].
///
///     t = integral of exp(-(E / R) (1/T - 1/Tref)) dt
///
/// Temperatures are linear between neighbours; each piece is summed at five Gauss points, to 1e-6
/// of it up to 30 K apart.
///
/// Source: Arrhenius; Abramowitz & Stegun (1964), table 25.4, for the points.
/// Range:  as browning::rate. An indicator that compares runs, not a measurement of colour.
///
/// @param times              never falling [s]
/// @param temperatures       one per time [K]
/// @param reference          Tref [K]
/// @param activation_energy  E [J/mol]
/// @throws InvalidArgument if the series differ in length or a time falls
template <class T>
T browning_time(const std::vector<double>& times, const std::vector<T>& temperatures,
                const T& reference, const T& activation_energy) {
  constexpr std::array<double, 3> points{0.0, 0.538469310105683, 0.906179845938664};
  constexpr std::array<double, 3> weights{0.284444444444444, 0.239314335249683, 0.118463442528095};
  return sum_along(times, temperatures, [&](const T& from, const T& to) {
    const T middle = 0.5 * (from + to), half = 0.5 * (to - from);
    T mean = weights[0] * browning::rate(middle, reference, activation_energy);
    for (std::size_t i = 1; i < points.size(); ++i) {
      const T low = browning::rate(T(middle - points[i] * half), reference, activation_energy);
      const T high = browning::rate(T(middle + points[i] * half), reference, activation_energy);
      mean = mean + weights[i] * (low + high);
    }
    return mean;
  });
}

/// D at a reference temperature, and z.
struct DeathTimes {
  double decimal_reduction;  ///< D at the reference [s]
  double z;                  ///< [K]
};

/// D and z that fit decimal reduction times at several temperatures best.
///
///     log10 D = log10 Dref - (T - Tref) / z   by least squares of log10 D
///
/// Source: linear regression; Stumbo (1973), chapter 7, for the straight line.
/// Range:  D > 0 falling with temperature.
///
/// @param temperatures        two different ones or more [K]
/// @param decimal_reductions  D at each [s]
/// @param reference           Tref [K]
/// @throws InvalidArgument if there are too few, or D does not fall with temperature
inline DeathTimes fit_death_times(const std::vector<double>& temperatures,
                                  const std::vector<double>& decimal_reductions, double reference) {
  const auto count = static_cast<double>(temperatures.size());
  if (temperatures.size() != decimal_reductions.size() || temperatures.empty()) {
    throw InvalidArgument("death times: one D for each temperature is needed");
  }
  double x = 0.0, y = 0.0, xx = 0.0, xy = 0.0;
  for (std::size_t i = 0; i < temperatures.size(); ++i) {
    if (!(decimal_reductions[i] > 0.0)) throw InvalidArgument("death times: D must be above 0 s");
    const double rise = temperatures[i] - reference, level = std::log10(decimal_reductions[i]);
    x += rise / count;
    y += level / count;
    xx += rise * rise / count;
    xy += rise * level / count;
  }
  const double slope = (xy - x * y) / (xx - x * x);
  if (!(slope < 0.0)) throw InvalidArgument("death times: D must fall with temperature");
  return {std::pow(10.0, y - slope * x), -1.0 / slope};
}

}  // namespace kettlecast
