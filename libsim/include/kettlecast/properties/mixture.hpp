#pragma once

#include <cmath>
#include <cstddef>
#include <vector>

namespace kettlecast {

/// Viscosity that a stirred liquid with solid pieces shows to a heated surface [Pa s].
///
///     mu_s = mu (1 + a phi)
///
/// Source: Einstein, Ann. Phys. 19 (1906) 289 and 34 (1911) 591: a = 2.5 for few spheres. Crowded
///         spheres look like a = 5 at phi = 0.25 (Krieger & Dougherty, Trans. Soc. Rheol. 3 (1959)
///         137); starch and fat that the pieces bring along add to it, so a is fitted.
/// Range:  0 <= phi < 0.5, linear: pieces of kitchen size do not jam a film as fine ones would.
///
/// @param viscosity  of the liquid mu [Pa s]
/// @param solids     volume fraction phi of the pieces [-]
/// @param slope      a [-]
template <class T>
T suspension_viscosity(const T& viscosity, const T& solids, const T& slope) {
  return viscosity * (1.0 + slope * solids);
}

/// Viscosity of a stirred mix of two liquids, mean of the logarithms by volume [Pa s].
///
///     ln mu = (1 - f) ln mu_1 + f ln mu_2
///
/// Source: Arrhenius, Z. phys. Chem. 1 (1887) 285 (from memory); meant for liquids that dissolve in
///         each other, used for oil in water as common practice, no source.
/// Range:  0 <= f <= 1.
///
/// @param first     viscosity mu_1 [Pa s]
/// @param second    viscosity mu_2 [Pa s]
/// @param fraction  volume fraction f of the second liquid [-]
template <class T>
T mixed_viscosity(const T& first, const T& second, const T& fraction) {
  using std::pow;
  return first * pow(second / first, fraction);
}

/// Viscosity of several liquids poured together, mean of the logarithms by mass [Pa s].
///
///     ln mu = sum(m_i ln mu_i) / sum(m_i)
///
/// Source: as for two liquids; by mass because recipes are weighed, common practice, no source.
/// Range:  viscosities > 0; masses >= 0, not all 0.
///
/// @param viscosities  mu_i [Pa s], shape (n,)
/// @param masses       m_i [kg], shape (n,)
template <class T>
T mixed_viscosity(const std::vector<T>& viscosities, const std::vector<T>& masses) {
  using std::exp;
  using std::log;
  T sum(0.0), total(0.0);
  for (std::size_t i = 0; i < viscosities.size(); ++i) {
    sum += masses[i] * log(viscosities[i]);
    total += masses[i];
  }
  return exp(sum / total);
}

}  // namespace kettlecast
