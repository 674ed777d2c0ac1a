#include "kettlecast/kettle/layout.hpp"

#include "kettlecast/kettle/films.hpp"
#include "kettlecast/network/liquid_pool.hpp"
#include "kettlecast/network/size_classes.hpp"

namespace kettlecast {
namespace {

constexpr const char* class_names[] = {"small", "middle", "large"};

struct Named {
  const char* name;
  double scale;
};

// Scales: a temperature matters to about 100 K x tolerance, a mass to 1 kg, an enthalpy to that
// of 1 kg of water over 100 K. Larger values are weighed by their own size.
constexpr double kelvin = 100.0, kilogram = 1.0, joule = 4e5, book = 0.0;

constexpr Named fixed[slot::fixed_count] = {
    {"elements.temperature", kelvin},
    {"floor.lower_temperature", kelvin},
    {"floor.temperature", kelvin},
    {"jacket.temperature", kelvin},
    {"wall.temperature", kelvin},
    {"dry_wall.temperature", kelvin},
    {"liquid.enthalpy", joule},
    {"liquid.water", kilogram},
    {"liquid.oil", kilogram},
    {"liquid.solids", kilogram},
    {"floor_sensor.reading", kelvin},
    {"probe.reading", kelvin},
    {"liquid.layering", kelvin},
    {"core_probe.reading", kelvin},
    {"liquid.sugar", kilogram},
    {"liquid.salt", kilogram},
    {"heater.energy", book},
    {"losses.energy", book},
    {"vapour.energy", book},
    {"poured.energy", book},
    {"stirring.energy", book},
    {"cooling.energy", book},
    {"vapour.mass", book},
    {"poured.mass", book},
};

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
  for (const auto& entry : fixed) append(entry.name, entry.scale);
  for (std::size_t i = 0; i < additions.size(); ++i) {
    const bool thick = !(additions[i].food.consistency == Consistency{});
    if (additions[i].shape != Shape::none || !thick) continue;
    const std::string& name = additions[i].name;
    layout.thick.push_back(
        {i, append(name + ".poured", kilogram), append(name + ".thickened", kilogram)});
  }
  for (const auto& piece : pieces) {
    PieceSlots slots{append(piece.name + ".poured", kilogram),
                     append(piece.name + ".water", kilogram), 0};
    for (std::size_t k = 0; k < piece.shells.count; ++k) {
      const auto index = append(piece.name + ".enthalpy_" + std::to_string(k), joule);
      if (k == 0) slots.enthalpy = index;
    }
    layout.pieces.push_back(slots);
  }
  return layout;
}

}  // namespace kettlecast
