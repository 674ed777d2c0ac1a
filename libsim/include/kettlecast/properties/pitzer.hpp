#pragma once

#include <cmath>

#include "kettlecast/numerics/polynomial.hpp"

/// Pitzer's equation for sodium chloride in water.
namespace kettlecast::salt {

/// Constants of Pitzer's equation at one temperature.
template <class T>
struct PitzerConstants {
  T slope;   ///< Debye-Huckel slope A [kg^0.5/mol^0.5]
  T first;   ///< beta(0) [kg/mol]
  T second;  ///< beta(1) [kg/mol]
  T third;   ///< C [kg2/mol2]
};

/// Moller's function of temperature without the terms that NaCl does not need [-].
///
///     c0 + c1 T + c2 / T + c3 ln T + c4 / (T - 263) + c5 T^2 + c6 / (680 - T) + c7 / (T - 227)
///
/// Source: Moller, Geochim. Cosmochim. Acta 52 (1988) 821, equation 13.
/// Range:  273-523 K.
template <class T>
T moller(const PolynomialCoefficients<8>& c, const T& t) {
  using std::log;
  return c[0] + t * (c[1] + c[5] * t) + c[2] / t + c[3] * log(t) + c[4] / (t - 263.0) +
         c[6] / (680.0 - t) + c[7] / (t - 227.0);
}

/// Constants of Pitzer's equation for NaCl.
///
/// Source: Moller (1988), Table 1; alpha = 2, b = 1.2.
/// Range:  273-523 K, along the saturation line of water.
template <class T>
PitzerConstants<T> pitzer_constants(const T& temperature) {
  constexpr PolynomialCoefficients<8> slope{
      3.36901532e-1, -6.32100430e-4, 9.14252359, -1.35143986e-2,
      2.26089488e-3, 1.92118597e-6,  45.2586464, 0.0};
  constexpr PolynomialCoefficients<8> first{14.3783204, 5.60767406e-3,  -422.185236, -2.51226677,
                                            0.0,        -2.61718135e-6, 4.43854508,  -1.70502337};
  constexpr PolynomialCoefficients<8> second{-0.483060685, 1.40677479e-3, 119.311989, 0.0,
                                             0.0,          0.0,           0.0,        -4.23433299};
  constexpr PolynomialCoefficients<8> third{
      -0.100588714, -1.80529413e-5, 8.61185543,    1.24880954e-2,
      0.0,          3.41172108e-8,  6.83040995e-2, 0.293922611};
  return {moller(slope, temperature), moller(first, temperature), moller(second, temperature),
          moller(third, temperature)};
}

/// Osmotic coefficient [-].
///
///     phi = 1 - A r / (1 + 1.2 r) + m (b0 + b1 exp(-2 r)) + m^2 C,   r = sqrt(m)
///
/// Source: Pitzer, J. Phys. Chem. 77 (1973) 268, for a salt of two single charges.
/// Range:  0-6.5 mol/kg.
///
/// @param molality   m [mol per kg of water]
/// @param pitzer     at the temperature wanted
template <class T, class C>
T osmotic_coefficient(const T& molality, const PitzerConstants<C>& pitzer) {
  using std::exp;
  using std::sqrt;
  const T r = sqrt(molality + 1e-10);  // finite slope without salt
  return 1.0 - pitzer.slope * r / (1.0 + 1.2 * r) +
         molality * (pitzer.first + pitzer.second * exp(-2.0 * r) + molality * pitzer.third);
}

}  // namespace kettlecast::salt
