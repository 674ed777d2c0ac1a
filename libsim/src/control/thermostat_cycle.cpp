#include "kettlecast/control/thermostat_cycle.hpp"

#include <cmath>
#include <limits>

#include "kettlecast/base/errors.hpp"

namespace kettlecast {
namespace {

constexpr double smallest = std::numeric_limits<double>::min();
constexpr double largest = 1e300;

}  // namespace

ThermostatCycle thermostat_cycle(const ThermostatLoop& loop) {
  const char* where = "ThermostatLoop";
  require_between(where, "time_constant", loop.time_constant, smallest, largest, "s");
  require_between(where, "dead_time", loop.dead_time, 0.0, largest, "s");
  require_between(where, "high", loop.high, loop.low, largest, "");
  if (!(loop.off_level < loop.low && loop.high < loop.on_level)) {
    throw InvalidArgument(
        "ThermostatLoop: low and high must lie between off_level and on_level, or it never cycles");
  }
  const double left = std::exp(-loop.dead_time / loop.time_constant);
  ThermostatCycle cycle;
  cycle.highest = loop.on_level + (loop.high - loop.on_level) * left;
  cycle.lowest = loop.off_level + (loop.low - loop.off_level) * left;
  cycle.on_time = loop.dead_time + loop.time_constant * std::log((loop.on_level - cycle.lowest) /
                                                                 (loop.on_level - loop.high));
  cycle.off_time = loop.dead_time + loop.time_constant * std::log((cycle.highest - loop.off_level) /
                                                                  (loop.low - loop.off_level));
  cycle.period = cycle.on_time + cycle.off_time;
  cycle.duty = cycle.period > 0.0 ? cycle.on_time / cycle.period : 0.0;
  return cycle;
}

}  // namespace kettlecast
