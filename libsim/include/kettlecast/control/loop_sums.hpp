#pragma once

#include <optional>

#include "kettlecast/base/record.hpp"

/// What proportional and integral control do on a first-order plant, in closed form. Sums to check
/// a simulation and to judge a setting by; no process runs here.
namespace kettlecast {

/// A PI controller on a first-order plant without dead time, K / (tau s + 1):
///
///     u = Kc (b r - y) + Kc / Ti integral of (r - y) dt
struct PiLoop {
  double plant_gain = 1.0;        ///< K, signal per output
  double time_constant = 0.0;     ///< tau [s]
  double gain = 0.0;              ///< Kc, output per signal; K Kc has no unit
  double integral_time = 0.0;     ///< Ti [s]
  double set_point_weight = 0.0;  ///< b [-]: 0 acts on the signal only, 1 on the whole error

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("plant_gain", &PiLoop::plant_gain);
    visit("time_constant", &PiLoop::time_constant);
    visit("gain", &PiLoop::gain);
    visit("integral_time", &PiLoop::integral_time);
    visit("set_point_weight", &PiLoop::set_point_weight);
  }
  bool operator==(const PiLoop& other) const { return equal_records(*this, other); }
};

/// How a PI loop answers a step of the set point.
struct PiResponse {
  double natural_frequency = 0.0;   ///< wn [rad/s]
  double damping = 0.0;             ///< zeta [-]; below 1 the answer swings
  double overshoot = 0.0;           ///< share of the step [-]; 0 if there is none
  std::optional<double> peak_time;  ///< of the overshoot, since the step [s]; none without one

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("natural_frequency", &PiResponse::natural_frequency);
    visit("damping", &PiResponse::damping);
    visit("overshoot", &PiResponse::overshoot);
    visit("peak_time", &PiResponse::peak_time);
  }
  bool operator==(const PiResponse& other) const { return equal_records(*this, other); }
};

/// Answer of a PI loop to a step of the set point.
///
///     Y/R = wn^2 (1 + b Ti s) / (s^2 + 2 zeta wn s + wn^2)
///     wn = sqrt(K Kc / (tau Ti)),   zeta = (1 + K Kc) / (2 tau wn)
///
/// With s = zeta wn, a = b Ti wn^2 and w = wn sqrt(1 - zeta^2) the step answer and its first peak
/// are
///
///     y = 1 - e^(-s t) (cos wt + (s - a)/w sin wt),   w tp = pi - atan2(a w, wn^2 - a s)
///
/// with b = 0: tp = pi / w, overshoot e^(-pi zeta / sqrt(1 - zeta^2)). Beyond zeta = 1 the same
/// holds with hyperbolic functions, and there is a peak only if the zero is slower than both poles.
///
/// Source: second-order step response, Astrom & Hagglund, PID Controllers (1995), chapter 3; the
///         peak with a zero from y' = 0.
/// Range:  K Kc > 0, tau, Ti > 0, 0 <= b <= 1; no limit of the output reached.
///
/// @throws InvalidArgument outside the range
PiResponse pi_response(const PiLoop& loop);

/// Integral of set point less signal after a step of the load at the plant input [signal s].
///
///     integral of e dt = -d Ti / Kc
///
/// In the end the integral part alone carries -d.
///
/// Source: Astrom & Hagglund (1995), section 4.3, integrated error. Range: stable loop, any plant.
///
/// @param loop  a PI loop
/// @param load  d, added to the output of the controller [output]
/// @throws InvalidArgument as pi_response
double load_error_integral(const PiLoop& loop, double load);

/// Where a loop with proportional control alone starts to swing for ever.
struct UltimateCycle {
  double frequency = 0.0;  ///< wu [rad/s]
  double gain = 0.0;       ///< Ku, output per signal
  double period = 0.0;     ///< Pu [s]

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("frequency", &UltimateCycle::frequency);
    visit("gain", &UltimateCycle::gain);
    visit("period", &UltimateCycle::period);
  }
  bool operator==(const UltimateCycle& other) const { return equal_records(*this, other); }
};

/// Ultimate gain and period of a first-order plant with dead time, K e^(-L s) / (tau s + 1).
///
///     wu L + atan(wu tau) = pi,   Ku = sqrt(1 + (wu tau)^2) / K,   Pu = 2 pi / wu
///
/// The left side rises and bends down, so Newton's method from pi / (2 L), left of the only root,
/// climbs to it without ever passing it.
///
/// Source: phase and gain of the plant at -180 degrees; Ziegler & Nichols, Trans. ASME 64 (1942)
/// 759. Range:  K > 0, tau >= 0, L > 0.
///
/// @param plant_gain     K, signal per output
/// @param time_constant  tau [s]
/// @param dead_time      L [s]
/// @throws InvalidArgument outside the range
UltimateCycle ultimate_cycle(double plant_gain, double time_constant, double dead_time);

}  // namespace kettlecast
