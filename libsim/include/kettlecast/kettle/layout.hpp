#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "kettlecast/kettle/kettle.hpp"
#include "kettlecast/network/piece_shells.hpp"

/// Where each quantity stands in the state of a kettle model.
namespace kettlecast {

/// Fixed part of the state. Temperatures in K, masses in kg, enthalpies and energies in J.
namespace slot {
inline constexpr std::size_t elements = 0;         ///< temperature of the floor elements
inline constexpr std::size_t floor_lower = 1;      ///< temperature, heater side of the floor
inline constexpr std::size_t floor_upper = 2;      ///< temperature, wetted side of the floor
inline constexpr std::size_t jacket = 3;           ///< temperature of the jacket
inline constexpr std::size_t wall_wet = 4;         ///< temperature of the wetted wall
inline constexpr std::size_t wall_dry = 5;         ///< temperature of the wall above the product
inline constexpr std::size_t liquid_enthalpy = 6;  ///< of liquid and co-moving metal
inline constexpr std::size_t water = 7;            ///< mass
inline constexpr std::size_t oil = 8;              ///< mass
inline constexpr std::size_t solids = 9;           ///< mass dissolved or ground
inline constexpr std::size_t floor_reading = 10;   ///< what the floor sensor shows
inline constexpr std::size_t probe_reading = 11;   ///< what the probe shows
inline constexpr std::size_t layering = 12;        ///< liquid near the floor less liquid above
inline constexpr std::size_t core_reading = 13;    ///< what a probe in the coldest piece shows
inline constexpr std::size_t sugar = 14;           ///< mass dissolved, part of the solids
inline constexpr std::size_t salt = 15;            ///< mass dissolved, part of the solids
// Books: added up from the flows, not part of the error control.
inline constexpr std::size_t heater_energy = 16;    ///< from floor and jacket
inline constexpr std::size_t lost_energy = 17;      ///< to the room, without vapour
inline constexpr std::size_t vapour_energy = 18;    ///< enthalpy of the vapour that left
inline constexpr std::size_t poured_energy = 19;    ///< enthalpy of what was poured
inline constexpr std::size_t stirring_energy = 20;  ///< work of the agitator
inline constexpr std::size_t cooling_energy = 21;   ///< taken away by a cooling jacket
inline constexpr std::size_t vapour_mass = 22;
inline constexpr std::size_t poured_mass = 23;
inline constexpr std::size_t fixed_count = 24;
}  // namespace slot

/// Pieces of one addition that are of one size.
struct PieceClass {
  std::size_t addition;  ///< index into the additions of the run
  double mass_share;     ///< of the addition [-]
  std::string name;      ///< of the addition, with its size where there are several
  PieceShells shells;
};

/// Where the pieces of one class stand: mass poured, water left, enthalpy of each shell.
struct PieceSlots {
  std::size_t poured;    ///< index of the mass poured [kg]
  std::size_t water;     ///< index of the water left in the pieces [kg]
  std::size_t enthalpy;  ///< index of the enthalpy of shell 0, the core [J]
};

/// Where a thick liquid stands: mass poured, and mass of it that has thickened.
struct ThickSlots {
  std::size_t addition;   ///< index into the additions of the run
  std::size_t poured;     ///< index of the mass poured [kg]
  std::size_t thickened;  ///< index of the mass that has thickened [kg]
};

/// Names and sizes of the whole state of a run.
struct Layout {
  std::vector<ThickSlots> thick;
  std::vector<PieceSlots> pieces;
  std::vector<std::string> names;  ///< "node.quantity"
  std::vector<double> scales;      ///< typical size; 0: a book
  /// Components weighed by their scale even where they are larger.
  std::vector<std::size_t> weighed_by_scale;
  std::size_t size() const { return names.size(); }
};

/// Classes of pieces of all additions: one per addition, or three where sizes are spread. Their
/// shells are as many as the Biot number in well stirred hot water asks for.
std::vector<PieceClass> make_piece_classes(const Kettle& kettle,
                                           const std::vector<Addition>& additions);

/// Layout for the additions of a run and the pieces among them.
Layout make_layout(const std::vector<Addition>& additions, const std::vector<PieceClass>& pieces);

}  // namespace kettlecast
