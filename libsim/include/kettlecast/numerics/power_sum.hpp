#pragma once

#include <array>
#include <cmath>
#include <cstddef>

/// Sums of powers with constant factors and any exponents.
namespace kettlecast {

/// One term, factor times base to a power.
struct PowerTerm {
  double factor, power;
};

template <std::size_t N>
using PowerTerms = std::array<PowerTerm, N>;

/// Value of sum f_i x^e_i for x > 0 [unit of f].
template <class T, std::size_t N>
T power_sum(const PowerTerms<N>& terms, const T& x) {
  using std::pow;
  T total(0.0);
  for (const PowerTerm& term : terms) total += term.factor * pow(x, term.power);
  return total;
}

}  // namespace kettlecast
