#pragma once

#include <array>
#include <cstddef>

#include "kettlecast/numerics/dual.hpp"

/// Polynomials with constant coefficients, lowest power first.
namespace kettlecast {

template <std::size_t N>
using PolynomialCoefficients = std::array<double, N>;

/// Value of c[0] + c[1] x + c[2] x^2 + ... by Horner's rule [unit of c].
template <class T, std::size_t N>
T polynomial(const PolynomialCoefficients<N>& c, const T& x) {
  T value(c[N - 1]);
  for (std::size_t i = N - 1; i-- > 0;) value = value * x + c[i];
  return value;
}

/// Value and slope by Horner's rule on plain numbers, chained once: slopes cost one product.
template <std::size_t M, std::size_t N>
Dual<M> polynomial(const PolynomialCoefficients<N>& c, const Dual<M>& x) {
  double value = c[N - 1], slope = 0.0;
  for (std::size_t i = N - 1; i-- > 0;) {
    slope = slope * x.value + value;
    value = value * x.value + c[i];
  }
  return chained(x, value, slope);
}

/// Coefficients of the derivative.
template <std::size_t N>
constexpr PolynomialCoefficients<N - 1> derivative(const PolynomialCoefficients<N>& c) {
  PolynomialCoefficients<N - 1> result{};
  for (std::size_t i = 1; i < N; ++i) result[i - 1] = static_cast<double>(i) * c[i];
  return result;
}

/// Coefficients of the integral that is zero at `start`.
template <std::size_t N>
constexpr PolynomialCoefficients<N + 1> integral(const PolynomialCoefficients<N>& c, double start) {
  PolynomialCoefficients<N + 1> result{};
  double at_start = 0.0;
  for (std::size_t i = N; i-- > 0;) {
    result[i + 1] = c[i] / static_cast<double>(i + 1);
    at_start = (at_start + result[i + 1]) * start;
  }
  result[0] = -at_start;
  return result;
}

}  // namespace kettlecast
