#include "kettlecast/kettle/layout.hpp"

#include <algorithm>

#include "kettlecast/kettle/films.hpp"
#include "kettlecast/network/liquid_pool.hpp"
#include "kettlecast/network/size_classes.hpp"

namespace kettlecast {
namespace {

constexpr const char* class_names[] = {"small", "middle", "large"};

struct Named {
  const char* name;
  double scale;
  bool per_mass = false;  ///< scale of one kilogram of batch
};

// Scales: a temperature matters to about 100 K x tolerance, a mass to 1 kg or, if that is less, all
// that is poured, an enthalpy to that of as much water over 100 K. Larger values are weighed by
// their own size, but for the walls: metal goes from one to the other as the product rises, and
// the books of heat close no better than their temperatures.
constexpr double kelvin = 100.0, wall_kelvin = 1.0, kilogram = 1.0, joule = 4e5, book = 0.0;

constexpr Named fixed[slot::fixed_count] = {
    {"elements.temperature", kelvin},
    {"floor.lower_temperature", kelvin},
    {"floor.temperature", kelvin},
    {"jacket.temperature", kelvin},
    {"wall.temperature", wall_kelvin},
    {"dry_wall.temperature", wall_kelvin},
    {"liquid.enthalpy", joule, true},
    {"liquid.water", kilogram, true},
    {"liquid.oil", kilogram, true},
    {"liquid.solids", kilogram, true},
    {"floor_sensor.reading", kelvin},
    {"probe.reading", kelvin},
    {"liquid.layering", kelvin},
    {"core_probe.reading", kelvin},
    {"liquid.sugar", kilogram, true},
    {"liquid.salt", kilogram, true},
    {"heater.energy", book},
    {"losses.energy", book},
    {"vapour.energy", book},
    {"poured.energy", book},
    {"stirring.energy", book},
    {"cooling.energy", book},
    {"vapour.mass", book},
    {"poured.mass", book},
};

/// Mass that a run is about [kg]: all that is poured, at most 1 kg.
double weighed_mass(const std::vector<Addition>& additions) {
  double mass = 0.0;
  for (const auto& addition : additions) mass += addition.mass;
  return mass > 0.0 ? std::min(mass, kilogram) : kilogram;
}

/// Film of pieces in hot water that is stirred fast [W/(m2 K)].
double highest_film(const Kettle& kettle, double size) {
  constexpr double hot = 353.15, fast = 1.0, cold_pieces = 60.0;
  const LiquidPool<double> pool{1.0, 0.0, 0.0, 0.0, 0.0};
  const bool stirred = kettle.agitator != AgitatorKind::none;
  return piece_film_coefficient(kettle, film_properties(pool, hot),
                                {stirred ? fast : 0.0, 1.0, 1.0, cold_pieces}, size);
}

}  // namespace

std::vector<PieceClass> make_piece_classes(const Kettle& kettle,
                                           const std::vector<Addition>& additions) {
  std::vector<PieceClass> pieces;
  for (std::size_t i = 0; i < additions.size(); ++i) {
    if (additions[i].shape == Shape::none) continue;
    const auto sizes = lognormal_size_classes(additions[i].piece_size, additions[i].size_spread);
    for (std::size_t k = 0; k < sizes.size(); ++k) {
      Addition of_size = additions[i];
      of_size.piece_size = sizes[k].size;
      const std::string name =
          sizes.size() == 1 ? additions[i].name : additions[i].name + "." + class_names[k];
      pieces.push_back({i, sizes[k].mass_share, name,
                        make_piece_shells(of_size, highest_film(kettle, sizes[k].size))});
    }
  }
  return pieces;
}

Layout make_layout(const std::vector<Addition>& additions, const std::vector<PieceClass>& pieces) {
  Layout layout;
  const auto append = [&](const std::string& name, double scale) {
    layout.names.push_back(name);
    layout.scales.push_back(scale);
    return layout.names.size() - 1;
  };
  const double batch = weighed_mass(additions);
  for (const auto& entry : fixed) {
    append(entry.name, entry.per_mass ? batch * entry.scale : entry.scale);
  }
  layout.weighed_by_scale = {slot::wall_wet, slot::wall_dry};
  for (std::size_t i = 0; i < additions.size(); ++i) {
    const bool thick = !(additions[i].food.consistency == Consistency{});
    if (additions[i].shape != Shape::none || !thick) continue;
    const std::string& name = additions[i].name;
    const double mass = std::min(additions[i].mass, kilogram);
    layout.thick.push_back({i, append(name + ".poured", mass), append(name + ".thickened", mass)});
  }
  for (const auto& piece : pieces) {
    const double mass = std::min(additions[piece.addition].mass * piece.mass_share, kilogram);
    PieceSlots slots{append(piece.name + ".poured", mass), append(piece.name + ".water", mass), 0};
    for (std::size_t k = 0; k < piece.shells.count; ++k) {
      const auto index = append(piece.name + ".enthalpy_" + std::to_string(k), mass * joule);
      if (k == 0) slots.enthalpy = index;
    }
    layout.pieces.push_back(slots);
  }
  return layout;
}

}  // namespace kettlecast
