#include "kettlecast/control/loop_sums.hpp"

#include <cmath>
#include <limits>

#include "kettlecast/base/constants.hpp"
#include "kettlecast/base/errors.hpp"

namespace kettlecast {
namespace {

constexpr double smallest = std::numeric_limits<double>::min();
constexpr double largest = 1e300;

/// Overshoot and time of the first peak with poles s +- iw, w > 0; a = b Ti wn^2.
void swinging_peak(double s, double w, double a, PiResponse& response) {
  const double angle = constants::pi - std::atan2(a * w, s * s + w * w - a * s);
  response.peak_time = angle / w;
  response.overshoot =
      -std::exp(-s * angle / w) * (std::cos(angle) + (s - a) / w * std::sin(angle));
}

/// The same with real poles -s +- w, w >= 0; a peak only if the zero is slower than both.
void creeping_peak(double s, double w, double a, PiResponse& response) {
  const double product = s * s - w * w;
  if (!(a * (s - w) > product)) return;
  // y' = e^(-st) (a cosh wt + (product - a s)/w sinh wt); sinh(wt)/w is t at w = 0.
  const double time = w > 0.0 ? std::atanh(a * w / (a * s - product)) / w : a / (a * s - product);
  const double sine = w > 0.0 ? std::sinh(w * time) / w : time;
  response.peak_time = time;
  response.overshoot = -std::exp(-s * time) * (std::cosh(w * time) + (s - a) * sine);
}

void check(const PiLoop& loop) {
  const char* where = "PiLoop";
  require_between(where, "plant_gain * gain", loop.plant_gain * loop.gain, smallest, largest, "");
  require_between(where, "time_constant", loop.time_constant, smallest, largest, "s");
  require_between(where, "integral_time", loop.integral_time, smallest, largest, "s");
  require_between(where, "set_point_weight", loop.set_point_weight, 0.0, 1.0, "");
}

}  // namespace

PiResponse pi_response(const PiLoop& loop) {
  check(loop);
  const double loop_gain = loop.plant_gain * loop.gain;
  const double square = loop_gain / (loop.time_constant * loop.integral_time);
  PiResponse response;
  response.natural_frequency = std::sqrt(square);
  response.damping = (1.0 + loop_gain) / (2.0 * loop.time_constant * response.natural_frequency);
  const double s = response.damping * response.natural_frequency;
  const double zero = loop.set_point_weight * loop.integral_time * square;
  const double difference = s * s - square;
  if (difference < 0.0) swinging_peak(s, std::sqrt(-difference), zero, response);
  if (difference >= 0.0) creeping_peak(s, std::sqrt(difference), zero, response);
  return response;
}

double load_error_integral(const PiLoop& loop, double load) {
  check(loop);
  return -load * loop.integral_time / loop.gain;
}

UltimateCycle ultimate_cycle(double plant_gain, double time_constant, double dead_time) {
  const char* where = "first-order plant with dead time";
  require_between(where, "plant_gain", plant_gain, smallest, largest, "");
  require_between(where, "time_constant", time_constant, 0.0, largest, "s");
  require_between(where, "dead_time", dead_time, smallest, largest, "s");
  double frequency = constants::pi / (2.0 * dead_time);
  for (int step = 0; step < 100; ++step) {  // quadratic: far fewer are needed
    const double wt = frequency * time_constant;
    const double missing = constants::pi - frequency * dead_time - std::atan(wt);
    const double next = frequency + missing / (dead_time + time_constant / (1.0 + wt * wt));
    if (!(next > frequency)) break;
    frequency = next;
  }
  const double wt = frequency * time_constant;
  return {frequency, std::sqrt(1.0 + wt * wt) / plant_gain, 2.0 * constants::pi / frequency};
}

}  // namespace kettlecast
