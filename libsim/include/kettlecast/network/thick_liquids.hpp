#pragma once

#include <cmath>
#include <vector>

#include "kettlecast/properties/consistency.hpp"

/// Thick liquids poured into one kettle, and what becomes of the viscosity of all of it.
namespace kettlecast {

/// One thick liquid, as it is at one instant.
template <class T>
struct ThickPart {
  const Consistency* liquid;
  double fat_share;  ///< of the food as poured [kg/kg]
  double dry_share;  ///< of the food as poured, without water [kg/kg]
  T mass;            ///< poured so far [kg]
  T thickened;       ///< share of it that has thickened [-]
};

/// All thick liquids of a kettle.
template <class T>
struct ThickLiquids {
  std::vector<ThickPart<T>> parts;
  double shear_rate = 0.0;  ///< around the agitator [1/s]
};

/// Dry matter of a boiled-down liquid at most [kg/kg]; beyond it no data hold.
inline constexpr double driest = 0.95;

/// Mass of all thick liquids as poured [kg].
template <class T>
T thick_mass(const ThickLiquids<T>& thick) {
  T mass(0.0);
  for (const auto& part : thick.parts) mass += part.mass;
  return mass;
}

/// Fat that the thick liquids brought along [kg]; their own data count it in.
template <class T>
T thick_fat(const ThickLiquids<T>& thick) {
  T fat(0.0);
  for (const auto& part : thick.parts) fat += part.fat_share * part.mass;
  return fat;
}

/// Viscosity of a thin liquid with thick ones stirred into it [Pa s].
///
///     ln mu = (sum(m_i ln mu_i) + m_0 ln mu_0) / (sum(m_i) + m_0),   m_0 = m - sum(m_i) >= 0
///
/// Once there is less liquid than thick liquids were poured, its water has boiled off, and their
/// dry matter is concentrated by sum(m_i) / m. So water stirred in and boiled off again changes
/// nothing.
///
/// Source: mixed_viscosity in properties/mixture.hpp; water that boils off counted as thin liquid
///         while there is any: ours.
/// Range:  that of the consistencies.
///
/// @param thick        the thick liquids, m_i as poured
/// @param thin         viscosity of the thin liquid mu_0 [Pa s]
/// @param mass         of thick and thin liquid now m, >= 0 [kg]
/// @param temperature  [K]
template <class T>
T stirred_viscosity(const ThickLiquids<T>& thick, const T& thin, const T& mass,
                    const T& temperature) {
  using std::exp;
  using std::log;
  if (thick.parts.empty()) return thin;
  constexpr double trace = 1e-9;  // [kg], so that nothing poured is thin
  const T poured = thick_mass(thick);
  const T thin_mass = mass > poured ? T(mass - poured) : T(0.0);
  const T concentration = mass > poured ? T(1.0) : T((poured + trace) / (mass + trace));
  T sum = (thin_mass + trace) * log(thin);
  for (const auto& part : thick.parts) {
    const T concentrated = part.dry_share * concentration;
    const T dry = concentrated < driest ? concentrated : T(driest);
    sum += part.mass * log(apparent_viscosity(*part.liquid, temperature, T(thick.shear_rate),
                                              part.thickened, dry));
  }
  return exp(sum / (poured + thin_mass + trace));
}

}  // namespace kettlecast
