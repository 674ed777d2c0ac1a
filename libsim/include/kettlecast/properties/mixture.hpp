#pragma once

#include <cmath>

namespace kettlecast {

/// Viscosity of a liquid that carries solid pieces [Pa s].
///
///     mu_s = mu (1 - phi / 0.68)^(-n)
///
/// Source: Krieger & Dougherty, Trans. Soc. Rheol. 3 (1959) 137; n = 1.7 = 2.5 * 0.68 keeps
///         Einstein's limit for spheres, angular pieces have more. The densest packing 0.68 of soft, uneven pieces is common practice, no source.
/// Range:  0 <= phi <= 0.67; above, the value at 0.67 (1300 times mu for spheres) is kept, so that a packed bed
///         stays finite. Not a law for beds that no longer flow.
///
/// @param viscosity  of the liquid mu [Pa s]
/// @param solids     volume fraction phi of the pieces [-]
/// @param exponent   n [-]
template <class T>
T suspension_viscosity(const T& viscosity, const T& solids, const T& exponent) {
  using std::pow;
  constexpr double packed = 0.68;
  constexpr double largest = 0.67;
  const T phi = solids < largest ? solids : T(largest);
  return viscosity * pow(1.0 - phi / packed, -exponent);
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

}  // namespace kettlecast
