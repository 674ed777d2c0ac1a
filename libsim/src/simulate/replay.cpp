#include "kettlecast/simulate/replay.hpp"

#include <algorithm>
#include <cmath>

#include "kettlecast/base/errors.hpp"
#include "kettlecast/simulate/sensitivity.hpp"
#include "recipe_run.hpp"

namespace kettlecast {
namespace {

// Two times closer than this are one instant [s].
constexpr double instant = 1e-7;

Recipe recipe_of(const RunPlan& plan) { return {"closed loop", plan.closed_loop}; }

void require_rising(const std::vector<double>& times, const char* what) {
  for (std::size_t i = 0; i < times.size(); ++i) {
    if (!std::isfinite(times[i]) || (i > 0 && times[i] <= times[i - 1])) {
      throw InvalidArgument(std::string("RunPlan: ") + what + " must rise; entry " +
                            std::to_string(i) + " does not");
    }
  }
}

void check_signals(const RunPlan& plan) {
  const auto& signals = plan.signals;
  const std::size_t n = signals.time.size();
  if (n < 2 || plan.output_times.empty()) {
    throw InvalidArgument("RunPlan: a replay needs at least two samples and one output time");
  }
  if (signals.floor_heat.size() != n || signals.jacket_heat.size() != n ||
      signals.agitator_speed.size() != n) {
    throw InvalidArgument("RunPlan: all drive signals must have as many values as times (" +
                          std::to_string(n) + ")");
  }
  require_rising(signals.time, "signal times");
  for (std::size_t i = 0; i < n; ++i) {
    require_between("RunPlan", "floor_heat", signals.floor_heat[i], 0.0, 1.5, "");
    require_between("RunPlan", "jacket_heat", signals.jacket_heat[i], 0.0, 1.5, "");
    require_between("RunPlan", "agitator_speed", signals.agitator_speed[i], 0.0, 100.0, "1/s");
  }
}

void check_plan(const RunPlan& plan) {
  require_rising(plan.output_times, "output times");
  if (plan.closed_loop.empty()) {
    check_signals(plan);
  } else {
    check(recipe_of(plan));
  }
}

enum class ChangeKind { drive, pour_start, pour_end, setting };

/// Something that changes the inputs at a time.
template <class T>
struct Change {
  T time;
  ChangeKind kind;
  std::size_t index;
};

/// True if sample i drives the kettle otherwise than the one before.
bool drive_changes(const DriveSignals& signals, std::size_t i) {
  return signals.floor_heat[i] != signals.floor_heat[i - 1] ||
         signals.jacket_heat[i] != signals.jacket_heat[i - 1] ||
         signals.agitator_speed[i] != signals.agitator_speed[i - 1];
}

/// All break points of a plan in the order of time.
template <class T>
std::vector<Change<T>> changes_of(const RunPlan& plan,
                                  const std::vector<AdditionChange<T>>& additions) {
  std::vector<Change<T>> changes;
  const auto& time = plan.signals.time;
  changes.push_back({T(time.front()), ChangeKind::drive, 0});
  for (std::size_t i = 1; i < time.size(); ++i) {
    if (drive_changes(plan.signals, i)) {
      changes.push_back({T(0.5 * (time[i - 1] + time[i])), ChangeKind::drive, i});
    }
  }
  for (std::size_t i = 0; i < plan.pours.size(); ++i) {
    const T begin = plan.pours[i].time + additions[i].delay;
    changes.push_back({begin, ChangeKind::pour_start, i});
    changes.push_back({begin + plan.pours[i].addition.pour_time, ChangeKind::pour_end, i});
  }
  for (std::size_t i = 0; i < plan.settings.size(); ++i) {
    changes.push_back({T(plan.settings[i].time), ChangeKind::setting, i});
  }
  std::stable_sort(
      changes.begin(), changes.end(),
      [](const Change<T>& left, const Change<T>& right) { return left.time < right.time; });
  return changes;
}

template <class T>
void apply(const Change<T>& change, const RunPlan& plan, BatchRun<T>& run) {
  auto& inputs = run.inputs();
  switch (change.kind) {
    case ChangeKind::drive:
      inputs.floor_heat = plan.signals.floor_heat[change.index];
      inputs.jacket_heat = plan.signals.jacket_heat[change.index];
      inputs.agitator_speed = plan.signals.agitator_speed[change.index];
      break;
    case ChangeKind::pour_start:
      run.start_pour(change.index);
      break;
    case ChangeKind::pour_end:
      run.end_pour(change.index);
      break;
    case ChangeKind::setting:
      inputs.cover = plan.settings[change.index].cover;
      inputs.jacket_limit = plan.settings[change.index].jacket_limit;
      inputs.cooling = plan.settings[change.index].cooling;
      inputs.cool_limit = plan.settings[change.index].cool_limit;
      break;
  }
}

/// What the sensors of a model show at the output times.
template <class T>
struct Readings {
  std::vector<T> floor, probe, evaporated;
};

/// Reads the sensors at the output times as the run passes them.
template <class T>
class Reader {
 public:
  Reader(const std::vector<double>& times, BatchRun<T>& run, Readings<T>& into)
      : times_(times), run_(run), into_(into) {}

  /// Takes what is left of the times for a state that stays as it is.
  void read_rest(const std::vector<T>& x) {
    while (next_ < times_.size()) store(x);
  }
  void read_initial(double time, const std::vector<T>& x) {
    while (next_ < times_.size() && times_[next_] <= time) store(x);
  }
  void operator()(double end, const StateAt<T>& at) {
    // Times that differ by rounding only are one instant.
    while (next_ < times_.size() && times_[next_] <= end + instant) {
      at(std::min(times_[next_], end), scratch_);
      run_.hold_clock(scratch_);
      store(scratch_);
    }
  }

 private:
  void store(const std::vector<T>& x) {
    into_.floor.push_back(x[slot::floor_reading]);
    into_.probe.push_back(x[slot::probe_reading]);
    into_.evaporated.push_back(x[slot::vapour_mass]);
    ++next_;
  }
  const std::vector<double>& times_;
  BatchRun<T>& run_;
  Readings<T>& into_;
  std::size_t next_ = 0;
  std::vector<T> scratch_;
};

Kettle in_its_room(const Kettle& kettle, const RunPlan& plan) {
  Kettle there = kettle;
  there.surroundings = plan.surroundings;
  return there;
}

std::vector<Addition> additions_of(const RunPlan& plan) {
  if (!plan.closed_loop.empty()) return all_additions(recipe_of(plan));
  std::vector<Addition> additions;
  for (const auto& pour : plan.pours) additions.push_back(pour.addition);
  return additions;
}

/// Reads the sensors along a run in closed loop.
template <class T>
class ReadingWitness : public Witness<T> {
 public:
  explicit ReadingWitness(Reader<T>& reader) : reader_(reader) {}
  void step(int, double, double end, const StateAt<T>& at) override { reader_(end, at); }
  void instant(int, double time, const std::vector<T>& x) override {
    if (time <= 0.0) reader_.read_initial(time, x);
  }

 private:
  Reader<T>& reader_;
};

template <class T>
void run_closed_loop(BatchRun<T>& run, const RunPlan& plan, const Levers& levers,
                     Reader<T>& reader) {
  ReadingWitness<T> witness(reader);
  run_phases(run, recipe_of(plan), levers, witness);
  reader.read_rest(run.state());
}

template <class T>
void follow_signals(BatchRun<T>& run, const RunPlan& plan, Reader<T>& reader) {
  const double origin = std::min(plan.signals.time.front(), plan.output_times.front());
  const double last = plan.output_times.back();
  const StepObserver<T> observer = [&](double, double end, const StateAt<T>& at) {
    reader(end + origin, [&](double time, std::vector<T>& x) { at(time - origin, x); });
  };
  reader.read_initial(origin, run.state());
  for (const auto& change : changes_of(plan, run.model().changes())) {
    if (change.time > last) break;
    if (change.time > origin + run.time()) run.advance(change.time - origin, {}, observer);
    run.meet(change.time - origin);
    apply(change, plan, run);
  }
  if (T(last) > origin + run.time()) run.advance(T(last - origin), {}, observer);
}

/// Takes a run through its plan.
template <class T>
Readings<T> drive(BatchRun<T>& run, const RunPlan& plan, const Levers& levers) {
  Readings<T> readings;
  Reader<T> reader(plan.output_times, run, readings);
  if (plan.closed_loop.empty()) {
    follow_signals(run, plan, reader);
  } else {
    run_closed_loop(run, plan, levers, reader);
  }
  return readings;
}

/// Row-major values of a matrix.
struct Matrix {
  std::size_t columns;
  std::vector<double>& values;
};

/// Writes the slopes of a pass into their columns of a matrix with one row per reading.
void place(const std::vector<Dual8>& readings, const Levers& levers, std::size_t first,
           const Matrix& slopes) {
  slopes.values.resize(readings.size() * slopes.columns);
  for (std::size_t i = 0; i < readings.size(); ++i) {
    for (std::size_t k = 0; k < levers.size(); ++k) {
      slopes.values[i * slopes.columns + first + k] =
          readings[i].slope[static_cast<int>(k)] / levers[k].scale;
    }
  }
}

std::vector<double> values_of(const std::vector<Dual8>& readings) {
  std::vector<double> values;
  for (const auto& reading : readings) values.push_back(reading.value);
  return values;
}

}  // namespace

Replay replay(const Kettle& kettle, const Coefficients& coefficients, const RunPlan& plan,
              const Options& options) {
  check_plan(plan);
  BatchRun<double> run(in_its_room(kettle, plan), coefficients.values(), additions_of(plan),
                       plan.start, options);
  const auto readings = drive(run, plan, {});
  return {readings.floor, readings.probe, readings.evaporated, run.balance()};
}

ReplaySlopes replay_slopes(const Kettle& kettle, const Coefficients& coefficients,
                           const RunPlan& plan, const std::vector<Lever>& levers,
                           const Options& options) {
  check_plan(plan);
  check(levers, additions_of(plan).size(), plan.closed_loop.size());
  const Kettle there = in_its_room(kettle, plan);
  ReplaySlopes result;
  in_groups<slopes_of<Dual8>>(levers, coefficients, [&](const Levers& group, std::size_t first) {
    BatchRun<Dual8> run(there, seeded<Dual8>(coefficients, group), additions_of(plan), plan.start,
                        options);
    seed_run(group, run);
    const auto readings = drive(run, plan, group);
    result.replay = {values_of(readings.floor), values_of(readings.probe),
                     values_of(readings.evaporated), run.balance()};
    place(readings.floor, group, first, {levers.size(), result.floor_reading});
    place(readings.probe, group, first, {levers.size(), result.probe_reading});
    place(readings.evaporated, group, first, {levers.size(), result.evaporated});
  });
  return result;
}

}  // namespace kettlecast
