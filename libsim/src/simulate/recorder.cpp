#include "recorder.hpp"

#include <algorithm>
#include <cmath>

namespace kettlecast {
namespace {

/// Fixed columns of the trace; those of pieces follow.
const std::vector<std::string> fixed_columns = {
    "time",
    "phase",
    "floor_sensor.reading",
    "probe.reading",
    "core_probe.reading",
    "floor.temperature",
    "product.temperature",
    "liquid.temperature",
    "liquid.boiling_point",
    "wall.temperature",
    "jacket.temperature",
    "elements.temperature",
    "floor.heat",
    "jacket.heat",
    "jacket.cooling",
    "agitator.speed",
    "liquid.water",
    "vapour.mass",
    "product.level",
    "product.volume",
    "product.mass",
};

/// Peaks between accepted steps are looked for at this many points per step.
constexpr int looks_per_step = 4;

}  // namespace

Recorder::Recorder(BatchRun<double>& run, Trace& trace, double interval)
    : run_(run), trace_(trace), interval_(interval) {
  trace_.names = fixed_columns;
  for (const auto& piece : run.model().pieces()) {
    trace_.names.push_back(piece.name + ".core_temperature");
    trace_.names.push_back(piece.name + ".surface_temperature");
  }
}

void Recorder::step(int phase, double begin, double end, const StateAt<double>& at) {
  for (double n = std::floor(begin / interval_) + 1.0; n * interval_ <= end; n += 1.0) {
    at(n * interval_, scratch_);
    instant(phase, n * interval_, scratch_);
  }
}

void Recorder::instant(int phase, double time, const State& x) {
  auto& values = trace_.values;
  if (trace_.rows() > 0 && values[values.size() - trace_.columns()] >= time) {
    values.resize(values.size() - trace_.columns());
  }
  run_.apply_feedback(x);
  const auto& scene = run_.model().scene_at(x);
  const auto& inputs = run_.inputs();
  for (double value : {time,
                       static_cast<double>(phase),
                       x[slot::floor_reading],
                       x[slot::probe_reading],
                       x[slot::core_reading],
                       x[slot::floor_upper],
                       scene.product_temperature,
                       scene.liquid_temperature,
                       scene.boiling_point,
                       x[slot::wall_wet],
                       x[slot::jacket],
                       x[slot::elements],
                       inputs.floor_heat,
                       inputs.jacket_heat,
                       inputs.cooling,
                       inputs.reversed ? -inputs.agitator_speed : inputs.agitator_speed,
                       scene.pool.water,
                       x[slot::vapour_mass],
                       scene.level,
                       scene.liquid_volume + scene.piece_volume,
                       run_.model().product_mass(x)}) {
    values.push_back(value);
  }
  for (std::size_t i = 0; i < scene.pieces.size(); ++i) {
    values.push_back(scene.pieces[i].core_temperature);
    values.push_back(scene.pieces[i].surface_temperature);
  }
}

template <class T>
Regulation<T> PeakTracker<T>::regulation(const std::vector<T>& x) {
  const T product = run_.model().scene_at(x).product_temperature;
  const T floor = run_.model().floor_sensor_temperature(x);
  const T reading = reading_of(signal_, x);
  switch (signal_) {
    case Regulated::floor:
      return {reading, floor};
    case Regulated::difference:
      return {reading, floor - product};
    case Regulated::core:
      return {reading, run_.model().scene_at(x).core_temperature};
    default:
      return {reading, product};
  }
}

template <class T>
void PeakTracker<T>::look(const std::vector<T>& x) {
  const Regulation<T> now = regulation(x);
  const auto raise = [&](Regulation<T>& peak) {
    peak = {std::max(peak.reading, now.reading), std::max(peak.truth, now.truth)};
  };
  raise(peak_);
  if (reached_) raise(peak_after_);
}

template <class T>
void PeakTracker<T>::operator()(double begin, double end, const StateAt<T>& at) {
  for (int look_index = 1; look_index <= looks_per_step; ++look_index) {
    at(begin + (end - begin) * look_index / looks_per_step, scratch_);
    look(scratch_);
  }
}

template <class T>
void PeakTracker<T>::report(const T& set_point, BasicPhaseReport<T>& phase) const {
  phase.peak = peak_.truth;
  phase.peak_reading = peak_.reading;
  if (!reached_) return;
  phase.overshoot = std::max(T(0.0), T(peak_after_.truth - set_point));
  phase.overshoot_reading = std::max(T(0.0), T(peak_after_.reading - set_point));
}

template class PeakTracker<double>;
template class PeakTracker<Dual8>;

}  // namespace kettlecast
