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

/// Turns of a stirrer until a heap of pieces at the floor has been renewed [-].
///
///     N_mix = 9 Fr^0.05,   Fr = (2 pi N)^2 D / (2 g)
///
/// A blade does not lift a layer off the floor and put a fresh one there: most pieces it passes
/// come to lie where they were.
/// Source: Schluender & Mollekopf, Chem. Eng. Process. 18 (1984) 93, paddles; discs and drums gave
///         25 Fr^0.2 and 16 Fr^0.2 (from memory). Measured numbers lie between 2 and 25.
/// Range:  Fr 1e-3 to 1, free-flowing grains; pieces wet with juice may need more turns.
///
/// @param speed     turns per second N, > 0 [1/s]
/// @param diameter  of the vessel D [m]
template <class T>
T mixing_number(const T& speed, double diameter) {
  using std::pow;
  const T rim = 2.0 * constants::pi * speed;
  return 9.0 * pow(rim * rim * (diameter / (2.0 * constants::gravity)), 0.05);
}

/// Time that a heap of stirred pieces rests on the floor [s].
///
///     t = 1 / sqrt((N / N_mix)^2 + 1/t_max^2)
///
/// Source: mixing_number; the smooth end at rest is ours.
/// Range:  N >= 0.
///
/// @param speed     turns per second N [1/s]
/// @param diameter  of the vessel [m]
/// @param longest   t_max, reached at rest, > 0 [s]
template <class T>
T heap_contact_time(const T& speed, double diameter, double longest) {
  using std::sqrt;
  if (!(speed > 0.0)) return T(longest);
  const T rate = speed / mixing_number(speed, diameter);
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
