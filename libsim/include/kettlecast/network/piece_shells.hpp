#pragma once

#include <cmath>
#include <cstddef>
#include <vector>

#include "kettlecast/base/constants.hpp"
#include "kettlecast/properties/freezing.hpp"
#include "kettlecast/recipe/recipe.hpp"

/// Pieces of one ingredient as a few nested shells of equal volume.
///
/// Shell 0 is the core. Heat flows between the mid-volume surfaces of neighbouring shells; the
/// outermost shell meets the film. A single shell uses the linear driving force of a body that
/// warms evenly: R/(5k) for a sphere, R/(4k) for a cylinder, L/(3k) for half a slab.
/// Six shells freeze as the heat equation within 4 %, a slab of water as Neumann's solution within
/// 6 %; under a strong film the centre thaws early, up to 5 % (slab), 12 % (cylinder), 20 %
/// (sphere).
///
/// Source: shells: integral of Fourier's law; driving force: Glueckauf, Trans. Faraday Soc. 51
/// (1955) 1540, and its cylinder and slab forms (from memory).
namespace kettlecast {

inline constexpr std::size_t most_shells = 6;

/// Specific heat of water inside pieces [J/(kg K)], one value so that water leaving a piece takes
/// along exactly what it held. Source: water.hpp, mean of 0..100 degC.
inline constexpr double piece_water_specific_heat = 4190.0;

/// Specific heat that is left when pieces of water have boiled away [J/(kg K)]; keeps their
/// temperature defined.
inline constexpr double least_specific_heat = 50.0;

/// Geometry and material of the pieces of one addition; fixed during a run.
struct PieceShells {
  FreezingFood freezing;
  std::size_t count = 1;              ///< shells [-]
  double area = 0.0;                  ///< surface per mass [m2/kg]
  double conductivity = 0.5;          ///< unfrozen, at 50 degC [W/(m K)]
  double density = 1000.0;            ///< of the food as poured [kg/m3]
  double size = 0.0;                  ///< thickness or diameter [m]
  double water_share = 0.8;           ///< water in the food as poured [kg/kg]
  double dry_specific_heat = 1600.0;  ///< of all but water [J/(kg K)]
  double free_juice = 0.0;            ///< share of the water given up when cooked [-]
  double surface_resistance = 0.0;    ///< outer shell to surface, times conductivity [m]
  /// Conductance between shell i and i+1 per mass and conductivity [m/kg].
  std::vector<double> links;
  double core_reach = 0.0;  ///< true centre less core shell, per core less next shell [-]
  double core_bend = 0.0;   ///< of a parabola: step from shell 0 to 1 per step from 1 to 2 [-]
};

/// Shells of the pieces of an addition.
///
/// Number of shells: the square root of the diffusion time R^2/a over 40 s, 1 to 6, with R the
/// half thickness or radius and a = 1.4e-7 m2/s: more shells for pieces that take longer. This is
/// what the kettle uses: its films change during a run, the number of its states cannot.
///
/// @throws InvalidArgument if the addition is a liquid
PieceShells make_piece_shells(const Addition& addition);

/// Shells of the pieces of an addition whose film is known beforehand.
///
/// The number above or, if that is fewer, what the Biot number h R / k asks for: one below 0.1, two
/// below 0.3, three below 0.8, four below 2, five below 5, then six. Then the mean temperature
/// stays within 1.6 % of the whole change from the exact series, the core within 3 %
/// (sphere 7 %).
///
/// @param expected_film  h, the highest expected [W/(m2 K)]
/// @throws InvalidArgument if the addition is a liquid or the film is not above zero
PieceShells make_piece_shells(const Addition& addition, double expected_film);

/// Temperature of a shell [K].
///
/// @param shells          material
/// @param enthalpy        per mass of food as poured [J/kg], zero for unfrozen food at 273.15 K
/// @param water_per_mass  water left per mass of food as poured [kg/kg]
template <class T>
T shell_temperature(const PieceShells& shells, const T& enthalpy, const T& water_per_mass) {
  const T of_parts = shells.dry_specific_heat * (1.0 - shells.water_share) +
                     piece_water_specific_heat * water_per_mass;
  const T specific_heat = of_parts > least_specific_heat ? of_parts : T(least_specific_heat);
  // Pieces that lost water reach their freezing point at less enthalpy; scaled to fresh ones, the
  // two branches meet there.
  const T as_fresh = enthalpy * shells.freezing.unfrozen_specific_heat / specific_heat;
  const double thaw = shells.freezing.specific_enthalpy(shells.freezing.freezing_point);
  if (as_fresh < thaw) return shells.freezing.temperature(as_fresh);
  return constants::ice_point + enthalpy / specific_heat;
}

/// Enthalpy of the water in a shell [J/kg], zero for liquid water at 273.15 K.
///
///     h = c_w h_f(T) / c_u
///
/// with h_f and c_u enthalpy and unfrozen specific heat of the fresh food: the change of the heat
/// of a shell per water that leaves it at constant temperature, by the scaling of
/// shell_temperature. Water that leaves a frozen shell takes its share of the cold of the ice
/// along.
///
/// @param shells       material
/// @param temperature  of the shell [K]
template <class T>
T shell_water_enthalpy(const PieceShells& shells, const T& temperature) {
  return piece_water_specific_heat / shells.freezing.unfrozen_specific_heat *
         shells.freezing.specific_enthalpy(temperature);
}

/// Conductivity of a shell [W/(m K)]; ice conducts about four times better than water.
template <class T>
T shell_conductivity(const PieceShells& shells, const T& temperature) {
  // Choi and Okos (1986) at 0 degC: ice 2.22, water 0.571 W/(m K).
  return shells.conductivity + (2.22 - 0.571) * shells.freezing.ice_fraction(temperature);
}

/// Temperature of the surface of pieces [K].
///
///     T = (h Tf + k/l To) / (h + k/l),   l surface_resistance
///
/// @param shells  material
/// @param outer   To, of the outermost shell [K]
/// @param film    h > 0 [W/(m2 K)]
/// @param fluid   Tf [K]
template <class T>
T piece_surface_temperature(const PieceShells& shells, const T& outer, const T& film,
                            const T& fluid) {
  const T inside = shell_conductivity(shells, outer) / shells.surface_resistance;
  return (film * fluid + inside * outer) / (film + inside);
}

/// Temperature at the true centre of pieces, what a core probe meets [K].
///
///     Tc = T0 + w (T0 - T1) min(1, |T0 - T1| / |b (T1 - T2)|)
///
/// A parabola of the radius has T0 and T1 as its means over the two innermost shells. While warmth
/// has not come in so far, the profile is flatter inside than a parabola; the last factor sees that
/// from the third shell and keeps the centre from running ahead of the start. A single shell goes
/// with the surface, a pair without the factor.
/// Source: means of a parabola over shells; the factor is ours. Error: see make_piece_shells.
///
/// @param shells        count, core_reach w and core_bend b
/// @param temperatures  of the shells, core first, [] gives T [K]
/// @param surface       of the surface, used for a single shell [K]
template <class Temperatures, class T>
T core_temperature(const PieceShells& shells, const Temperatures& temperatures, const T& surface) {
  using std::fabs;
  const T core = temperatures[0];
  const T step = core - (shells.count == 1 ? surface : T(temperatures[1]));
  T trust(1.0);
  if (shells.count > 2) {
    const T wanted = fabs(shells.core_bend * (temperatures[1] - temperatures[2]));
    if (fabs(step) < wanted) trust = fabs(step) / wanted;
  }
  return core + shells.core_reach * trust * step;
}

}  // namespace kettlecast
