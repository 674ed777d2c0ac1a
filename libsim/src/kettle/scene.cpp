#include "kettlecast/kettle/scene.hpp"

#include <algorithm>

#include "kettlecast/numerics/dual.hpp"
#include "kettlecast/numerics/smooth.hpp"

namespace kettlecast {
namespace {

/// Immersion below which pieces lie as a heap instead of swimming: the liquid does not fill the
/// voids.
constexpr double heap_immersion = 0.7;

/// Mass of pieces that somebody would find to push a probe into [kg].
constexpr double least_probed = 1e-3;

/// Mass that stands in for what is not poured yet, so that its state is defined [kg], and at most
/// that share of an addition.
constexpr double trace = 1e-6;

/// The centre of a piece that has only been warmed is no colder than it was poured: maximum
/// principle of the heat equation. Where warmth has just come in, or thaws the outside, a parabola
/// through the shells would run below that. A piece that was cooled first shows it by its innermost
/// shell; the limit then gives way, ten times as fast as that shell is colder than poured.
template <class T>
T limited_core(const T& core, const T& innermost, double poured) {
  constexpr double giving_way = 10.0;
  const T limit = innermost < poured ? T(innermost - giving_way * (poured - innermost)) : T(poured);
  return core < limit && core < innermost ? limit : core;
}

template <class T>
void observe_pieces(const PieceShells& shells, const PieceSlots& slots, const Addition& addition,
                    const std::vector<T>& x, PieceScene<T>& piece) {
  const double share = 1.0 / static_cast<double>(shells.count);
  const double fresh = shells.freezing.specific_enthalpy(addition.temperature);
  const double unpoured = trace * std::min(addition.mass, 1.0);
  const T mass = x[slots.poured] + unpoured;
  piece.poured = x[slots.poured];
  piece.water_per_mass = (x[slots.water] + unpoured * shells.water_share) / mass;
  const T volume = piece.poured * dry_volume(shells) + x[slots.water] / level_density_water;
  // What stands in for unpoured food dries up too and would leave pieces of nothing but water with
  // less than no volume.
  piece.volume = volume > 0.0 ? volume : T(0.0);
  piece.mean_temperature = T(0.0);
  for (std::size_t k = 0; k < shells.count; ++k) {
    const T enthalpy = (x[slots.enthalpy + k] / share + unpoured * fresh) / mass;
    piece.temperature[k] = shell_temperature(shells, enthalpy, piece.water_per_mass);
    piece.mean_temperature += share * piece.temperature[k];
  }
  piece.surface_temperature = piece.temperature[shells.count - 1];
  piece.core_temperature =
      limited_core(core_temperature(shells, piece.temperature, piece.surface_temperature),
                   piece.temperature[0], addition.temperature);
}

template <class T>
void observe_thick(const SceneFacts<T>& facts, const std::vector<T>& x, Scene<T>& scene) {
  const auto& slots = facts.layout->thick;
  scene.thick.parts.resize(slots.size());
  for (std::size_t i = 0; i < slots.size(); ++i) {
    const Food& food = (*facts.additions)[slots[i].addition].food;
    const T poured = x[slots[i].poured];
    scene.thick.parts[i] = {&food.consistency, food.composition.fat, 1.0 - food.composition.water,
                            poured, x[slots[i].thickened] / (poured + trace)};
  }
}

/// A cook pushes the probe into the piece that is coldest.
template <class T>
void observe_core(Scene<T>& scene) {
  bool any = false;
  for (const auto& piece : scene.pieces) {
    if (piece.poured < least_probed) continue;
    if (!any || piece.core_temperature < scene.core_temperature) {
      scene.core_temperature = piece.core_temperature;
    }
    any = true;
  }
  if (!any) scene.core_temperature = scene.product_temperature;
}

template <class T>
void observe_wetting(const SceneGeometry& geometry, Scene<T>& scene) {
  const Wetting<T> wet = wetting(geometry.vessel, T(scene.liquid_volume + scene.piece_volume));
  const double wall = geometry.circumference * geometry.wall_height;
  const double splashed = geometry.circumference * splash_height;
  const double most = highest_wet_share * wall;
  const bool at_rim = wet.wall_area + splashed >= most;
  scene.level = wet.level > 0.0 ? wet.level : T(0.0);
  scene.surface_area = wet.surface_area;
  scene.coverage = wet.floor_area / geometry.floor_area;
  scene.wet_area = at_rim ? T(most) : T(wet.wall_area + splashed);
  scene.wall_contact = at_rim ? T(most) : T(wet.wall_area + scene.coverage * splashed);
  scene.dry_area = wall - scene.wet_area;
  scene.wall_area_rate = at_rim ? T(0.0) : wet.wall_area_per_volume;
}

}  // namespace

template <class T>
void observe(const SceneFacts<T>& facts, const std::vector<T>& x, Scene<T>& scene) {
  const auto& pieces = facts.layout->pieces;
  // The integrator may overshoot nothing by some micrograms.
  const auto mass = [&](std::size_t which) { return x[which] > 0.0 ? x[which] : T(0.0); };
  scene.pool = {mass(slot::water),        mass(slot::oil),      mass(slot::solids),
                x[slot::liquid_enthalpy], facts.metal_capacity, mass(slot::sugar),
                mass(slot::salt)};
  if (!facts.layout->thick.empty()) observe_thick(facts, x, scene);
  scene.liquid_temperature = pool_temperature(scene.pool);
  scene.lower_temperature = scene.liquid_temperature + (1.0 - lower_share) * x[slot::layering];
  scene.upper_temperature = scene.liquid_temperature - lower_share * x[slot::layering];
  scene.liquid_volume = pool_volume(scene.pool);
  scene.piece_volume = T(0.0);
  scene.pieces.resize(pieces.size());
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const PieceClass& piece = (*facts.pieces)[i];
    observe_pieces(piece.shells, pieces[i], (*facts.additions)[piece.addition], x, scene.pieces[i]);
    scene.piece_volume += scene.pieces[i].volume;
  }
  T heap_temperature(0.0);
  for (auto& piece : scene.pieces) {
    piece.share = piece.volume / (scene.piece_volume + 1e-12);
    heap_temperature += piece.share * piece.surface_temperature;
  }
  observe_wetting(facts.geometry, scene);
  const T filled = scene.liquid_volume / (void_per_piece_volume * scene.piece_volume + 1e-9);
  scene.immersion = scene.piece_volume > 1e-9 ? saturating(filled) : T(1.0);
  scene.swimming = smooth_step(T((scene.immersion - heap_immersion) / (1.0 - heap_immersion)));
  scene.product_temperature =
      scene.immersion * scene.upper_temperature + (1.0 - scene.immersion) * heap_temperature;
  observe_core(scene);
  scene.water_activity = pool_water_activity(scene.pool);
  scene.boiling_point = scene.water_activity < 1.0
                            ? boiling_temperature(T(facts.pressure), scene.water_activity)
                            : T(facts.water_boiling_point);
}

template void observe<double>(const SceneFacts<double>&, const std::vector<double>&,
                              Scene<double>&);
template void observe<Dual8>(const SceneFacts<Dual8>&, const std::vector<Dual8>&, Scene<Dual8>&);

}  // namespace kettlecast
