#include "kettlecast/kettle/kettle.hpp"

#include "kettlecast/base/constants.hpp"
#include "kettlecast/base/errors.hpp"
#include "kettlecast/properties/glycol.hpp"

namespace kettlecast {
namespace {

void check_body(const Kettle& kettle, const std::string& where) {
  require_between(where, "diameter", kettle.diameter, 0.02, 5.0, "m");
  require_between(where, "height", kettle.height, 0.01, 5.0, "m");
  require_between(where, "floor_power", kettle.floor_power, 0.0, 2e6, "W");
  require_between(where, "floor_thickness", kettle.floor_thickness, 2e-4, 0.2, "m");
  require_between(where, "wall_thickness", kettle.wall_thickness, 2e-4, 0.1, "m");
  check(vessel_shape(kettle), where);
  require_between(where, "working_volume", kettle.working_volume, 0.0,
                  capacity(vessel_shape(kettle)), "m3");
}

void check_flow(const JacketFlow& flow, const std::string& where) {
  require_between(where, "flow", flow.flow, 0.0, 100.0, "kg/s");
  require_between(where, "inlet_temperature", flow.inlet_temperature, 253.15, 453.15, "K");
  require_between(where, "glycol", flow.glycol, 0.0, 0.6, "");
  if (flow.flow > 0.0) {
    require_between(where, "inlet_temperature (unfrozen)", flow.inlet_temperature,
                    glycol::freezing_temperature(flow.glycol), 453.15, "K");
  }
}

void check_jacket(const Kettle& kettle, const std::string& where) {
  const Jacket& jacket = kettle.jacket;
  require_between(where, "power", jacket.power, 0.0, 2e6, "W");
  require_between(where, "height", jacket.height, 0.0, kettle.height, "m");
  require_between(where, "gap", jacket.gap, 1e-3, 0.3, "m");
  require_between(where, "steam_pressure", jacket.steam_pressure, 0.0, 9e5, "Pa");
  require_between(where, "air_share", jacket.air_share, 0.0, 0.5, "");
  check_flow(jacket.heating, where + ", heating");
  check_flow(jacket.cooling, where + ", cooling");
  const bool fed = jacket.power > 0.0 || jacket.heating.flow > 0.0 || jacket.cooling.flow > 0.0;
  if (fed && jacket.height == 0.0 && !jacket.under_floor) {
    throw InvalidArgument(where + ": power or flow needs a height above 0 m or under_floor");
  }
  if (jacket.kind == JacketKind::steam && jacket.power <= 0.0) {
    throw InvalidArgument(where + ": steam needs the power that its supply gives at most");
  }
  if (jacket.kind == JacketKind::liquid && jacket.power > 0.0) {
    throw InvalidArgument(where +
                          ": a liquid gives its heat by flow and inlet_temperature, not by power");
  }
}

void check_agitator(const Kettle& kettle, const std::string& where) {
  if (kettle.agitator == AgitatorKind::none) return;
  require_between(where, "agitator_diameter", kettle.agitator_diameter, 0.005, kettle.diameter,
                  "m");
  require_between(where, "blades", kettle.blades, 1, 12, "");
  require_between(where, "agitator_height", kettle.agitator_height, 0.0, kettle.height, "m");
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
  check_jacket(kettle, where + ", jacket");
  check_agitator(kettle, where);
  check_controller(kettle.controller, where);
  check(kettle.surroundings);
}

bool heats_by_jacket(const Kettle& kettle) {
  return kettle.floor_power == 0.0 &&
         (kettle.jacket.power > 0.0 || kettle.jacket.heating.flow > 0.0);
}

VesselShape vessel_shape(const Kettle& kettle) {
  return {kettle.floor_shape, kettle.diameter, kettle.height, kettle.floor_depth, kettle.tilt};
}

double covering_volume(const Kettle& kettle) {
  if (kettle.agitator_height <= 0.0) return 0.0;
  return volume_to_cover(vessel_shape(kettle), kettle.agitator_height,
                         0.5 * kettle.agitator_diameter);
}

double usable_volume(const Kettle& kettle) {
  return kettle.working_volume > 0.0 ? kettle.working_volume : capacity(vessel_shape(kettle));
}

}  // namespace kettlecast
