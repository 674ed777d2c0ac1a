#pragma once

#include <string>

#include "kettlecast/base/record.hpp"

namespace kettlecast {

/// Metal of floor and wall.
enum class MetalKind { stainless_steel, carbon_steel, aluminium };

/// Kind of the agitator; sets the handbook constants of its film correlation.
enum class AgitatorKind { none, anchor, scraped_anchor, paddle, helical_ribbon, turbine };

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
  double air_speed = 0.1;          ///< over the free surface [m/s]

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("temperature", &Surroundings::temperature);
    visit("pressure", &Surroundings::pressure);
    visit("relative_humidity", &Surroundings::relative_humidity);
    visit("air_speed", &Surroundings::air_speed);
  }
  bool operator==(const Surroundings& other) const { return equal_records(*this, other); }
};

/// A cylindrical kettle with a heated flat floor and an electric jacket, as on its type plate.
/// What the type plate does not say is in `Coefficients`.
struct Kettle {
  std::string name;
  double diameter = 0.0;           ///< inner diameter [m]
  double height = 0.0;             ///< inner height [m]
  double working_volume = 0.0;     ///< usable volume [m3]; 0: up to the rim
  double floor_power = 0.0;        ///< nominal power of the floor elements [W]
  double floor_thickness = 0.015;  ///< [m]
  MetalKind floor_metal = MetalKind::carbon_steel;
  double jacket_power = 0.0;      ///< nominal power of the jacket elements [W]
  double jacket_height = 0.0;     ///< height of the jacketed part of the wall [m]
  double wall_thickness = 0.003;  ///< [m]
  MetalKind wall_metal = MetalKind::stainless_steel;
  AgitatorKind agitator = AgitatorKind::none;
  double agitator_diameter = 0.0;  ///< [m]
  int blades = 2;                  ///< blades passing a spot of the floor per turn [-]
  Controller controller;
  Surroundings surroundings;

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("name", &Kettle::name);
    visit("diameter", &Kettle::diameter);
    visit("height", &Kettle::height);
    visit("working_volume", &Kettle::working_volume);
    visit("floor_power", &Kettle::floor_power);
    visit("floor_thickness", &Kettle::floor_thickness);
    visit("floor_metal", &Kettle::floor_metal);
    visit("jacket_power", &Kettle::jacket_power);
    visit("jacket_height", &Kettle::jacket_height);
    visit("wall_thickness", &Kettle::wall_thickness);
    visit("wall_metal", &Kettle::wall_metal);
    visit("agitator", &Kettle::agitator);
    visit("agitator_diameter", &Kettle::agitator_diameter);
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

/// Usable volume of a kettle [m3]: the working volume if given, else up to the rim.
double usable_volume(const Kettle& kettle);

}  // namespace kettlecast
