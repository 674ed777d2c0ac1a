#pragma once

#include <string>
#include <vector>

#include "kettlecast/base/record.hpp"

namespace kettlecast {

/// A table of signals over time, row after row.
struct Trace {
  std::vector<std::string> names;  ///< of the columns, "node.quantity"; the first is "time"
  std::vector<double> values;      ///< rows x columns, row-major, SI units

  std::size_t columns() const { return names.size(); }
  std::size_t rows() const { return names.empty() ? 0 : values.size() / names.size(); }
};

/// Heat and mass books of a run.
struct Balance {
  double heater_energy = 0.0;    ///< given by floor and jacket [J]
  double stirring_energy = 0.0;  ///< work of the agitator [J]
  double poured_energy = 0.0;    ///< enthalpy of what was poured, liquid water at 0 degC is 0 [J]
  double cooling_energy = 0.0;   ///< taken away by a cooling jacket [J]
  double lost_energy = 0.0;      ///< to the room without vapour [J]
  double vapour_energy = 0.0;    ///< enthalpy of the vapour that left [J]
  double stored_energy = 0.0;    ///< gained by kettle and product [J]
  double heat_residual = 0.0;    ///< (in - out - stored) / largest of the energies [-]
  double mass_residual = 0.0;    ///< (poured - vapour - held) / poured [-]

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("heater_energy", &Balance::heater_energy);
    visit("stirring_energy", &Balance::stirring_energy);
    visit("poured_energy", &Balance::poured_energy);
    visit("cooling_energy", &Balance::cooling_energy);
    visit("lost_energy", &Balance::lost_energy);
    visit("vapour_energy", &Balance::vapour_energy);
    visit("stored_energy", &Balance::stored_energy);
    visit("heat_residual", &Balance::heat_residual);
    visit("mass_residual", &Balance::mass_residual);
  }
  bool operator==(const Balance& other) const { return equal_records(*this, other); }
};

/// How to integrate and what to record.
struct Options {
  double tolerance = 1e-6;       ///< error per step relative to the scale of a component [-]
  double max_step = 20.0;        ///< [s]
  double output_interval = 5.0;  ///< of the trace [s]

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("tolerance", &Options::tolerance);
    visit("max_step", &Options::max_step);
    visit("output_interval", &Options::output_interval);
  }
  bool operator==(const Options& other) const { return equal_records(*this, other); }
};

}  // namespace kettlecast
