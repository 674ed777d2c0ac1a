#pragma once

/// On/off and PI control laws, free of any process.
namespace kettlecast {

/// A switch with hysteresis: on below `low`, off above `high`, unchanged in between.
struct Hysteresis {
  double low = 0.0;   ///< comes on when the signal falls to this
  double high = 0.0;  ///< goes off when the signal rises to this
  bool on = false;

  /// Sets the state for a signal that may have jumped; keeps it inside the band.
  void settle(double signal) {
    if (signal <= low) on = true;
    if (signal >= high) on = false;
  }
  /// Signal value at which the switch changes next.
  double threshold() const { return on ? high : low; }
};

/// Output of a PI controller before and after its limits [-].
template <class T>
struct PiOutput {
  T wanted;   ///< gain * error + integral
  T applied;  ///< wanted, between 0 and the limit
};

/// @param gain      [1/K]
/// @param error     set point less signal [K]
/// @param integral  integral part [-]
/// @param limit     highest output [-]
template <class T>
PiOutput<T> pi_output(double gain, const T& error, const T& integral, double limit) {
  const T wanted = gain * error + integral;
  return {wanted, wanted < 0.0 ? T(0.0) : wanted > limit ? T(limit) : wanted};
}

/// Rate of the integral part [1/s], with back-calculation so that it does not wind up at a limit.
///
///     dI/dt = (gain * error + applied - wanted) / Ti
///
/// Source: Astrom and Hagglund, PID Controllers (1995), section 3.5, tracking time Ti.
template <class T>
T pi_integral_rate(double gain, const T& error, const PiOutput<T>& output, double integral_time) {
  return (gain * error + output.applied - output.wanted) / integral_time;
}

}  // namespace kettlecast
