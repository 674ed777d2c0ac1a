#pragma once

#include <string>

#include "kettlecast/base/record.hpp"
#include "kettlecast/kettle/vessel.hpp"

namespace kettlecast {

/// Metal of floor and wall.
enum class MetalKind { stainless_steel, carbon_steel, aluminium };

/// Kind of the agitator; sets the handbook constants of its film correlation.
enum class AgitatorKind { none, anchor, scraped_anchor, paddle, helical_ribbon, turbine };

/// What heats the jacket: elements, condensing steam, or a hot liquid that flows through.
enum class JacketKind { electric, steam, liquid };

/// How the heat is switched.
enum class ControllerKind { on_off, proportional_integral };

/// The controller of the kettle, with how it counts a set point as reached.
struct Controller {
  ControllerKind kind = ControllerKind::on_off;
  double dead_band = 2.0;           ///< heat comes on this far below the set point [K]
  double minimum_on_time = 0.0;     ///< heat stays on at least this long [s]
  double gain = 0.1;                ///< of the PI controller [1/K]
  double integral_time = 300.0;     ///< of the PI controller [s]
  double reached_within = 0.5;      ///< a set point counts as reached this close to it [K]
  double settle_after_pour = 20.0;  ///< and not before this long after the last pour [s]

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("kind", &Controller::kind);
    visit("dead_band", &Controller::dead_band);
    visit("minimum_on_time", &Controller::minimum_on_time);
    visit("gain", &Controller::gain);
    visit("integral_time", &Controller::integral_time);
    visit("reached_within", &Controller::reached_within);
    visit("settle_after_pour", &Controller::settle_after_pour);
  }
  bool operator==(const Controller& other) const { return equal_records(*this, other); }
};

/// The room around the kettle.
struct Surroundings {
  double temperature = 295.15;     ///< [K]
  double pressure = 101325.0;      ///< [Pa]
  double relative_humidity = 0.5;  ///< [-]
  double air_speed = 0.1;          ///< over the free surface [m/s]; 0.1 in a still room, 0.2 to 0.5
                                   ///< under a running hood or fan (common practice, no source)

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("temperature", &Surroundings::temperature);
    visit("pressure", &Surroundings::pressure);
    visit("relative_humidity", &Surroundings::relative_humidity);
    visit("air_speed", &Surroundings::air_speed);
  }
  bool operator==(const Surroundings& other) const { return equal_records(*this, other); }
};

/// Water or a mix with propylene glycol that flows through the jacket.
struct JacketFlow {
  double flow = 0.0;                  ///< [kg/s]; 0: there is none
  double inlet_temperature = 288.15;  ///< [K]
  double glycol = 0.0;                ///< mass share of propylene glycol [-]

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("flow", &JacketFlow::flow);
    visit("inlet_temperature", &JacketFlow::inlet_temperature);
    visit("glycol", &JacketFlow::glycol);
  }
  bool operator==(const JacketFlow& other) const { return equal_records(*this, other); }
};

/// The jacket of a kettle and what feeds it. A kettle without floor elements is heated, and
/// controlled, by its jacket.
struct Jacket {
  JacketKind kind = JacketKind::electric;
  double power = 0.0;           ///< of its elements, or the most that the steam supply gives [W]
  double height = 0.0;          ///< of the jacketed part of the straight wall [m]
  bool under_floor = false;     ///< the jacket also lies under the floor
  double gap = 0.02;            ///< between wall and outer shell, where liquid flows [m]
  double steam_pressure = 0.0;  ///< above that of the room [Pa]
  double air_share = 0.0;       ///< air left in the steam, by volume [-]
  JacketFlow heating;           ///< hot liquid, for kind `liquid`
  JacketFlow cooling;           ///< cold liquid, for a jacket of any kind that can cool

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("kind", &Jacket::kind);
    visit("power", &Jacket::power);
    visit("height", &Jacket::height);
    visit("under_floor", &Jacket::under_floor);
    visit("gap", &Jacket::gap);
    visit("steam_pressure", &Jacket::steam_pressure);
    visit("air_share", &Jacket::air_share);
    visit("heating", &Jacket::heating);
    visit("cooling", &Jacket::cooling);
  }
  bool operator==(const Jacket& other) const { return equal_records(*this, other); }
};

/// A cylindrical kettle with a heated floor, a jacket or both, as on its type plate. What the type
/// plate does not say is in `Coefficients`.
struct Kettle {
  std::string name;
  double diameter = 0.0;  ///< inner diameter [m]
  double height = 0.0;    ///< of the straight wall, inside [m]
  FloorShape floor_shape = FloorShape::flat;
  double floor_depth = 0.0;        ///< of a dished floor [m]; 0: 0.1935 of the diameter
  double tilt = 0.0;               ///< of the axis from the vertical [rad]
  double working_volume = 0.0;     ///< usable volume [m3]; 0: up to the rim
  double floor_power = 0.0;        ///< nominal power of the floor elements [W]
  double floor_thickness = 0.015;  ///< [m]
  MetalKind floor_metal = MetalKind::carbon_steel;
  Jacket jacket;
  double wall_thickness = 0.003;  ///< [m]
  MetalKind wall_metal = MetalKind::stainless_steel;
  AgitatorKind agitator = AgitatorKind::none;
  double agitator_diameter = 0.0;  ///< [m]
  double agitator_height = 0.0;    ///< of what product must cover, above the floor [m]
  int blades = 2;                  ///< blades passing a spot of the floor per turn [-]
  Controller controller;
  Surroundings surroundings;

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("name", &Kettle::name);
    visit("diameter", &Kettle::diameter);
    visit("height", &Kettle::height);
    visit("floor_shape", &Kettle::floor_shape);
    visit("floor_depth", &Kettle::floor_depth);
    visit("tilt", &Kettle::tilt);
    visit("working_volume", &Kettle::working_volume);
    visit("floor_power", &Kettle::floor_power);
    visit("floor_thickness", &Kettle::floor_thickness);
    visit("floor_metal", &Kettle::floor_metal);
    visit("jacket", &Kettle::jacket);
    visit("wall_thickness", &Kettle::wall_thickness);
    visit("wall_metal", &Kettle::wall_metal);
    visit("agitator", &Kettle::agitator);
    visit("agitator_diameter", &Kettle::agitator_diameter);
    visit("agitator_height", &Kettle::agitator_height);
    visit("blades", &Kettle::blades);
    visit("controller", &Kettle::controller);
    visit("surroundings", &Kettle::surroundings);
  }
  bool operator==(const Kettle& other) const { return equal_records(*this, other); }
};

/// Throws InvalidArgument, naming the key and the allowed range, if no room is like this.
void check(const Surroundings& surroundings);

/// Throws InvalidArgument, naming the key and the allowed range, if the kettle cannot exist.
void check(const Kettle& kettle);

/// Whether the controller acts on the jacket, because there are no floor elements.
bool heats_by_jacket(const Kettle& kettle);

/// Inside of a kettle.
VesselShape vessel_shape(const Kettle& kettle);

/// Volume of product that covers the agitator [m3]; 0 if the type plate does not say how high it
/// is.
double covering_volume(const Kettle& kettle);

/// Usable volume of a kettle [m3]: the working volume if given, else up to the lip.
double usable_volume(const Kettle& kettle);

}  // namespace kettlecast
