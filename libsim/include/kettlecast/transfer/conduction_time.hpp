#pragma once

#include <cmath>

#include "kettlecast/transfer/transient_conduction.hpp"

/// How far the temperature of a body has changed, and when; terms as in transient_conduction.hpp.
namespace kettlecast {

/// Change y at a position after a time, by as many terms as it takes [-].
///
/// Source: Carslaw & Jaeger (1959), sections 3.11, 7.7, 9.4.
/// Range:  Bi > 0, Fo >= 0, 0 <= xi <= 1; see ConductionSeries::at.
///
/// @param shape     not `none`
/// @param biot      Bi [-]
/// @param fourier   Fo [-]
/// @param position  xi, 0 centre to 1 surface [-]
inline double remaining_change(Shape shape, double biot, double fourier, double position) {
  return ConductionSeries(shape, biot, fourier).at(position, fourier);
}

/// Mean of the change over the volume [-]. Source, Range, @param: as remaining_change.
inline double mean_remaining_change(Shape shape, double biot, double fourier) {
  return ConductionSeries(shape, biot, fourier).mean(fourier);
}

/// Change y by the first term alone [-].
///
///     y = A_1 p(lambda_1 xi) exp(-lambda_1^2 Fo)
///
/// Source: as remaining_change.
/// Range:  Fo > 0.2, there within 2 % of the series; before that it can exceed 1.
inline double one_term_change(Shape shape, double biot, double fourier, double position) {
  const double u = conduction_eigenvalue(shape, biot, 1);
  return mode_amplitude(shape, u) * mode_profile(shape, u * position) * std::exp(-u * u * fourier);
}

/// Fourier number at which the first term alone falls to a change y [-].
///
///     Fo = ln(A_1 p(lambda_1 xi) / y) / lambda_1^2
///
/// Source: as remaining_change. Range: result > 0.2; negative if y lies above the first term at 0.
inline double one_term_fourier(Shape shape, double biot, double change, double position) {
  const double u = conduction_eigenvalue(shape, biot, 1);
  return std::log(mode_amplitude(shape, u) * mode_profile(shape, u * position) / change) / (u * u);
}

/// Fourier number at which a falling function of it comes down to `change` [-].
///
/// @param change    0 < y < 1 [-]
/// @param function  function(series, Fo) -> y
template <class Function>
double fourier_of_change(Shape shape, double biot, double change, Function&& function) {
  // Most times lie where few modes count; only very short ones need all of them.
  constexpr double few = 1e-3;
  const ConductionSeries series(shape, biot, few);
  const double u = conduction_eigenvalue(shape, biot, 1);
  const auto root = [&](const ConductionSeries& of, double low, double high) {
    return std::exp(bracketed_root(std::log(low), std::log(high), [&](double x) {
      return std::log(function(of, std::exp(x)) / change);
    }));
  };
  if (function(series, few) > change) {
    double high = 2.0 * few + std::log(2.0 / change) / (u * u);
    while (function(series, high) > change) high *= 2.0;
    return root(series, few, high);
  }
  constexpr double shortest = 1e-14;
  const ConductionSeries full(shape, biot, least_series_fourier);
  return function(full, shortest) > change ? root(full, shortest, few) : 0.0;
}

/// Fourier number at which the change at a position has fallen to y [-].
///
/// Source: inverse of remaining_change. Range: Bi > 0, 0 < y < 1; 0 if it takes less than 1e-14.
///
/// @param shape     not `none`
/// @param biot      Bi [-]
/// @param change    y [-]
/// @param position  xi, 0 centre to 1 surface [-]
inline double fourier_to_reach(Shape shape, double biot, double change, double position) {
  return fourier_of_change(shape, biot, change, [&](const ConductionSeries& series, double fo) {
    return series.at(position, fo);
  });
}

/// Fourier number at which the mean change has fallen to y [-].
///
/// Source: inverse of mean_remaining_change. Range, @param: as fourier_to_reach.
inline double mean_fourier_to_reach(Shape shape, double biot, double change) {
  return fourier_of_change(shape, biot, change, [](const ConductionSeries& series, double fo) {
    return series.mean(fo);
  });
}

/// Change y of a body that is warm alike throughout [-].
///
///     y = exp(-h (A/V) t / (rho cp))
///
/// Source: heat balance; Incropera & DeWitt, section 5.1 (from memory).
/// Range:  Bi < 0.1.
///
/// @param film                h [W/(m2 K)]
/// @param surface_per_volume  A/V [1/m]
/// @param heat_capacity       rho cp [J/(m3 K)]
/// @param time                t [s]
template <class T>
T lumped_change(const T& film, const T& surface_per_volume, const T& heat_capacity, const T& time) {
  using std::exp;
  return exp(-film * surface_per_volume * time / heat_capacity);
}

}  // namespace kettlecast
