#pragma once

#include <functional>
#include <memory>
#include <string>
#include <vector>

/// Integration of ordinary differential equations between break points, with located events.
/// Knows nothing of kettles. Only integrator.cpp includes odeint.
namespace kettlecast {

using State = std::vector<double>;

/// Writes dx/dt at (x, time); the three arguments in odeint's order.
using Rates = std::function<void(const State& x, State& dxdt, double time)>;

/// State at any time inside the step just taken.
using DenseOutput = std::function<void(double time, State& x)>;

/// Called once for every accepted step, from `begin` (left out) to `end` (included).
using Observer = std::function<void(double begin, double end, const DenseOutput& at)>;

/// How a watched value must cross zero to stop the integration.
enum class Crossing { rising, falling };

/// A scalar function of the state; the integration stops where it crosses zero.
///
/// Rule: over a step (t0, t1] a rising crossing is `value(t0) < 0 and value(t1) >= 0`. A value
/// that is already >= 0 at the start does not stop; it must fall below zero first. The stop
/// returned is the first time found at which the value has the new sign, so it fires once.
struct Watch {
  std::function<double(double time, const State& x)> value;
  Crossing crossing = Crossing::rising;
};

struct IntegratorOptions {
  double tolerance = 1e-6;        ///< error per step relative to the scale of each component [-]
  double max_step = 20.0;         ///< [s]
  double first_step = 0.01;       ///< [s]
  double min_step = 1e-10;        ///< [s]; below it the run fails
  long max_steps = 5'000'000;     ///< accepted steps per run [-]
  double event_tolerance = 1e-5;  ///< width to which an event is located [s]
};

/// Why `advance` returned.
struct Stop {
  double time = 0.0;  ///< [s]
  int watch = -1;     ///< index of the watch that fired, -1: the end of the interval
};

/// Names and typical sizes of the state components. A scale of 0 leaves a component out of the
/// error control (books that are only added up).
struct Components {
  std::vector<std::string> names;
  std::vector<double> scales;
  /// Components weighed by their scale even where they are larger.
  std::vector<std::size_t> weighed_by_scale{};
};

/// Adaptive Dormand-Prince 5(4) with dense output.
///
/// Source: Dormand and Prince, J. Comput. Appl. Math. 6 (1980) 19-26, as in Boost.Odeint.
class Integrator {
 public:
  /// @throws InvalidArgument if an option is out of range
  Integrator(Rates rates, Components components, const IntegratorOptions& options);
  ~Integrator();
  Integrator(Integrator&&) noexcept;
  Integrator& operator=(Integrator&&) noexcept;

  /// Integrates x from `from` towards `to`; stops at `to` or at the first crossing of a watch.
  /// The rates must not change in kind inside the interval: call once per interval between
  /// break points. The step size is kept from call to call.
  ///
  /// @throws IntegrationFailure (phase left empty) on a value that is not finite, too small a
  ///         step or too many steps; x then holds the last good state
  Stop advance(double from, double to, State& x, const std::vector<Watch>& watches,
               const Observer& observer);

  /// Accepted steps so far [-].
  long steps() const;
  /// Evaluations of the rates so far [-].
  long evaluations() const;

 private:
  class Implementation;
  std::unique_ptr<Implementation> implementation_;
};

}  // namespace kettlecast
