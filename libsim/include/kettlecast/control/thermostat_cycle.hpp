#pragma once

#include "kettlecast/base/record.hpp"

/// What a thermostat does on a first-order plant with dead time, in closed form:
///
///     tau dy/dt = level(t - L) - y
///
/// where `level` is what the plant would settle at. A sum to check a simulation and to judge a
/// band by; no process runs here.
namespace kettlecast {

/// A thermostat with hysteresis on a first-order plant with dead time. Temperatures in K or degC.
struct ThermostatLoop {
  double off_level = 0.0;      ///< where the plant settles with the heat off
  double on_level = 0.0;       ///< where the plant settles with the heat on
  double time_constant = 0.0;  ///< tau [s]
  double dead_time = 0.0;      ///< L, from the switch to the first effect [s]
  double low = 0.0;            ///< the heat comes on when the signal falls to this
  double high = 0.0;           ///< the heat goes off when the signal rises to this

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("off_level", &ThermostatLoop::off_level);
    visit("on_level", &ThermostatLoop::on_level);
    visit("time_constant", &ThermostatLoop::time_constant);
    visit("dead_time", &ThermostatLoop::dead_time);
    visit("low", &ThermostatLoop::low);
    visit("high", &ThermostatLoop::high);
  }
  bool operator==(const ThermostatLoop& other) const { return equal_records(*this, other); }
};

/// The steady cycle of a thermostat.
struct ThermostatCycle {
  double highest = 0.0;   ///< of the signal, in the unit of the levels
  double lowest = 0.0;    ///< of the signal, in the unit of the levels
  double on_time = 0.0;   ///< of the switch [s]
  double off_time = 0.0;  ///< of the switch [s]
  double period = 0.0;    ///< on_time + off_time [s]
  double duty = 0.0;      ///< on_time / period [-]; 0 for a period of 0

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("highest", &ThermostatCycle::highest);
    visit("lowest", &ThermostatCycle::lowest);
    visit("on_time", &ThermostatCycle::on_time);
    visit("off_time", &ThermostatCycle::off_time);
    visit("period", &ThermostatCycle::period);
    visit("duty", &ThermostatCycle::duty);
  }
  bool operator==(const ThermostatCycle& other) const { return equal_records(*this, other); }
};

/// The steady cycle of a thermostat on a first-order plant with dead time.
///
///     highest = on + (high - on) e^(-L/tau)      on time  = L + tau ln((on - lowest)/(on - high))
///     lowest  = off + (low - off) e^(-L/tau)     off time = L + tau ln((highest - off)/(low -
///     off))
///
/// After a switch the plant goes on for L as before and then turns, so that the turning point is L
/// beyond the switching level on one exponential, and the way back to the other level is one piece
/// of the other. Only one switch is ever under way, however long L is. With L = 0 the plant turns
/// at the levels.
///
/// Source: solution of the plant piece by piece; the on time is the relay formula of Berner,
/// thesis,
///         Lund (2017), with its low level in the numerator.
/// Range:  off_level < low <= high < on_level, time_constant > 0, dead_time >= 0.
///
/// @throws InvalidArgument outside the range
ThermostatCycle thermostat_cycle(const ThermostatLoop& loop);

}  // namespace kettlecast
