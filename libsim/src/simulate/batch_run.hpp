#pragma once

#include <functional>
#include <vector>

#include "kettlecast/kettle/model.hpp"
#include "kettlecast/numerics/dual.hpp"
#include "kettlecast/numerics/integrator.hpp"
#include "kettlecast/simulate/trace.hpp"

/// Shared by the two drivers, forecast and replay; not public.
namespace kettlecast {

/// A value of the state; a run stops where it crosses zero.
template <class T>
struct StateWatch {
  std::function<T(const std::vector<T>& x)> value;
  Crossing crossing = Crossing::rising;
};

/// State at any time inside the step just taken.
template <class T>
using StateAt = std::function<void(double time, std::vector<T>& x)>;

/// Called once for every accepted step, from `begin` (left out) to `end` (included).
template <class T>
using StepObserver = std::function<void(double begin, double end, const StateAt<T>& at)>;

/// A kettle model on its way through time: state, inputs and integrator.
///
/// With dual numbers the slopes of a state inside an interval are those at a fixed time since the
/// interval began. Where it ends, at a time or a crossing with slopes of its own, they become those
/// of the state at that end:
///
///     dx/dp at the end = dx/dp at a fixed time + dx/dt d(length)/dp
///
/// As nothing depends on time itself, that is the start of the next interval, whatever the rates
/// are there: the jump of the slopes at an event, (f before - f after) dt/dp, comes out by itself.
/// Source of the jump: Rozenvasser, Automation and Remote Control 28 (1967) 1032 (from memory).
template <class T>
class BatchRun {
 public:
  /// Changes inputs from the state before each evaluation (continuous control); may add the rate
  /// of one extra state component.
  using Feedback =
      std::function<void(const std::vector<T>& x, BasicInputs<T>& inputs, T& extra_rate)>;

  BatchRun(const Kettle& kettle, const std::array<T, coefficient_count>& coefficients,
           std::vector<Addition> additions, const Start& start, const Options& options);
  BatchRun(const BatchRun&) = delete;

  /// Since the start of the run [s].
  const T& time() const { return time_; }
  const std::vector<T>& state() const { return state_; }
  KettleModel<T>& model() { return model_; }
  BasicInputs<T>& inputs() { return inputs_; }
  long steps() const { return integrator_.steps(); }

  /// The last component of the state belongs to the feedback, e.g. the integral part of a
  /// controller; it is kept when the feedback changes.
  void set_feedback(Feedback feedback) { feedback_ = std::move(feedback); }

  /// Sets the inputs to what the feedback makes of a state.
  void apply_feedback(const std::vector<T>& x) {
    T ignored(0.0);
    if (feedback_) feedback_(x, inputs_, ignored);
  }

  /// Warms the empty kettle before the run starts [K].
  void warm_start(const T& by) { model_.warm(by, state_); }

  /// Starts a pour; one without a pour time is there at once.
  void start_pour(std::size_t addition);
  void end_pour(std::size_t addition) { inputs_.pour_rate[addition] = 0.0; }

  /// Integrates to `to` or to the first watch that fires; returns its index, -1 for none.
  int advance(const T& to, const std::vector<StateWatch<T>>& watches,
              const StepObserver<T>& observer);

  /// Takes the slopes of an instant that is now, such as a pour that starts with its phase: it
  /// could move away from what else happens now.
  void meet(const T& instant);

  /// Turns the slopes of a state seen by an observer into those at a fixed time of the run.
  void hold_clock(std::vector<T>& x);

  /// Books of the run so far.
  Balance balance();

 private:
  std::vector<T> rates_at(const std::vector<T>& x);
  void evaluate(const std::vector<T>& x, std::vector<T>& dxdt);
  std::vector<Watch> plain(const std::vector<StateWatch<T>>& watches);
  void arrive(const T& to);
  void arrive_at(double time, const std::function<T(const std::vector<T>&)>& value);

  KettleModel<T> model_;
  BasicInputs<T> inputs_;
  Feedback feedback_;
  std::vector<T> state_;
  Integrator integrator_;
  T time_ = T(0.0);
  double initial_energy_ = 0.0;
  State packed_, packed_seen_;
  std::vector<T> x_, dxdt_, seen_;  ///< unpacked, inside of the integrator
};

}  // namespace kettlecast
