#pragma once

#include <algorithm>
#include <array>
#include <vector>

#include "kettlecast/kettle/kettle.hpp"
#include "kettlecast/kettle/layout.hpp"
#include "kettlecast/kettle/vessel.hpp"
#include "kettlecast/network/liquid_pool.hpp"

/// What a state means: temperatures, volumes and wetted areas, derived once per evaluation.
namespace kettlecast {

/// Pieces of one addition, as they are at one instant.
template <class T>
struct PieceScene {
  T poured;                                ///< mass of food poured so far [kg]
  T water_per_mass;                        ///< water left per mass poured [kg/kg]
  T volume;                                ///< [m3]
  T share;                                 ///< of the volume of all pieces [-]
  T mean_temperature;                      ///< over the shells [K]
  T surface_temperature;                   ///< of the outermost shell [K]
  T core_temperature;                      ///< at the true centre, see piece_shells.hpp [K]
  std::array<T, most_shells> temperature;  ///< of each shell, core first [K]
};

template <class T>
struct Scene {
  LiquidPool<T> pool;
  ThickLiquids<T> thick;
  T liquid_temperature;   ///< mean of the liquid [K]
  T lower_temperature;    ///< of the liquid near the floor [K]
  T upper_temperature;    ///< of the liquid above [K]
  T liquid_volume;        ///< [m3]
  T piece_volume;         ///< [m3]
  T level;                ///< of the product on the axis, above the centre of the floor [m]
  T surface_area;         ///< free surface of the product [m2]
  T wet_area, dry_area;   ///< of the straight wall, splashed rim counted as wet [m2]
  T wall_contact;         ///< of the wetted wall, where product touches it [m2]
  T wall_area_rate;       ///< change of the wetted wall per change of volume [1/m]
  T coverage;             ///< share of the floor under product [-]
  T immersion;            ///< 1: pieces swim in liquid, 0: they lie dry on the floor [-]
  T swimming;             ///< 1: liquid and pieces move past each other, 0: they lie as a heap [-]
  T product_temperature;  ///< what a probe in the product meets [K]
  T core_temperature;     ///< of the coldest core of pieces, or of the product without pieces [K]
  T water_activity;       ///< of the liquid: its vapour pressure over that of water [-]
  T boiling_point;        ///< of the liquid [K]
  std::vector<PieceScene<T>> pieces;
};

/// Sizes of a kettle.
struct SceneGeometry {
  VesselSizes vessel;
  double floor_area = 0.0;     ///< of the whole floor [m2]
  double circumference = 0.0;  ///< of the straight wall [m]
  double wall_height = 0.0;    ///< of the straight wall [m]
};

/// What a scene needs besides the state; pointers live as long as the model.
template <class T>
struct SceneFacts {
  SceneGeometry geometry;
  T metal_capacity;            ///< metal that moves with the liquid [J/K]
  double pressure;             ///< of the room [Pa]
  double water_boiling_point;  ///< at that pressure [K]
  const Layout* layout;
  const std::vector<PieceClass>* pieces;
  const std::vector<Addition>* additions;
};

/// Product higher than its level wets the wall this much further [m]: splashing and the film a
/// scraper draws up. Common practice, no source.
inline constexpr double splash_height = 0.02;

/// Share of a heap of pieces that is void and liquid can fill, per volume of pieces. Source:
/// random loose packing of spheres, porosity 0.40 (Dullien, Porous Media, 1992, from memory).
inline constexpr double void_per_piece_volume = 0.4 / 0.6;

/// Share of the liquid that counts as near the floor [-]. A choice of lumping, no source.
inline constexpr double lower_share = 0.3;

/// Share of the wall that counts as wet at most, so that the dry wall keeps some metal.
inline constexpr double highest_wet_share = 0.98;

/// Mass of water per floor area at which evaporation starts to run out of water [kg/m2].
inline constexpr double last_film = 0.02;

/// Volume of the dry part of pieces per mass of food as poured [m3/kg]; none for plain water, whose
/// density here and there differs.
inline double dry_volume(const PieceShells& shells) {
  return std::max(1.0 / shells.density - shells.water_share / level_density_water, 0.0);
}

/// Fills `scene` from a state; its vectors are reused from call to call.
template <class T>
void observe(const SceneFacts<T>& facts, const std::vector<T>& x, Scene<T>& scene);

}  // namespace kettlecast
