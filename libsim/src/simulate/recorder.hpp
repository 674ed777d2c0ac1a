#pragma once

#include <vector>

#include "batch_run.hpp"
#include "kettlecast/simulate/forecast.hpp"

/// Shared by the sources of the forecast; not public.
namespace kettlecast {

/// Sees a forecast as it goes on.
template <class T>
class Witness {
 public:
  virtual ~Witness() = default;
  /// One step of a phase, from `begin` (left out) to `end` (included).
  virtual void step(int phase, double begin, double end, const StateAt<T>& at) = 0;
  /// The state at the begin or end of a phase.
  virtual void instant(int phase, double time, const std::vector<T>& x) = 0;
};

/// Fills the trace on a regular grid of times; replaces a row of the same time.
class Recorder : public Witness<double> {
 public:
  Recorder(BatchRun<double>& run, Trace& trace, double interval);

  void step(int phase, double begin, double end, const StateAt<double>& at) override;
  void instant(int phase, double time, const State& x) override;

 private:
  BatchRun<double>& run_;
  Trace& trace_;
  double interval_;
  State scratch_;
};

/// Value regulated in a phase, as read and as it is.
template <class T>
struct Regulation {
  T reading;
  T truth;
};

/// Reading of a signal [K].
template <class T>
T reading_of(Regulated signal, const std::vector<T>& x) {
  switch (signal) {
    case Regulated::floor:
      return x[slot::floor_reading];
    case Regulated::difference:
      return x[slot::floor_reading] - x[slot::probe_reading];
    case Regulated::core:
      return x[slot::core_reading];
    default:
      return x[slot::probe_reading];
  }
}

/// Highest values of what is regulated, from any time and from first reaching the set point.
template <class T>
class PeakTracker {
 public:
  PeakTracker(BatchRun<T>& run, Regulated signal) : run_(run), signal_(signal) {}

  void look(const std::vector<T>& x);
  void operator()(double begin, double end, const StateAt<T>& at);
  /// From now on the set point counts as reached.
  void start_overshoot() { reached_ = true; }
  void report(const T& set_point, BasicPhaseReport<T>& phase) const;

 private:
  /// Reading and true value of the signal [K].
  Regulation<T> regulation(const std::vector<T>& x);

  BatchRun<T>& run_;
  Regulated signal_;
  bool reached_ = false;
  Regulation<T> peak_{T(-1e9), T(-1e9)};
  Regulation<T> peak_after_{T(-1e9), T(-1e9)};
  std::vector<T> scratch_;
};

}  // namespace kettlecast
