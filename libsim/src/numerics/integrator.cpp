#include "kettlecast/numerics/integrator.hpp"

#include <algorithm>
#include <boost/numeric/odeint/stepper/controlled_runge_kutta.hpp>
#include <boost/numeric/odeint/stepper/dense_output_runge_kutta.hpp>
#include <boost/numeric/odeint/stepper/runge_kutta_dopri5.hpp>
#include <boost/numeric/odeint/util/is_resizeable.hpp>
#include <cmath>
#include <limits>
#include <utility>

#include "kettlecast/base/errors.hpp"

namespace kettlecast {
namespace {

namespace odeint = boost::numeric::odeint;

/// Values of each watch are looked at this many times per step, so that a value that rises and
/// falls again within one step is seen.
constexpr int looks_per_step = 4;

/// Remembers which component last limited the step.
struct WorstComponent {
  std::size_t index = 0;
  bool finite = true;
};

/// Largest error of a step in units of tolerance x scale. Not finite counts as infinitely bad:
/// odeint by itself accepts NaN without a word.
class ScaledError {
 public:
  ScaledError() = default;
  ScaledError(const Components& components, double tolerance, WorstComponent* worst)
      : scales_(components.scales),
        grows_(components.scales.size(), true),
        tolerance_(tolerance),
        worst_(worst) {
    for (const std::size_t i : components.weighed_by_scale) grows_[i] = false;
  }

  template <class Algebra, class Derivative, class Error, class Time>
  double error(Algebra&, const State& x_old, const Derivative&, Error& x_error, Time) const {
    double largest = 0.0;
    for (std::size_t i = 0; i < scales_.size(); ++i) {
      const double size = grows_[i] ? std::max(scales_[i], std::abs(x_old[i])) : scales_[i];
      const double weight = scales_[i] > 0.0 ? tolerance_ * size : 0.0;
      const double scaled = weight > 0.0 ? std::abs(x_error[i]) / weight : 0.0;
      if (!std::isfinite(x_error[i])) return report(i, false);
      if (scaled > largest) {
        largest = scaled;
        if (worst_->finite) worst_->index = i;
      }
    }
    return largest;
  }

 private:
  double report(std::size_t index, bool finite) const {
    *worst_ = {index, finite};
    return std::numeric_limits<double>::infinity();
  }

  std::vector<double> scales_;
  std::vector<bool> grows_;  ///< with the value, where that is larger
  double tolerance_ = 0.0;
  WorstComponent* worst_ = nullptr;
};

using Plain = odeint::runge_kutta_dopri5<State>;
using Adjuster = odeint::default_step_adjuster<double, double>;
using Controlled = odeint::controlled_runge_kutta<Plain, ScaledError, Adjuster>;
using Dense = odeint::dense_output_runge_kutta<Controlled>;

/// A crossing bracketed between two times.
struct Bracket {
  double begin, end;
  int watch;
};

bool crosses(Crossing crossing, double before, double after) {
  return crossing == Crossing::rising ? before < 0.0 && after >= 0.0 : before > 0.0 && after <= 0.0;
}

}  // namespace

class Integrator::Implementation {
 public:
  Implementation(Rates rates, Components components, const IntegratorOptions& options)
      : rates_(std::move(rates)),
        components_(std::move(components)),
        options_(options),
        dense_(Controlled(ScaledError(components_, options.tolerance, &worst_),
                          Adjuster(options.max_step), Plain())),
        step_(options.first_step) {}

  Stop advance(double from, double to, State& x, const std::vector<Watch>& watches,
               const Observer& observer) {
    if (!(to > from)) return {to, -1};
    check_finite(x, from);
    dense_.initialize(x, from, std::clamp(step_, 1e-6, options_.max_step));
    values_.resize(watches.size());
    for (std::size_t i = 0; i < watches.size(); ++i) values_[i] = watches[i].value(from, x);
    const DenseOutput at = [this](double time, State& out) {
      out.resize(components_.names.size());
      dense_.calc_state(time, out);
    };
    for (double begin = from;;) {
      take_step(begin);
      const double end = std::min(dense_.current_time(), to);
      const Stop stop = first_crossing(begin, end, watches);
      observer(begin, stop.time, at);
      dense_.calc_state(stop.time, x);
      check_finite(x, stop.time);
      step_ = dense_.current_time_step();
      if (stop.watch >= 0 || end >= to) return stop;
      begin = end;
    }
  }

  long steps_taken() const { return steps_; }
  long evaluations() const { return evaluations_; }

 private:
  void take_step(double time) {
    worst_.finite = true;
    const auto counted = [this](const State& x, State& dxdt, double t) {
      ++evaluations_;
      rates_(x, dxdt, t);
    };
    try {
      dense_.do_step(counted);
    } catch (const odeint::odeint_error&) {
      fail(time);
    }
    if (dense_.current_time_step() < options_.min_step) fail(time);
    if (++steps_ > options_.max_steps) {
      throw IntegrationFailure("more than " + std::to_string(options_.max_steps) + " steps", time,
                               components_.names[worst_.index]);
    }
  }

  [[noreturn]] void fail(double time) const {
    const std::string reason =
        worst_.finite ? "the step became too small" : "the rate of change is not a finite number";
    throw IntegrationFailure(reason, time, components_.names[worst_.index]);
  }

  void check_finite(const State& x, double time) const {
    for (std::size_t i = 0; i < x.size(); ++i) {
      if (!std::isfinite(x[i])) {
        throw IntegrationFailure("the value is not a finite number", time, components_.names[i]);
      }
    }
  }

  double watched(const Watch& watch, double time) {
    dense_.calc_state(time, scratch_);
    return watch.value(time, scratch_);
  }

  /// First crossing of any watch in (begin, end]; also moves `values_` on.
  Stop first_crossing(double begin, double end, const std::vector<Watch>& watches) {
    if (watches.empty()) return {end, -1};
    scratch_.resize(components_.names.size());
    double left = begin;
    for (int look = 1; look <= looks_per_step; ++look) {
      const double right = begin + (end - begin) * look / looks_per_step;
      Stop first{right, -1};
      for (std::size_t i = 0; i < watches.size(); ++i) {
        const double value = watched(watches[i], right);
        if (crosses(watches[i].crossing, values_[i], value)) {
          const double time = locate({left, right, static_cast<int>(i)}, watches[i]);
          if (first.watch < 0 || time < first.time) first = {time, static_cast<int>(i)};
        }
        values_[i] = value;
      }
      if (first.watch >= 0) return first;
      left = right;
    }
    return {end, -1};
  }

  /// Bisection; returns the end of the bracket at which the value has its new sign.
  double locate(Bracket bracket, const Watch& watch) {
    const double before = watch.crossing == Crossing::rising ? -1.0 : 1.0;
    while (bracket.end - bracket.begin > options_.event_tolerance) {
      const double middle = 0.5 * (bracket.begin + bracket.end);
      (crosses(watch.crossing, before, watched(watch, middle)) ? bracket.end : bracket.begin) =
          middle;
    }
    return bracket.end;
  }

  Rates rates_;
  Components components_;
  IntegratorOptions options_;
  WorstComponent worst_;
  Dense dense_;
  double step_;
  long steps_ = 0;
  long evaluations_ = 0;
  std::vector<double> values_;
  State scratch_;
};

Integrator::Integrator(Rates rates, Components components, const IntegratorOptions& options) {
  require_between("IntegratorOptions", "tolerance", options.tolerance, 1e-13, 1e-2, "");
  require_between("IntegratorOptions", "max_step", options.max_step, 1e-4, 3600.0, "s");
  require_between("IntegratorOptions", "first_step", options.first_step, 1e-9, 60.0, "s");
  implementation_ =
      std::make_unique<Implementation>(std::move(rates), std::move(components), options);
}

Integrator::~Integrator() = default;
Integrator::Integrator(Integrator&&) noexcept = default;
Integrator& Integrator::operator=(Integrator&&) noexcept = default;

Stop Integrator::advance(double from, double to, State& x, const std::vector<Watch>& watches,
                         const Observer& observer) {
  return implementation_->advance(from, to, x, watches, observer);
}

long Integrator::steps() const { return implementation_->steps_taken(); }
long Integrator::evaluations() const { return implementation_->evaluations(); }

}  // namespace kettlecast
