#pragma once

#include <limits>
#include <string>
#include <vector>

#include "kettlecast/base/record.hpp"
#include "kettlecast/properties/food.hpp"
#include "kettlecast/properties/shape.hpp"

/// A recipe is a list of phases; a phase says what is regulated, what is added, how the product
/// is stirred and when the phase is over. All values are immutable once checked.
namespace kettlecast {

inline constexpr double no_limit = std::numeric_limits<double>::infinity();

/// One ingredient poured into the kettle.
struct Addition {
  std::string name;  ///< what people call it; usually the name of the food
  Food food;
  double mass = 0.0;            ///< [kg]
  double temperature = 293.15;  ///< [K]
  Shape shape = Shape::none;
  double piece_size = 0.0;   ///< mean thickness of a slab or diameter [m]; 0 for liquids
  double size_spread = 0.0;  ///< standard deviation of the sizes over their mean [-]
  double delay = 0.0;        ///< from the start of the phase to the start of the pour [s]
  double pour_time = 0.0;    ///< [s]

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("name", &Addition::name);
    visit("food", &Addition::food);
    visit("mass", &Addition::mass);
    visit("temperature", &Addition::temperature);
    visit("shape", &Addition::shape);
    visit("piece_size", &Addition::piece_size);
    visit("size_spread", &Addition::size_spread);
    visit("delay", &Addition::delay);
    visit("pour_time", &Addition::pour_time);
  }
  bool operator==(const Addition& other) const { return equal_records(*this, other); }
};

/// Speed of the agitator, constant or in on/off cycles (on first).
///
/// A reversing agitator turns the other way in every second cycle. Heat transfer depends on the
/// speed alone: a blade sweeps a wall as often either way round. Common practice, no source.
struct Agitation {
  double speed = 0.0;      ///< turns per second while on [1/s]
  double on_time = 0.0;    ///< [s]; 0 with off_time 0: always on
  double off_time = 0.0;   ///< [s]
  bool reversing = false;  ///< the other way round in every second cycle

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("speed", &Agitation::speed);
    visit("on_time", &Agitation::on_time);
    visit("off_time", &Agitation::off_time);
    visit("reversing", &Agitation::reversing);
  }
  bool operator==(const Agitation& other) const { return equal_records(*this, other); }
};

/// What lies on the free surface: nothing, a lid, or a film of oil that stops evaporation only.
enum class Cover { open, lid, oil_film };

/// What the jacket does in a phase.
enum class JacketUse { off, heat, cool };

/// What the heat is regulated on. `difference` is floor reading less probe reading; `core` is the
/// reading of a probe in the coldest piece, or in the liquid while there are no pieces.
enum class Regulated { none, floor, probe, difference, core };

/// When a phase is over. The first rule that is met ends it.
enum class EndKind {
  held,        ///< `value` seconds after the set point was reached with everything loaded
  elapsed,     ///< `value` seconds after the start of the phase
  above,       ///< the reading of `signal` has risen to `value` [K] with everything loaded
  below,       ///< the reading of `signal` has fallen to `value` [K] with everything loaded
  mass_lost,   ///< `value` kilograms of water have left in this phase
  share_lost,  ///< `value` of what the phase holds (product at its start and additions) has left
};

struct EndRule {
  EndKind kind = EndKind::elapsed;
  double value = 0.0;                   ///< [s], [K], [kg] or [-], see EndKind
  Regulated signal = Regulated::probe;  ///< reading watched by `above` and `below`

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("kind", &EndRule::kind);
    visit("value", &EndRule::value);
    visit("signal", &EndRule::signal);
  }
  bool operator==(const EndRule& other) const { return equal_records(*this, other); }
};

struct Phase {
  std::string name;
  Regulated regulated = Regulated::none;
  double set_point = 0.0;  ///< [K], a temperature or, for `difference`, a temperature difference
  std::vector<EndRule> ends;
  double time_limit = 4 * 3600.0;  ///< the phase ends as timed out after this long [s]
  std::vector<Addition> additions;
  Agitation agitation;
  double heat_limit = 1.0;             ///< highest share of the controlled power used [-]
  double floor_limit = no_limit;       ///< ceiling for the floor reading [K]
  double difference_limit = no_limit;  ///< ceiling for floor reading less probe reading [K]
  JacketUse jacket = JacketUse::off;
  double jacket_share = 1.0;       ///< share of the jacket power in use, its level [-]
  double jacket_limit = 373.15;    ///< the jacket heats while it is colder than this [K]
  double jacket_cool_limit = 0.0;  ///< the jacket cools while it is warmer than this [K]
  Cover cover = Cover::open;
  std::string prompt;  ///< what the operator is told

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("name", &Phase::name);
    visit("regulated", &Phase::regulated);
    visit("set_point", &Phase::set_point);
    visit("ends", &Phase::ends);
    visit("time_limit", &Phase::time_limit);
    visit("additions", &Phase::additions);
    visit("agitation", &Phase::agitation);
    visit("heat_limit", &Phase::heat_limit);
    visit("floor_limit", &Phase::floor_limit);
    visit("difference_limit", &Phase::difference_limit);
    visit("jacket", &Phase::jacket);
    visit("jacket_share", &Phase::jacket_share);
    visit("jacket_limit", &Phase::jacket_limit);
    visit("jacket_cool_limit", &Phase::jacket_cool_limit);
    visit("cover", &Phase::cover);
    visit("prompt", &Phase::prompt);
  }
  bool operator==(const Phase& other) const { return equal_records(*this, other); }
};

struct Recipe {
  std::string name;
  std::vector<Phase> phases;

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("name", &Recipe::name);
    visit("phases", &Recipe::phases);
  }
  bool operator==(const Recipe& other) const { return equal_records(*this, other); }
};

/// Throws InvalidArgument, naming phase and key, if an addition cannot be poured.
/// @param where  what carries the addition, for the message
void check(const Addition& addition, const std::string& where);

/// Throws InvalidArgument, naming phase and key, if the recipe cannot be run.
void check(const Recipe& recipe);

/// End of the last pour, from the start of the phase [s]; 0 without additions.
double loaded_after(const Phase& phase);

}  // namespace kettlecast
