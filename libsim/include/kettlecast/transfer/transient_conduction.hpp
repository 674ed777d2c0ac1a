#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

#include "kettlecast/base/constants.hpp"
#include "kettlecast/numerics/root.hpp"
#include "kettlecast/properties/shape.hpp"
#include "kettlecast/transfer/semi_infinite.hpp"

/// Slab, long cylinder and sphere that meet a fluid all at once, by exact series.
///
/// L half thickness or radius; Bi = h L / k; Fo = a t / L^2; position xi = r / L, 0 centre, 1
/// surface; change y = (Tf - T) / (Tf - T0), 1 at the start, 0 when all has arrived. Doubles only,
/// because of the Bessel functions.
namespace kettlecast {

/// Biot number h L / k [-]. Source: definition. Range: k > 0.
template <class T>
T biot_number(const T& film, const T& length, const T& conductivity) {
  return film * length / conductivity;
}

/// Fourier number a t / L^2 [-]. Source: definition. Range: L > 0.
template <class T>
T fourier_number(const T& diffusivity, const T& time, const T& length) {
  return diffusivity * time / (length * length);
}

/// Time of a Fourier number [s]. Source: definition. Range: a > 0.
template <class T>
T fourier_time(const T& fourier, const T& diffusivity, const T& length) {
  return fourier * length * length / diffusivity;
}

/// Profile of a mode at z = lambda xi [-]: cos z, J0(z), sin z / z; 1 at the centre.
///
/// Source: Carslaw & Jaeger (1959), sections 3.11, 7.7, 9.4.
/// Range:  z >= 0.
inline double mode_profile(Shape shape, double z) {
  if (shape == Shape::slab) return std::cos(z);
  if (shape == Shape::cylinder) return std::cyl_bessel_j(0.0, z);
  return z > 0.0 ? std::sin(z) / z : 1.0;
}

/// Fall of the profile per z [-]: sin z, J1(z), (sin z - z cos z) / z^2.
///
/// Source: derivative of mode_profile; below z = 0.02 the power series, exact to rounding.
/// Range:  z >= 0.
inline double mode_fall(Shape shape, double z) {
  if (shape == Shape::slab) return std::sin(z);
  if (shape == Shape::cylinder) return std::cyl_bessel_j(1.0, z);
  if (z < 0.02) return z / 3.0 * (1.0 - z * z / 10.0 * (1.0 - z * z / 28.0));
  return (std::sin(z) - z * std::cos(z)) / (z * z);
}

/// Eigenvalue lambda_n, n = 1, 2, ... [-].
///
///     lambda tan lambda = Bi (slab),  lambda J1 / J0 = Bi (cylinder),
///     1 - lambda cot lambda = Bi (sphere)
///
/// Source: Carslaw & Jaeger (1959), sections 3.11, 7.7, 9.4. Each root lies between two poles,
///         those of the cylinder enclosed by McMahon's expansion (Abramowitz & Stegun, 9.5.12).
/// Range:  1e-4 <= Bi <= 1e4 tested; relative error below 1e-11.
inline double conduction_eigenvalue(Shape shape, double biot, int number) {
  const double pi = constants::pi;
  double low = (number - 1) * pi, high = low + (shape == Shape::slab ? 0.5 * pi : pi);
  if (shape == Shape::cylinder) {
    high -= 0.25 * pi;
    high += 1.0 / (8.0 * high);
    if (number > 1) {
      low += 0.25 * pi;
      low -= 3.0 / (8.0 * low);
    }
  }
  return bracketed_root(
      low, high, [&](double z) { return z * mode_fall(shape, z) - biot * mode_profile(shape, z); });
}

/// Amplitude A of a mode [-].
///
///     A = 2 sin u / (u + sin u cos u) (slab),  2 J1 / (u (J0^2 + J1^2)) (cylinder),
///     2 (sin u - u cos u) / (u - sin u cos u) (sphere)
///
/// Source: Carslaw & Jaeger (1959), sections 3.11, 7.7, 9.4; here in one form for all three,
///         A = 2 f / (u (p^2 + f^2 + (2 - d) p f / u)), p profile, f fall at the surface.
/// Range:  u > 0.
///
/// @param eigenvalue  u = lambda_n [-]
inline double mode_amplitude(Shape shape, double eigenvalue) {
  const double profile = mode_profile(shape, eigenvalue), fall = mode_fall(shape, eigenvalue);
  const double mixed = (2 - dimensions(shape)) * profile * fall / eigenvalue;
  return 2.0 * fall / (eigenvalue * (profile * profile + fall * fall + mixed));
}

/// Smallest Fourier number summed as a series; before it the body is taken as semi-infinite, which
/// leaves out its curvature, 0.1 % of the change.
inline constexpr double least_series_fourier = 1e-6;

/// Change of one body over time; holds its modes so that many times cost little.
class ConductionSeries {
 public:
  /// @param shape          not `none`
  /// @param biot           Bi > 0 [-]
  /// @param least_fourier  smallest Fo that will be asked for; sets the number of modes [-]
  ConductionSeries(Shape shape, double biot, double least_fourier) : shape_(shape), biot_(biot) {
    // lambda_n > (n - 1) pi: modes left out are below exp(-40).
    const double least = std::max(least_fourier, least_series_fourier);
    const int count = 2 + static_cast<int>(std::sqrt(40.0 / least) / constants::pi);
    for (int n = 1; n <= count; ++n) {
      const double eigenvalue = conduction_eigenvalue(shape, biot, n);
      modes_.push_back({eigenvalue, mode_amplitude(shape, eigenvalue)});
    }
  }

  /// Change y at a position [-].
  ///
  ///     y = sum A_n p(lambda_n xi) exp(-lambda_n^2 Fo)
  ///
  /// @param position  xi, 0 centre to 1 surface [-]
  /// @param fourier   Fo, not below that of the constructor [-]
  double at(double position, double fourier) const {
    if (fourier <= 0.0) return 1.0;
    if (fourier < least_series_fourier) {
      const double root = std::sqrt(fourier);
      return 1.0 - semi_infinite_film(0.5 * (1.0 - position) / root, biot_ * root);
    }
    return sum(fourier, [&](double u) { return mode_profile(shape_, u * position); });
  }

  /// Mean change over the volume [-].
  ///
  ///     y = sum A_n d f(lambda_n) / lambda_n exp(-lambda_n^2 Fo)
  ///
  /// @param fourier  Fo, not below that of the constructor [-]
  double mean(double fourier) const {
    const int d = dimensions(shape_);
    if (fourier < least_series_fourier) {  // heat taken up through the film, Carslaw & Jaeger 2.7
      const double film = biot_ * std::sqrt(std::max(fourier, 0.0));
      const double taken = scaled_erfc(film) - 1.0 + 2.0 * film / std::sqrt(constants::pi);
      return 1.0 - d * taken / biot_;
    }
    return sum(fourier, [&](double u) { return d * mode_fall(shape_, u) / u; });
  }

 private:
  struct Mode {
    double eigenvalue, amplitude;
  };

  template <class Weight>
  double sum(double fourier, Weight&& weight) const {
    double total = 0.0;
    for (const Mode& mode : modes_) {
      const double exponent = mode.eigenvalue * mode.eigenvalue * fourier;
      if (exponent > 40.0 && total > 0.0) break;
      total += mode.amplitude * weight(mode.eigenvalue) * std::exp(-exponent);
    }
    return total;
  }

  Shape shape_;
  double biot_;
  std::vector<Mode> modes_;
};

}  // namespace kettlecast
