#pragma once

#include <functional>
#include <vector>

#include "kettlecast/kettle/model.hpp"
#include "kettlecast/numerics/integrator.hpp"
#include "kettlecast/simulate/trace.hpp"

/// Shared by the two drivers, forecast and replay; not public.
namespace kettlecast {

/// A kettle model on its way through time: state, inputs and integrator.
class BatchRun {
 public:
  /// Called for every accepted step; sees the state at any time inside it.
  using StepObserver = Observer;
  /// Changes inputs from the state before each evaluation (continuous control); may add the rate
  /// of one extra state component.
  using Feedback = std::function<void(const State& x, Inputs& inputs, double& extra_rate)>;

  BatchRun(const Kettle& kettle, const Coefficients& coefficients, std::vector<Addition> additions,
           const Start& start, const Options& options);
  BatchRun(const BatchRun&) = delete;

  double time() const { return time_; }
  const State& state() const { return state_; }
  KettleModel<double>& model() { return model_; }
  Inputs& inputs() { return inputs_; }
  long steps() const { return integrator_.steps(); }

  /// The last component of the state belongs to the feedback, e.g. the integral part of a
  /// controller; it is kept when the feedback changes.
  void set_feedback(Feedback feedback) { feedback_ = std::move(feedback); }

  /// Sets the inputs to what the feedback makes of a state.
  void apply_feedback(const State& x) {
    double ignored = 0.0;
    if (feedback_) feedback_(x, inputs_, ignored);
  }

  /// Starts a pour; one without a pour time is there at once.
  void start_pour(std::size_t addition);
  void end_pour(std::size_t addition) { inputs_.pour_rate[addition] = 0.0; }

  /// Integrates to `to` or to the first watch that fires; returns its index, -1 for none.
  int advance(double to, const std::vector<Watch>& watches, const StepObserver& observer);

  /// Books of the run so far.
  Balance balance();

 private:
  KettleModel<double> model_;
  Inputs inputs_;
  Feedback feedback_;
  State state_;
  Integrator integrator_;
  double time_ = 0.0;
  double initial_energy_ = 0.0;
};

}  // namespace kettlecast
