#include "kettlecast/kettle/kettle.hpp"

#include "kettlecast/base/constants.hpp"
#include "kettlecast/base/errors.hpp"

namespace kettlecast {
namespace {

void check_body(const Kettle& kettle, const std::string& where) {
  require_between(where, "diameter", kettle.diameter, 0.02, 5.0, "m");
  require_between(where, "height", kettle.height, 0.01, 5.0, "m");
  require_between(where, "floor_power", kettle.floor_power, 0.0, 2e6, "W");
  require_between(where, "floor_thickness", kettle.floor_thickness, 2e-4, 0.2, "m");
  require_between(where, "wall_thickness", kettle.wall_thickness, 2e-4, 0.1, "m");
  require_between(where, "jacket_power", kettle.jacket_power, 0.0, 2e6, "W");
  require_between(where, "jacket_height", kettle.jacket_height, 0.0, kettle.height, "m");
  if (kettle.jacket_power > 0.0 && kettle.jacket_height == 0.0) {
    throw InvalidArgument(where + ": jacket_power needs a jacket_height above 0 m");
  }
  const double to_rim = constants::pi / 4.0 * kettle.diameter * kettle.diameter * kettle.height;
  require_between(where, "working_volume", kettle.working_volume, 0.0, to_rim, "m3");
}

void check_agitator(const Kettle& kettle, const std::string& where) {
  if (kettle.agitator == AgitatorKind::none) return;
  require_between(where, "agitator_diameter", kettle.agitator_diameter, 0.005, kettle.diameter,
                  "m");
  require_between(where, "blades", kettle.blades, 1, 12, "");
}

void check_controller(const Controller& controller, const std::string& where) {
  require_between(where, "dead_band", controller.dead_band, 0.05, 50.0, "K");
  require_between(where, "minimum_on_time", controller.minimum_on_time, 0.0, 3600.0, "s");
  require_between(where, "gain", controller.gain, 1e-4, 100.0, "1/K");
  require_between(where, "integral_time", controller.integral_time, 1.0, 1e5, "s");
  require_between(where, "reached_within", controller.reached_within, 0.0, 20.0, "K");
  require_between(where, "settle_after_pour", controller.settle_after_pour, 0.0, 3600.0, "s");
}

}  // namespace

void check(const Surroundings& surroundings) {
  const std::string where = "Surroundings";
  require_between(where, "temperature", surroundings.temperature, 233.15, 333.15, "K");
  require_between(where, "pressure", surroundings.pressure, 3e4, 1.2e5, "Pa");
  require_between(where, "relative_humidity", surroundings.relative_humidity, 0.0, 1.0, "");
  require_between(where, "air_speed", surroundings.air_speed, 0.0, 10.0, "m/s");
}

void check(const Kettle& kettle) {
  const std::string where = "Kettle \"" + kettle.name + "\"";
  check_body(kettle, where);
  check_agitator(kettle, where);
  check_controller(kettle.controller, where);
  check(kettle.surroundings);
}

double usable_volume(const Kettle& kettle) {
  if (kettle.working_volume > 0.0) return kettle.working_volume;
  return constants::pi / 4.0 * kettle.diameter * kettle.diameter * kettle.height;
}

}  // namespace kettlecast
