#include "kettlecast/kettle/coefficients.hpp"

#include "kettlecast/base/errors.hpp"

namespace kettlecast {
namespace {

// "handbook" factors multiply a published correlation, whose constants differ by 10-40 % between
// sources (see transfer/agitated.hpp); their prior spread is that disagreement.
constexpr std::array<CoefficientCard, coefficient_count> cards{{
    {"floor.efficiency", "-", 0.85, 0.3, 1.1, 0.1, true,
     "share of the nominal floor power that reaches the elements' metal",
     "common practice, no source"},
    {"elements.heat_capacity", "J/(K W)", 0.3, 0.005, 30.0, 1.0, true,
     "heat capacity of the floor elements per watt of nominal power", "common practice, no source"},
    {"elements.lag", "s", 12.0, 0.5, 900.0, 0.8, true,
     "time constant of the floor elements against the floor plate", "common practice, no source"},
    {"floor.capacity_factor", "-", 1.0, 0.2, 4.0, 0.25, true,
     "heat capacity of the floor relative to a plain plate of the stated thickness and metal",
     "1 by definition"},
    {"floor.resistance_factor", "-", 1.0, 0.02, 30.0, 0.6, true,
     "conduction resistance of the floor relative to a plain plate", "1 by definition"},
    {"floor.film_factor", "-", 1.0, 0.1, 6.0, 0.35, true,
     "film coefficient at the floor relative to the handbook correlation",
     "transfer/agitated.hpp and transfer/natural_convection.hpp"},
    {"floor.boiling_factor", "-", 0.5, 1e-3, 20.0, 1.2, true,
     "nucleate boiling at floor and wall relative to polished steel in clean water; the surface "
     "constant of common metals spreads it over a factor of ten",
     "transfer/boiling.hpp"},
    {"floor.contact_resistance", "m2 K/W", 1e-3, 2e-5, 5e-2, 0.8, true,
     "resistance between the hot floor and pieces pressed on it",
     "fitted; order of a 0.1 mm film of fat and vapour, no source"},
    {"floor.loss", "W/(m2 K)", 6.0, 0.0, 60.0, 3.0, false,
     "heat lost from the underside of the floor to the room", "common practice, no source"},
    {"jacket.efficiency", "-", 0.85, 0.3, 1.1, 0.1, true,
     "share of the nominal jacket power that reaches the jacket", "common practice, no source"},
    {"jacket.heat_capacity", "J/(m2 K)", 1.0e4, 500.0, 2e5, 0.8, true,
     "heat capacity of the jacket per square metre of jacketed wall", "common practice, no source"},
    {"jacket.conductance", "W/(m2 K)", 250.0, 5.0, 5000.0, 0.8, true,
     "conductance from an electric jacket to the wall", "common practice, no source"},
    {"jacket.film_factor", "-", 1.0, 0.1, 6.0, 0.35, true,
     "film coefficient of steam or liquid in the jacket relative to the handbook correlation",
     "transfer/condensation.hpp and transfer/jacket_flow.hpp"},
    {"wall.film_factor", "-", 1.0, 0.1, 6.0, 0.35, true,
     "film coefficient at the wall relative to the handbook correlation",
     "transfer/agitated.hpp and transfer/natural_convection.hpp"},
    {"wall.loss", "W/(m2 K)", 6.0, 0.0, 60.0, 4.0, false,
     "heat lost from the outside of wall or jacket to the room; bare metal 10-20, insulated 1-3",
     "common practice, no source"},
    {"evaporation.factor", "-", 0.7, 0.02, 6.0, 0.35, true,
     "evaporation and convection at the free surface relative to the Lewis analogy",
     "measured mugs of hot water gave 0.5 to 0.8 (validation/mug.py); transfer/evaporation.hpp"},
    {"evaporation.lid_factor", "-", 0.1, 0.0, 1.0, 0.1, false,
     "share of the evaporation that a lid lets through", "common practice, no source"},
    {"piece.film_factor", "-", 1.0, 0.05, 10.0, 0.3, true,
     "film coefficient between pieces and liquid relative to the sphere correlation",
     "transfer/piece_film.hpp"},
    {"piece.coating_factor", "-", 1.0, 0.05, 10.0, 0.5, true,
     "heat between pieces in a heap and what liquid coats them, relative to conduction through "
     "half "
     "the coating; coatings are uneven",
     "1 by definition of the even coating, spread common practice, no source"},
    {"juice.rate", "1/s", 4e-3, 1e-4, 0.1, 0.8, true,
     "rate at which fully cooked pieces give up their free juice", "fitted, no source"},
    {"solids.thickening", "-", 6.0, 0.3, 200.0, 0.8, true,
     "how strongly pieces thicken the liquid at heated surfaces: relative viscosity per volume "
     "fraction, 2.5 for few spheres",
     "properties/mixture.hpp"},
    {"liquid.turnover", "m/s", 2.5e-3, 1e-4, 0.05, 0.8, true,
     "speed at which resting liquid turns over between floor and surface",
     "plumes over a heated floor move at millimetres to centimetres per second, no source"},
    {"liquid.mixing_turns", "-", 4.0, 0.2, 60.0, 0.8, true,
     "turns of the agitator in which a difference between floor and surface falls to 1/e",
     "anchors mix in 10 to 40 turns, three time constants; common practice, no source"},
    {"agitator.heat_capacity", "J/(m2 K)", 50.0, 1.0, 5e4, 1.0, true,
     "heat capacity of metal that moves with the product, per square metre of floor",
     "common practice, no source"},
    {"agitator.power_factor", "-", 1.0, 1e-4, 10.0, 0.35, true,
     "work of the agitator relative to the handbook power number", "transfer/stirring.hpp"},
    {"floor_sensor.position", "-", 0.5, -0.5, 2.0, 0.4, false,
     "where the floor sensor sits: 0 wetted side, 1 heater side of the plate",
     "type of installation, no source"},
    {"floor_sensor.lag", "s", 5.0, 0.2, 120.0, 0.7, true, "time constant of the floor sensor",
     "common practice, no source"},
    {"floor_sensor.offset", "K", 0.0, -8.0, 8.0, 1.0, false, "floor reading less floor temperature",
     "0 by definition"},
    {"probe.lag", "s", 12.0, 0.2, 180.0, 0.6, true, "time constant of the product probe",
     "common practice: 5-20 s bare in stirred liquid, 20-60 s in a well; no source"},
    {"probe.offset", "K", 0.0, -8.0, 8.0, 0.7, false, "probe reading less product temperature",
     "0 by definition"},
    {"probe.height", "m", 1.5e-3, 1e-4, 0.3, 0.8, true,
     "depth of product that covers the probe; in less it feels the headspace too",
     "type of installation, no source"},
    {"room.offset", "K", 0.0, -20.0, 20.0, 2.0, false, "room in a run less the room stated",
     "0 by definition", true},
    {"pour.delay", "s", 0.0, -300.0, 300.0, 8.0, false,
     "how much later than stated the pours of a run began", "0 by definition", true},
    {"addition.temperature_offset", "K", 0.0, -20.0, 20.0, 2.0, false,
     "temperature of what was poured in a run less the one stated", "0 by definition", true},
    {"addition.mass_factor", "-", 1.0, 0.3, 3.0, 0.03, true,
     "mass of what was poured in a run relative to the one stated", "1 by definition", true},
}};

std::vector<std::string> names() {
  std::vector<std::string> all;
  for (const auto& card : cards) all.emplace_back(card.name);
  return all;
}

}  // namespace

const std::array<CoefficientCard, coefficient_count>& coefficient_cards() { return cards; }

Coefficient coefficient_named(const std::string& name) {
  for (std::size_t i = 0; i < cards.size(); ++i) {
    if (cards[i].name == name) return static_cast<Coefficient>(i);
  }
  throw UnknownName("Coefficients", name, names());
}

Coefficients::Coefficients() {
  for (std::size_t i = 0; i < cards.size(); ++i) values_[i] = cards[i].value;
}

Coefficients Coefficients::with(const std::string& name, double value) const {
  const auto index = static_cast<std::size_t>(coefficient_named(name));
  const auto& card = cards[index];
  require_between("Coefficients", name, value, card.lower, card.upper, std::string(card.unit));
  Coefficients changed = *this;
  changed.values_[index] = value;
  return changed;
}

}  // namespace kettlecast
