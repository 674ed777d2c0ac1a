#pragma once

#include <Eigen/Core>
#include <cmath>
#include <cstddef>

/// Forward-mode dual numbers of a fixed size.
namespace kettlecast {

/// A value and its slopes by N parameters.
///
///     f(u + u' e, v + v' e) = f(u, v) + (df/du u' + df/dv v') e,   e^2 = 0
///
/// A plain number has slopes of zero. Comparisons look at the value only: on either side of a
/// branch the slopes are those of the branch taken.
///
/// Source: Griewank & Walther, Evaluating Derivatives (2008), chapter 3 (from memory).
template <std::size_t N>
struct Dual {
  double value = 0.0;
  /// An array of Eigen, whose sums and products of eight slopes fill vector registers.
  Eigen::Array<double, static_cast<int>(N), 1> slope =
      Eigen::Array<double, static_cast<int>(N), 1>::Zero();

  Dual() = default;
  Dual(double plain) : value(plain) {}  // NOLINT: a number is a dual number without slopes

  Dual& operator+=(const Dual& other) {
    value += other.value;
    slope += other.slope;
    return *this;
  }
  Dual& operator-=(const Dual& other) {
    value -= other.value;
    slope -= other.slope;
    return *this;
  }
  Dual& operator*=(const Dual& other) {
    slope = slope * other.value + value * other.slope;
    value *= other.value;
    return *this;
  }
  Dual& operator/=(const Dual& other) {
    const double inverse = 1.0 / other.value;
    value *= inverse;
    slope = (slope - value * other.slope) * inverse;
    return *this;
  }
  Dual& operator+=(double plain) {
    value += plain;
    return *this;
  }
  Dual& operator-=(double plain) {
    value -= plain;
    return *this;
  }
  Dual& operator*=(double plain) {
    value *= plain;
    slope *= plain;
    return *this;
  }
  Dual& operator/=(double plain) { return *this *= 1.0 / plain; }

  Dual operator-() const { return Dual(*this) *= -1.0; }

  friend Dual operator+(Dual a, const Dual& b) { return a += b; }
  friend Dual operator+(Dual a, double b) { return a += b; }
  friend Dual operator+(double a, Dual b) { return b += a; }
  friend Dual operator-(Dual a, const Dual& b) { return a -= b; }
  friend Dual operator-(Dual a, double b) { return a -= b; }
  friend Dual operator-(double a, const Dual& b) { return -b += a; }
  friend Dual operator*(Dual a, const Dual& b) { return a *= b; }
  friend Dual operator*(Dual a, double b) { return a *= b; }
  friend Dual operator*(double a, Dual b) { return b *= a; }
  friend Dual operator/(Dual a, const Dual& b) { return a /= b; }
  friend Dual operator/(Dual a, double b) { return a /= b; }
  friend Dual operator/(double a, const Dual& b) { return Dual(a) /= b; }

  friend bool operator<(const Dual& a, const Dual& b) { return a.value < b.value; }
  friend bool operator>(const Dual& a, const Dual& b) { return a.value > b.value; }
  friend bool operator<=(const Dual& a, const Dual& b) { return a.value <= b.value; }
  friend bool operator>=(const Dual& a, const Dual& b) { return a.value >= b.value; }
  friend bool operator==(const Dual& a, const Dual& b) { return a.value == b.value; }
  friend bool operator!=(const Dual& a, const Dual& b) { return a.value != b.value; }
};

/// f(u) with slopes df/du u', from f and df/du at the value of u.
template <std::size_t N>
Dual<N> chained(const Dual<N>& u, double f, double derivative) {
  Dual<N> result(f);
  result.slope = derivative * u.slope;
  return result;
}

/// e^u.
template <std::size_t N>
Dual<N> exp(const Dual<N>& u) {
  const double f = std::exp(u.value);
  return chained(u, f, f);
}

/// Natural logarithm of u.
template <std::size_t N>
Dual<N> log(const Dual<N>& u) {
  return chained(u, std::log(u.value), 1.0 / u.value);
}

/// Where the root is 0 its slopes are infinite; they are taken as 0, as on the branch of a
/// constant.
template <std::size_t N>
Dual<N> sqrt(const Dual<N>& u) {
  const double f = std::sqrt(u.value);
  return chained(u, f, f > 0.0 ? 0.5 / f : 0.0);
}

/// Cube root of u; the slopes at 0 are taken as 0.
template <std::size_t N>
Dual<N> cbrt(const Dual<N>& u) {
  const double f = std::cbrt(u.value);
  return chained(u, f, f != 0.0 ? 1.0 / (3.0 * f * f) : 0.0);
}

/// As for the square root, the slopes of 0^p with p < 1 are taken as 0.
template <std::size_t N>
Dual<N> pow(const Dual<N>& u, double exponent) {
  const double f = std::pow(u.value, exponent);
  return chained(u, f, u.value != 0.0 ? exponent * f / u.value : (exponent == 1.0 ? 1.0 : 0.0));
}

/// u^p for a base above zero.
template <std::size_t N>
Dual<N> pow(const Dual<N>& u, const Dual<N>& exponent) {
  return exp(exponent * log(u));
}

/// Power of a plain base above zero.
template <std::size_t N>
Dual<N> pow(double base, const Dual<N>& exponent) {
  const double f = std::pow(base, exponent.value);
  return chained(exponent, f, f * std::log(base));
}

/// Hyperbolic tangent of u.
template <std::size_t N>
Dual<N> tanh(const Dual<N>& u) {
  const double f = std::tanh(u.value);
  return chained(u, f, 1.0 - f * f);
}

/// Decimal logarithm of u.
template <std::size_t N>
Dual<N> log10(const Dual<N>& u) {
  return log(u) / std::log(10.0);
}

/// Sine of u [rad].
template <std::size_t N>
Dual<N> sin(const Dual<N>& u) {
  return chained(u, std::sin(u.value), std::cos(u.value));
}

/// Arc sine of u [rad].
template <std::size_t N>
Dual<N> asin(const Dual<N>& u) {
  return chained(u, std::asin(u.value), 1.0 / std::sqrt(1.0 - u.value * u.value));
}

/// Angle of the point (x, y) [rad].
template <std::size_t N>
Dual<N> atan2(const Dual<N>& y, const Dual<N>& x) {
  const double square = y.value * y.value + x.value * x.value;
  Dual<N> result = y * (x.value / square) - x * (y.value / square);
  result.value = std::atan2(y.value, x.value);
  return result;
}

/// |u|; at 0 the slopes of u.
template <std::size_t N>
Dual<N> fabs(const Dual<N>& u) {
  return u.value < 0.0 ? -u : u;
}

/// Whether the value is finite.
template <std::size_t N>
bool isfinite(const Dual<N>& u) {
  return std::isfinite(u.value);
}

/// The value of a number with or without slopes.
inline double value_of(double plain) { return plain; }
/// The value of a number with slopes.
template <std::size_t N>
double value_of(const Dual<N>& u) {
  return u.value;
}

/// The dual number that models are compiled with: slopes by eight parameters at a time, which fill
/// the vector registers of common processors evenly.
using Dual8 = Dual<8>;

}  // namespace kettlecast
