#pragma once

#include <cmath>

/// The saturation line of water. Temperatures in K, pressures in Pa.
namespace kettlecast::water {

/// Coefficients of region 4. Source: IAPWS R7-97(2012), Table 34.
namespace region4 {
inline constexpr double n1 = 0.11670521452767e4, n2 = -0.72421316703206e6, n3 = -0.17073846940092e2,
                        n4 = 0.12020824702470e5, n5 = -0.32325550322333e7, n6 = 0.14915108613530e2,
                        n7 = -0.48232657361591e4, n8 = 0.40511340542057e6, n9 = -0.23855557567849,
                        n10 = 0.65017534844798e3;
}  // namespace region4

/// Saturation pressure [Pa].
///
/// Source: IAPWS R7-97(2012), equation 30.
/// Range:  273.15-647.096 K; finite and rising from 250 K.
template <class T>
T saturation_pressure(const T& temperature) {
  using namespace region4;
  using std::sqrt;
  const T theta = temperature + n9 / (temperature - n10);
  const T a = (theta + n1) * theta + n2;
  const T b = (n3 * theta + n4) * theta + n5;
  const T c = (n6 * theta + n7) * theta + n8;
  const T root = 2.0 * c / (sqrt(b * b - 4.0 * a * c) - b);
  return 1e6 * (root * root) * (root * root);
}

/// Saturation temperature [K].
///
/// Source: IAPWS R7-97(2012), equation 31.
/// Range:  611.213 Pa to 22.064 MPa.
template <class T>
T saturation_temperature(const T& pressure) {
  using namespace region4;
  using std::sqrt;
  const T beta = sqrt(sqrt(pressure * 1e-6));
  const T e = (beta + n3) * beta + n6;
  const T f = (n1 * beta + n4) * beta + n7;
  const T g = (n2 * beta + n5) * beta + n8;
  const T d = 2.0 * g / (-f - sqrt(f * f - 4.0 * e * g));
  const T sum = n10 + d;
  return 0.5 * (sum - sqrt(sum * sum - 4.0 * (n9 + n10 * d)));
}

}  // namespace kettlecast::water
