#pragma once

#include <cmath>

#include "kettlecast/numerics/smooth.hpp"
#include "kettlecast/transfer/condensation.hpp"

/// Films on a vertical wall of any height: laminar, wavy and turbulent.
namespace kettlecast {

namespace film_regime {
/// Blends two regimes between 0.8 and 1.25 times the place of their join.
template <class T>
T joined(const T& x, double join, const T& before, const T& after) {
  return before + smooth_step(T((x / join - 0.8) / 0.45)) * (after - before);
}
}  // namespace film_regime

/// Mean film number of a vertical wall by the film Reynolds number [-].
///
///     Nu = h (mu^2 / (g rho (rho - rho_v)))^(1/3) / k
///     Nu = 1.47 Re^(-1/3)                                  Re < 30
///     Nu = Re / (1.08 Re^1.22 - 5.2)                       30 to 1800
///     Nu = Re / (8750 + 58 Pr^(-1/2) (Re^0.75 - 253))      above
///
/// Source: Nusselt (1916), Kutateladze (1963), Labuntsov (1957); Incropera & DeWitt, equations
///         10.38 to 10.40. Passing smoothly between 0.8 and 1.25 times each join is ours.
/// Range:  Re < 1e5, 1 <= Pr < 10.
///
/// @param reynolds  4 G / mu at the lower edge, > 0 [-]
/// @param prandtl   of the liquid [-]
template <class T>
T film_number_by_reynolds(const T& reynolds, const T& prandtl) {
  using std::pow;
  using std::sqrt;
  const T laminar = 1.47 * pow(reynolds, -1.0 / 3.0);
  if (!(reynolds > 24.0)) return laminar;
  const T wavy = reynolds / (1.08 * pow(reynolds, 1.22) - 5.2);
  const T calm = film_regime::joined(reynolds, 30.0, laminar, wavy);
  if (!(reynolds > 1440.0)) return calm;
  const T turbulent = reynolds / (8750.0 + 58.0 / sqrt(prandtl) * (pow(reynolds, 0.75) - 253.0));
  return film_regime::joined(reynolds, 1800.0, calm, turbulent);
}

/// Mean film number of a vertical wall by its condensation parameter [-].
///
///     P  = k L dT / (mu h_fg (mu^2 / (g rho (rho - rho_v)))^(1/3))
///     Nu = 0.943 P^(-1/4)                                  P < 15.8
///     Nu = (0.68 P + 0.89)^0.82 / P                        15.8 to 2530
///     Nu = ((0.024 P - 53) Pr^(1/2) + 89)^(4/3) / P        above
///
/// Source: film_number_by_reynolds solved with Re = 4 Nu P, Incropera & DeWitt, equations 10.42 to
///         10.44. Passing smoothly between 0.8 and 1.25 times each join is ours.
/// Range:  P < 1e5, 1 <= Pr < 10.
template <class T>
T film_number(const T& parameter, const T& prandtl) {
  using std::pow;
  using std::sqrt;
  const T laminar = 0.943 / sqrt(sqrt(parameter));
  if (!(parameter > 12.64)) return laminar;
  const T wavy = pow(0.68 * parameter + 0.89, 0.82) / parameter;
  const T calm = film_regime::joined(parameter, 15.8, laminar, wavy);
  if (!(parameter > 2024.0)) return calm;
  const T flow = (0.024 * parameter - 53.0) * sqrt(prandtl) + 89.0;
  return film_regime::joined(parameter, 2530.0, calm, T(pow(flow, 4.0 / 3.0) / parameter));
}

/// Mean coefficient of a condensing film on a vertical wall, whatever its regime [W/(m2 K)].
///
///     h = Nu k / l,   l = (mu^2 / (g rho (rho - rho_v)))^(1/3)
///
/// Source: film_number.
/// Range:  as there; still vapour. dT is held above 1e-6 K, where h is without bound.
///
/// @param prandtl     of the liquid [-]
/// @param subcooling  saturation less wall temperature dT [K]
/// @param height      of the wall L [m]
template <class T>
T condensing_wall_coefficient(const Condensate<T>& film, const T& prandtl, const T& subcooling,
                              const T& height) {
  using std::pow;
  const T difference = subcooling > 1e-6 ? subcooling : T(1e-6);
  const T length =
      pow(film.viscosity * film.viscosity /
              (constants::gravity * film.density * (film.density - film.vapour_density)),
          1.0 / 3.0);
  const T parameter =
      film.conductivity * height * difference / (film.viscosity * film.latent_heat * length);
  return film_number(parameter, prandtl) * film.conductivity / length;
}

}  // namespace kettlecast
