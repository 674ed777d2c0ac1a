#include "kettlecast/simulate/replay.hpp"

#include <algorithm>
#include <cmath>

#include "batch_run.hpp"
#include "kettlecast/base/errors.hpp"

namespace kettlecast {
namespace {

// Two times closer than this are one instant [s].
constexpr double instant = 1e-7;

void require_rising(const std::vector<double>& times, const char* what) {
  for (std::size_t i = 0; i < times.size(); ++i) {
    if (!std::isfinite(times[i]) || (i > 0 && times[i] <= times[i - 1])) {
      throw InvalidArgument(std::string("RunPlan: ") + what + " must rise; entry " +
                            std::to_string(i) + " does not");
    }
  }
}

void check_plan(const RunPlan& plan) {
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
  require_rising(plan.output_times, "output times");
  for (std::size_t i = 0; i < n; ++i) {
    require_between("RunPlan", "floor_heat", signals.floor_heat[i], 0.0, 1.5, "");
    require_between("RunPlan", "jacket_heat", signals.jacket_heat[i], 0.0, 1.5, "");
    require_between("RunPlan", "agitator_speed", signals.agitator_speed[i], 0.0, 100.0, "1/s");
  }
}

/// Something that changes the inputs at a time.
struct Change {
  enum class Kind { drive, pour_start, pour_end, setting };
  double time;
  Kind kind;
  std::size_t index;
};

/// True if sample i drives the kettle otherwise than the one before.
bool drive_changes(const DriveSignals& signals, std::size_t i) {
  return signals.floor_heat[i] != signals.floor_heat[i - 1] ||
         signals.jacket_heat[i] != signals.jacket_heat[i - 1] ||
         signals.agitator_speed[i] != signals.agitator_speed[i - 1];
}

/// All break points of a plan in the order of time.
std::vector<Change> changes_of(const RunPlan& plan) {
  using Kind = Change::Kind;
  std::vector<Change> changes;
  const auto& time = plan.signals.time;
  changes.push_back({time.front(), Kind::drive, 0});
  for (std::size_t i = 1; i < time.size(); ++i) {
    if (drive_changes(plan.signals, i)) {
      changes.push_back({0.5 * (time[i - 1] + time[i]), Kind::drive, i});
    }
  }
  for (std::size_t i = 0; i < plan.pours.size(); ++i) {
    changes.push_back({plan.pours[i].time, Kind::pour_start, i});
    changes.push_back({plan.pours[i].time + plan.pours[i].addition.pour_time, Kind::pour_end, i});
  }
  for (std::size_t i = 0; i < plan.settings.size(); ++i) {
    changes.push_back({plan.settings[i].time, Kind::setting, i});
  }
  std::stable_sort(changes.begin(), changes.end(),
                   [](const Change& left, const Change& right) { return left.time < right.time; });
  return changes;
}

void apply(const Change& change, const RunPlan& plan, BatchRun& run) {
  auto& inputs = run.inputs();
  switch (change.kind) {
    case Change::Kind::drive:
      inputs.floor_heat = plan.signals.floor_heat[change.index];
      inputs.jacket_heat = plan.signals.jacket_heat[change.index];
      inputs.agitator_speed = plan.signals.agitator_speed[change.index];
      break;
    case Change::Kind::pour_start:
      run.start_pour(change.index);
      break;
    case Change::Kind::pour_end:
      run.end_pour(change.index);
      break;
    case Change::Kind::setting:
      inputs.cover = plan.settings[change.index].cover;
      inputs.jacket_limit = plan.settings[change.index].jacket_limit;
      inputs.cooling = plan.settings[change.index].cooling;
      inputs.cool_limit = plan.settings[change.index].cool_limit;
      break;
  }
}

/// Reads the sensors at the output times as the run passes them.
class Reader {
 public:
  Reader(const std::vector<double>& times, Replay& into) : times_(times), into_(into) {}

  void read_initial(double time, const State& x) {
    while (next_ < times_.size() && times_[next_] <= time) store(x);
  }
  void operator()(double end, const DenseOutput& at) {
    // Times that differ by rounding only are one instant.
    while (next_ < times_.size() && times_[next_] <= end + instant) {
      at(std::min(times_[next_], end), scratch_);
      store(scratch_);
    }
  }

 private:
  void store(const State& x) {
    into_.floor_reading.push_back(x[slot::floor_reading]);
    into_.probe_reading.push_back(x[slot::probe_reading]);
    into_.evaporated.push_back(x[slot::vapour_mass]);
    ++next_;
  }
  const std::vector<double>& times_;
  Replay& into_;
  std::size_t next_ = 0;
  State scratch_;
};

}  // namespace

Replay replay(const Kettle& kettle, const Coefficients& coefficients, const RunPlan& plan,
              const Options& options) {
  check_plan(plan);
  Kettle there = kettle;
  there.surroundings = plan.surroundings;
  std::vector<Addition> additions;
  for (const auto& pour : plan.pours) additions.push_back(pour.addition);
  BatchRun run(there, coefficients, additions, plan.start, options);
  Replay result;
  Reader reader(plan.output_times, result);
  const double origin = std::min(plan.signals.time.front(), plan.output_times.front());
  const double last = plan.output_times.back();
  const BatchRun::StepObserver observer = [&](double, double end, const DenseOutput& at) {
    reader(end + origin, [&](double time, State& x) { at(time - origin, x); });
  };
  reader.read_initial(origin, run.state());
  for (const auto& change : changes_of(plan)) {
    if (change.time > last) break;
    if (change.time > origin + run.time()) run.advance(change.time - origin, {}, observer);
    apply(change, plan, run);
  }
  if (last > origin + run.time()) run.advance(last - origin, {}, observer);
  result.balance = run.balance();
  return result;
}

}  // namespace kettlecast
