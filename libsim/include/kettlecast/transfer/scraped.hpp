#pragma once

#include "kettlecast/transfer/contact.hpp"
#include "kettlecast/transfer/fluid.hpp"

/// Wall or floor that blades scrape clean at every pass.
namespace kettlecast {

/// Coefficient of a scraped wall or floor [W/(m2 K)].
///
///     h = e 2 sqrt(k rho cp / (pi t)),   t = 1 / (N n) between two blades
///
/// Source: penetration theory, Kool (1958) and Latinen (1959), see contact.hpp. The efficiency e
///         gathers what the theory leaves out (blades that leave a layer, layers that do not mix
///         into the bulk); that measured coefficients of viscous products are lower by such a
///         factor was found by Trommelen, Beek & van de Westelaken, Chem. Eng. Sci. 26 (1971) 1987.
/// Range:  liquids and pastes. e = 1 is the upper bound; 0.3-1 for watery to thick products is
///         common practice, no source: fit it.
///
/// @param fluid       at the temperature of the bulk
/// @param contact     time between two blades t, from contact_time, > 0 [s]
/// @param efficiency  e, 0 to 1 [-]
/// @note At rest contact_time ends at its longest value: blend with natural convection there.
template <class T>
T scraped_coefficient(const Fluid<T>& fluid, const T& contact, double efficiency) {
  return efficiency *
         penetration_coefficient(fluid.conductivity, fluid.density, fluid.specific_heat, contact);
}

}  // namespace kettlecast
