#include "kettlecast/recipe/recipe.hpp"

#include <algorithm>
#include <cmath>

#include "kettlecast/base/errors.hpp"

namespace kettlecast {
namespace {

constexpr double day = 86400.0;
constexpr double coldest = 223.15;
constexpr double hottest = 573.15;

void check_pieces(const Addition& addition, const std::string& where) {
  if (addition.shape == Shape::none) {
    if (addition.piece_size != 0.0 || addition.size_spread != 0.0) {
      throw InvalidArgument(where +
                            ": piece_size or size_spread is given without a shape; allowed shapes: slab, "
                            "cylinder, sphere");
    }
    if (addition.temperature < addition.food.freezing_point) {
      throw InvalidArgument(where +
                            ": a liquid below its freezing point cannot be poured; give "
                            "frozen food as pieces with shape and piece_size");
    }
    return;
  }
  require_between(where, "piece_size", addition.piece_size, 1e-4, 0.3, "m");
  require_between(where, "size_spread", addition.size_spread, 0.0, 0.5, "");
}

void check_end(const EndRule& rule, const Phase& phase, const std::string& where) {
  switch (rule.kind) {
    case EndKind::held:
      if (phase.regulated == Regulated::none) {
        throw InvalidArgument(where + ": a hold after reaching needs a set point to reach");
      }
      require_between(where, "hold", rule.value, 0.0, 3 * day, "s");
      break;
    case EndKind::elapsed:
      // A phase must not end while something is still being poured.
      require_between(where, "duration", rule.value, loaded_after(phase), 3 * day, "s");
      break;
    case EndKind::mass_lost:
      require_between(where, "mass lost", rule.value, 0.0, 1e4, "kg");
      break;
    case EndKind::share_lost:
      require_between(where, "share lost", rule.value, 0.0, 0.95, "");
      break;
    case EndKind::above:
    case EndKind::below:
      if (rule.signal == Regulated::none) {
        throw InvalidArgument(where + ": an end on a signal must name floor, probe, core or difference");
      }
      if (rule.signal == Regulated::difference) {
        require_between(where, "end value", rule.value, -100.0, 300.0, "K");
      } else {
        require_between(where, "end value", rule.value, coldest, hottest, "K");
      }
      break;
  }
}

void check_agitation(const Agitation& agitation, const std::string& where) {
  require_between(where, "agitation speed", agitation.speed, 0.0, 100.0, "1/s");
  require_between(where, "agitation on_time", agitation.on_time, 0.0, day, "s");
  require_between(where, "agitation off_time", agitation.off_time, 0.0, day, "s");
  if (agitation.reversing && agitation.on_time <= 0.0) {
    throw InvalidArgument(where + ": reversing agitation needs an on_time above 0 s");
  }
  if (agitation.off_time > 0.0 && agitation.on_time <= 0.0) {
    throw InvalidArgument(where + ": agitation off_time needs an on_time above 0 s");
  }
}

void check_phase(const Phase& phase, const std::string& where) {
  if (phase.regulated == Regulated::difference) {
    require_between(where, "set_point", phase.set_point, 0.1, 300.0, "K");
  } else if (phase.regulated != Regulated::none) {
    require_between(where, "set_point", phase.set_point, coldest, hottest, "K");
  }
  if (phase.ends.empty()) {
    throw InvalidArgument(where +
                          ": the phase never ends; give a hold, a duration, a signal to "
                          "wait for or a mass to lose");
  }
  for (const auto& rule : phase.ends) check_end(rule, phase, where);
  require_between(where, "time_limit", phase.time_limit, std::max(1.0, loaded_after(phase)),
                  3 * day, "s");
  require_between(where, "heat_limit", phase.heat_limit, 0.0, 1.0, "");
  require_between(where, "jacket_share", phase.jacket_share, 0.0, 1.0, "");
  check_agitation(phase.agitation, where);
  for (const auto& addition : phase.additions) check(addition, where);
}

}  // namespace

void check(const Addition& addition, const std::string& where) {
  const std::string what = where + ", addition \"" + addition.name + "\"";
  check(addition.food);
  require_between(what, "mass", addition.mass, 1e-4, 1e4, "kg");
  require_between(what, "temperature", addition.temperature, coldest, hottest, "K");
  require_between(what, "delay", addition.delay, 0.0, day, "s");
  require_between(what, "pour_time", addition.pour_time, 0.0, day, "s");
  check_pieces(addition, what);
}

void check(const Recipe& recipe) {
  if (recipe.phases.empty()) {
    throw InvalidArgument("Recipe \"" + recipe.name + "\": phases must not be empty");
  }
  for (const auto& phase : recipe.phases) {
    check_phase(phase, "Recipe \"" + recipe.name + "\", phase \"" + phase.name + "\"");
  }
}

double loaded_after(const Phase& phase) {
  double last = 0.0;
  for (const auto& addition : phase.additions) {
    last = std::max(last, addition.delay + addition.pour_time);
  }
  return last;
}

}  // namespace kettlecast
