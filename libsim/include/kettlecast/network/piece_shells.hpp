#pragma once

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
};

/// Shells of the pieces of an addition.
///
/// Number of shells: the square root of the diffusion time R^2/a over 40 s, 1 to 6, with R the
/// half thickness or radius and a = 1.4e-7 m2/s: more shells for pieces that take longer.
/// @throws InvalidArgument if the addition is a liquid
PieceShells make_piece_shells(const Addition& addition);

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

/// Conductivity of a shell [W/(m K)]; ice conducts about four times better than water.
template <class T>
T shell_conductivity(const PieceShells& shells, const T& temperature) {
  // Choi and Okos (1986) at 0 degC: ice 2.22, water 0.571 W/(m K).
  return shells.conductivity + (2.22 - 0.571) * shells.freezing.ice_fraction(temperature);
}

}  // namespace kettlecast
