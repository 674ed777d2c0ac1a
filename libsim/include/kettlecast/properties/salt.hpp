#pragma once

#include <cmath>

#include "kettlecast/base/constants.hpp"
#include "kettlecast/numerics/polynomial.hpp"
#include "kettlecast/numerics/smooth.hpp"
#include "kettlecast/properties/elevation.hpp"
#include "kettlecast/properties/pitzer.hpp"

/// Sodium chloride in water: activity of the water, boiling, saturation. Salt as mass fraction.
namespace kettlecast::salt {

/// Molar mass of NaCl [kg/mol]. Source: IUPAC atomic weights.
inline constexpr double molar_mass = 58.4428e-3;

/// Salt in a saturated brine [kg/kg].
///
///     w = 26.218 + 0.0072 t + 0.000106 t^2,   w in per cent, t in degC
///
/// Source: Potter, Babcock & Brown, J. Res. US Geol. Survey 5 (1977) 389; 0.05 %.
/// Range:  0-800 degC.
template <class T>
T saturation(const T& temperature) {
  constexpr PolynomialCoefficients<3> potter{0.26218, 7.2e-5, 1.06e-6};
  return polynomial(potter, T(temperature - constants::ice_point));
}

/// Activity of the water over brine and, beyond saturation, crystals [-].
///
///     ln a = -2 m M phi,   M molar mass of water, m molality of what is dissolved
///
/// Source: definition of the osmotic coefficient. More salt than saturates lies on the floor: the
///         fraction is held below saturation with a corner rounded over 0.1 %.
/// Range:  any fraction 0..1.
///
/// @param salt       mass fraction, crystals included [kg/kg]
/// @param saturated  mass fraction of saturated brine [kg/kg]
/// @param pitzer     of Pitzer's equation
template <class T, class C>
T water_activity(const T& salt, const C& saturated, const PitzerConstants<C>& pitzer) {
  using std::exp;
  constexpr double corner = 1e-3;
  const T dissolved =
      smooth_positive(T(saturated), corner) - smooth_positive(T(saturated - salt), corner);
  const T m = dissolved / ((1.0 - dissolved) * molar_mass);
  return exp(-2.0 * constants::water_molar_mass * m * osmotic_coefficient(m, pitzer));
}

/// Activity of the water in brine [-].
///
/// Source: Moller (1988) and Pitzer (1973), see above.
/// Range:  0-100 % salt, crystals included, 0-250 degC.
///
/// @param salt         mass fraction [kg/kg]
/// @param temperature  [K]
template <class T>
T water_activity(const T& salt, const T& temperature) {
  return water_activity(salt, saturation(temperature), pitzer_constants(temperature));
}

/// Temperature at which brine boils [K].
///
///     a(T) p_sat(T) = p
///
/// Source: activity as above, taken anew at the temperature found; 1e-4 K are left.
/// Range:  0-100 % salt, crystals included, p < 440 kPa.
///
/// @param salt      mass fraction [kg/kg]
/// @param pressure  [Pa]
template <class T>
T boiling_temperature(const T& salt, const T& pressure) {
  T found = water::saturation_temperature(pressure);
  for (int i = 0; i < 3; ++i) {
    found = kettlecast::boiling_temperature(pressure, water_activity(salt, found));
  }
  return found;
}

/// Temperature at which brine boils over undissolved salt [K].
///
/// Source, range: see boiling_temperature; 108.7 degC at sea level (from memory).
///
/// @param pressure  [Pa]
template <class T>
T saturated_boiling_temperature(const T& pressure) {
  return boiling_temperature(T(1.0), pressure);
}

/// How much hotter than water brine boils [K].
///
/// Source, range: see boiling_temperature.
template <class T>
T boiling_elevation(const T& salt, const T& pressure) {
  return boiling_temperature(salt, pressure) - water::saturation_temperature(pressure);
}

/// How much hotter than water a solution of sea salt boils [K].
///
///     dT = A S^2 + B S,   A = -4.584e-4 t^2 + 0.2823 t + 17.95
///                         B =  1.536e-4 t^2 + 0.05267 t + 6.56
///
/// Source: Sharqawy, Lienhard & Zubair, Desalin. Water Treat. 16 (2010) 354, equation 36; 0.02 K.
///         Sea salt has fewer ions per kilogram than NaCl: NaCl would give 13 % more.
/// Range:  0-200 degC, 0-120 g/kg.
///
/// @param salinity  S [kg/kg]
/// @param pressure  at which water boils at t [Pa]
template <class T>
T sea_salt_elevation(const T& salinity, const T& pressure) {
  constexpr PolynomialCoefficients<3> quadratic{17.95, 0.2823, -4.584e-4};
  constexpr PolynomialCoefficients<3> linear{6.56, 0.05267, 1.536e-4};
  const T t = water::saturation_temperature(pressure) - constants::ice_point;
  return salinity * (polynomial(linear, t) + salinity * polynomial(quadratic, t));
}

}  // namespace kettlecast::salt
