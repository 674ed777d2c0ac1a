#pragma once

#include <vector>

#include "batch_run.hpp"
#include "kettlecast/simulate/forecast.hpp"

/// Shared by the sources of the forecast; not public.
namespace kettlecast {

/// Fills the trace on a regular grid of times.
class Recorder {
 public:
  Recorder(BatchRun& run, Trace& trace, double interval);

  /// Writes the rows of one step, from `begin` (left out) to `end` (included).
  void operator()(int phase, double begin, double end, const DenseOutput& at);
  /// Writes one row now; replaces a row of the same time.
  void write(int phase, double time, const State& x);

 private:
  BatchRun& run_;
  Trace& trace_;
  double interval_;
  State scratch_;
};

/// Value regulated in a phase, as read and as it is.
struct Regulation {
  double reading;
  double truth;
};

/// Reading of a signal [K].
double reading_of(Regulated signal, const State& x);

/// Reading and true value of a signal [K].
Regulation regulation_of(Regulated signal, BatchRun& run, const State& x);

/// Highest values of what is regulated, from any time and from first reaching the set point.
class PeakTracker {
 public:
  PeakTracker(BatchRun& run, Regulated signal) : run_(run), signal_(signal) {}

  void look(const State& x);
  void operator()(double begin, double end, const DenseOutput& at);
  /// From now on the set point counts as reached.
  void start_overshoot();
  void report(double set_point, PhaseReport& phase) const;

 private:
  BatchRun& run_;
  Regulated signal_;
  bool reached_ = false;
  Regulation peak_{-1e9, -1e9};
  Regulation peak_after_{-1e9, -1e9};
  State scratch_;
};

}  // namespace kettlecast
