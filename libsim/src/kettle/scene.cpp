#include "kettlecast/kettle/scene.hpp"

#include "kettlecast/numerics/smooth.hpp"

namespace kettlecast {
namespace {

/// Immersion below which pieces lie as a heap instead of swimming: the liquid does not fill the
/// voids.
constexpr double heap_immersion = 0.7;

/// Mass that stands in for pieces not poured yet, so that their temperature is defined [kg].
constexpr double trace = 1e-6;

template <class T>
void observe_pieces(const PieceShells& shells, const PieceSlots& slots, const Addition& addition,
                    const std::vector<T>& x, PieceScene<T>& piece) {
  const double share = 1.0 / static_cast<double>(shells.count);
  const double fresh = shells.freezing.specific_enthalpy(addition.temperature);
  const T mass = x[slots.poured] + trace;
  piece.poured = x[slots.poured];
  piece.water_per_mass = (x[slots.water] + trace * shells.water_share) / mass;
  piece.volume = piece.poured * dry_volume(shells) + x[slots.water] / level_density_water;
  piece.mean_temperature = T(0.0);
  for (std::size_t k = 0; k < shells.count; ++k) {
    const T enthalpy = (x[slots.enthalpy + k] / share + trace * fresh) / mass;
    piece.temperature[k] = shell_temperature(shells, enthalpy, piece.water_per_mass);
    piece.mean_temperature += share * piece.temperature[k];
  }
  piece.surface_temperature = piece.temperature[shells.count - 1];
}

template <class T>
void observe_wetting(const SceneGeometry& geometry, Scene<T>& scene) {
  const T volume = scene.liquid_volume + scene.piece_volume;
  const T reached = volume / geometry.floor_area + splash_height;
  const double highest = highest_wet_share * geometry.height;
  scene.wet_height = reached < highest ? reached : T(highest);
  scene.wet_area = geometry.circumference * scene.wet_height;
  scene.dry_area = geometry.circumference * (geometry.height - scene.wet_height);
  scene.coverage = saturating(volume / (geometry.floor_area * bare_film));
}

}  // namespace

template <class T>
void observe(const SceneFacts<T>& facts, const std::vector<T>& x, Scene<T>& scene) {
  const auto& pieces = facts.layout->pieces;
  // The integrator may overshoot nothing by some micrograms.
  const auto mass = [&](std::size_t which) { return x[which] > 0.0 ? x[which] : T(0.0); };
  scene.pool = {mass(slot::water), mass(slot::oil), mass(slot::solids), x[slot::liquid_enthalpy],
                facts.metal_capacity};
  scene.liquid_temperature = pool_temperature(scene.pool);
  scene.lower_temperature = scene.liquid_temperature + (1.0 - lower_share) * x[slot::layering];
  scene.upper_temperature = scene.liquid_temperature - lower_share * x[slot::layering];
  scene.liquid_volume = pool_volume(scene.pool);
  scene.piece_volume = T(0.0);
  scene.pieces.resize(pieces.size());
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    observe_pieces((*facts.shells)[i], pieces[i], (*facts.additions)[pieces[i].addition], x,
                   scene.pieces[i]);
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
}

template void observe<double>(const SceneFacts<double>&, const std::vector<double>&,
                              Scene<double>&);

}  // namespace kettlecast
