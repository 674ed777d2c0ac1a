#pragma once

#include <cmath>

#include "kettlecast/base/constants.hpp"

/// Heat into material that lies on the floor until a blade turns it over (penetration theory).
namespace kettlecast {

/// Mean coefficient of a semi-infinite body over its time of contact [W/(m2 K)].
///
///     h = 2 sqrt(k rho cp / (pi t))
///
/// Source: mean of the flux into a semi-infinite solid, Carslaw & Jaeger (1959), section 2.5; as
/// the
///         scraped-surface equation of Kool (1958) and Latinen (1959).
/// Range:  contact shorter than thickness^2 / diffusivity; viscous product can be several times
/// lower.
///
/// @param conductivity   k [W/(m K)]
/// @param density        rho [kg/m3]
/// @param specific_heat  cp [J/(kg K)]
/// @param contact_time   t, > 0 [s]
template <class T>
T penetration_coefficient(const T& conductivity, const T& density, const T& specific_heat,
                          const T& contact_time) {
  using std::sqrt;
  return 2.0 * sqrt(conductivity * density * specific_heat / (constants::pi * contact_time));
}

/// Time that material rests on a spot between two blades [s].
///
///     t = 1 / sqrt((N n)^2 + 1/t_max^2)
///
/// Source: 1/(N n) by counting; the smooth end at rest is ours.
/// Range:  N >= 0.
///
/// @param speed    turns per second N [1/s]
/// @param blades   blades that pass the spot per turn n [-]
/// @param longest  t_max, reached at rest, > 0 [s]
template <class T>
T contact_time(const T& speed, double blades, double longest) {
  using std::sqrt;
  const T rate = speed * blades;
  return 1.0 / sqrt(rate * rate + 1.0 / (longest * longest));
}

/// Penetration in series with the resistance of a film between wall and material [W/(m2 K)].
///
///     1/h = 1/h_p + 1/h_w
///
/// Source: Schluender, in Handbuch der Waermeuebertragung (1972), particles at a wall (from
/// memory). Range:  both coefficients > 0.
template <class T>
T contact_coefficient(const T& penetration, const T& wall_film) {
  return penetration * wall_film / (penetration + wall_film);
}

}  // namespace kettlecast
