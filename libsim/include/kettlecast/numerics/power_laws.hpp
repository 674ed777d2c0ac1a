#pragma once

#include <array>
#include <cmath>
#include <cstddef>

#include "kettlecast/numerics/power_sum.hpp"
#include "kettlecast/numerics/smooth.hpp"

namespace kettlecast {

/// Power laws y = C x^a that follow each other with rising x; C the factor, a the power.
template <std::size_t N>
struct PowerLaws {
  std::array<PowerTerm, N> laws;
  std::array<double, N - 1> joins;  ///< x between one law and the next, rising
  double band;  ///< > 1; a law passes into the next between join / band and join * band [-]
};

/// Integral of smooth_step from 0 [-]: 0 for x <= 0, x - 1/2 for x >= 1, x^4 (5/2 - 3 x + x^2)
/// between.
template <class T>
T smooth_ramp(const T& x) {
  if (x <= 0.0) return T(0.0);
  if (x >= 1.0) return T(x - 0.5);
  return x * x * x * x * (2.5 + x * (x - 3.0));
}

/// Value of laws that pass smoothly into each other [unit of y].
///
///     d ln y / d ln x = a + (a' - a) s,   s = smooth_step over ln x in the band of each join;
///     a step between the two laws at their join is added as step * s
///
/// @param x  > 0
/// @note Equal to the law itself outside the bands, which must not overlap; as monotone as the
///       laws and their steps are.
template <class T, std::size_t N>
T joined_power_laws(const T& x, const PowerLaws<N>& joined) {
  using std::exp;
  using std::log;
  const T ln_x = log(x);
  const double width = 2.0 * std::log(joined.band);
  T ln_y = std::log(joined.laws[0].factor) + joined.laws[0].power * ln_x;
  for (std::size_t i = 1; i < N; ++i) {
    const PowerTerm& before = joined.laws[i - 1];
    const PowerTerm& after = joined.laws[i];
    const double join = std::log(joined.joins[i - 1]);
    const T place = (ln_x - join) / width + 0.5;
    if (!(place > 0.0)) break;
    const double bend = after.power - before.power;
    const double step = std::log(after.factor / before.factor) + bend * join;
    ln_y = ln_y + bend * width * smooth_ramp(place) + step * smooth_step(place);
  }
  return exp(ln_y);
}

}  // namespace kettlecast
