#include "kettlecast/kettle/layout.hpp"

namespace kettlecast {
namespace {

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
    {"heater.energy", book},
    {"losses.energy", book},
    {"vapour.energy", book},
    {"poured.energy", book},
    {"vapour.mass", book},
    {"poured.mass", book},
};

}  // namespace

Layout make_layout(const std::vector<Addition>& additions, const std::vector<PieceShells>& shells) {
  Layout layout;
  const auto append = [&](const std::string& name, double scale) {
    layout.names.push_back(name);
    layout.scales.push_back(scale);
    return layout.names.size() - 1;
  };
  for (const auto& entry : fixed) append(entry.name, entry.scale);
  std::size_t next = 0;
  for (std::size_t i = 0; i < additions.size(); ++i) {
    if (additions[i].shape == Shape::none) continue;
    const std::string node = additions[i].name;
    PieceSlots slots{i, append(node + ".poured", kilogram), append(node + ".water", kilogram), 0};
    for (std::size_t k = 0; k < shells[next].count; ++k) {
      const auto index = append(node + ".enthalpy_" + std::to_string(k), joule);
      if (k == 0) slots.enthalpy = index;
    }
    layout.pieces.push_back(slots);
    ++next;
  }
  return layout;
}

}  // namespace kettlecast
