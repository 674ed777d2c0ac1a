#include "batch_run.hpp"

#include <algorithm>
#include <cmath>
#include <type_traits>
#include <utility>

#include "kettlecast/base/errors.hpp"
#include "kettlecast/numerics/dual_state.hpp"

namespace kettlecast {
namespace {

/// Slopes need not be as exact as values; but without any control a component that settles faster
/// than the steps are long leaves its slopes to swing.
constexpr double slope_leniency = 100.0;

/// Components of the state, then those of its slopes.
template <class T>
Components components_of(const Layout& layout) {
  Components components{layout.names, layout.scales, layout.weighed_by_scale};
  components.names.emplace_back("control.integral");
  components.scales.push_back(1.0);
  const std::size_t count = components.names.size();
  for (std::size_t k = 1; k < packed_size<T>; ++k) {
    for (std::size_t i = 0; i < count; ++i) {
      components.names.push_back("slope of " + components.names[i]);
      components.scales.push_back(slope_leniency * components.scales[i]);
    }
  }
  return components;
}

/// Metal hotter than this is beyond any cooking and beyond the model [K].
constexpr double hottest_metal = 773.15;

/// Watches that stop a run, after those of the caller: floor, wetted wall, dry wall.
constexpr std::size_t metal_slots[] = {slot::floor_upper, slot::wall_wet, slot::wall_dry};

[[noreturn]] void fail_too_hot(std::size_t metal, double time) {
  const bool floor = metal == slot::floor_upper;
  throw IntegrationFailure(std::string(floor ? "the floor" : "the wall") +
                               " passes 500 degC: the kettle is heated with too little in it to "
                               "take the heat",
                           time, floor ? "floor.temperature" : "wall.temperature");
}

IntegratorOptions integrator_options(const Options& options) {
  IntegratorOptions chosen;
  chosen.tolerance = options.tolerance;
  chosen.max_step = options.max_step;
  return chosen;
}

}  // namespace

template <class T>
BatchRun<T>::BatchRun(const Kettle& kettle, const std::array<T, coefficient_count>& coefficients,
                      std::vector<Addition> additions, const Start& start, const Options& options)
    : model_(kettle, coefficients, std::move(additions)),
      state_(model_.initial_state(start)),
      integrator_(
          [this](const State& packed, State& rates, double) {
            unpack(packed, x_);
            evaluate(x_, dxdt_);
            pack(dxdt_, rates);
          },
          components_of<T>(model_.layout()), integrator_options(options)) {
  inputs_.pour_rate.assign(model_.additions().size(), 0.0);
  initial_energy_ = value_of(model_.stored_energy(state_));
  state_.push_back(T(0.0));
}

template <class T>
void BatchRun<T>::evaluate(const std::vector<T>& x, std::vector<T>& dxdt) {
  T extra_rate(0.0);
  if (feedback_) feedback_(x, inputs_, extra_rate);
  model_.rates(inputs_, x, dxdt);
  dxdt.push_back(extra_rate);
}

template <class T>
std::vector<T> BatchRun<T>::rates_at(const std::vector<T>& x) {
  std::vector<T> dxdt;
  evaluate(x, dxdt);
  return dxdt;
}

template <class T>
void BatchRun<T>::start_pour(std::size_t addition) {
  const auto& what = model_.additions()[addition];
  if (what.pour_time > 0.0) {
    inputs_.pour_rate[addition] = what.mass / what.pour_time;
  } else {
    model_.pour(addition, what.mass, state_);
  }
}

/// Watches as the integrator sees them, with those of the metal behind.
template <class T>
std::vector<Watch> BatchRun<T>::plain(const std::vector<StateWatch<T>>& watches) {
  std::vector<Watch> all;
  for (const auto& watch : watches) {
    all.push_back({[this, &watch](double, const State& packed) {
                     unpack(packed, seen_);
                     return value_of(watch.value(seen_));
                   },
                   watch.crossing});
  }
  for (const std::size_t metal : metal_slots) {
    all.push_back(
        {[metal](double, const State& x) { return x[metal] - hottest_metal; }, Crossing::rising});
  }
  return all;
}

template <class T>
int BatchRun<T>::advance(const T& to, const std::vector<StateWatch<T>>& watches,
                         const StepObserver<T>& observer) {
  pack(state_, packed_);
  const auto unpacked = [&](double from, double until, const DenseOutput& dense) {
    observer(from, until, [&](double time, std::vector<T>& x) {
      dense(time, packed_seen_);
      unpack(packed_seen_, x);
    });
  };
  const Stop stop =
      integrator_.advance(value_of(time_), value_of(to), packed_, plain(watches), unpacked);
  unpack(packed_, state_);
  const int beyond = stop.watch - static_cast<int>(watches.size());
  if (beyond >= 0) fail_too_hot(metal_slots[beyond], stop.time);
  if (stop.watch < 0) {
    arrive(to);
  } else {
    arrive_at(stop.time, watches[static_cast<std::size_t>(stop.watch)].value);
  }
  return stop.watch;
}

/// Ends an interval at a time that may have slopes.
template <class T>
void BatchRun<T>::arrive(const T& to) {
  const T length = to - time_;
  if (has_slopes(length)) follow(rates_at(state_), length, state_);
  time_ = to;
}

/// Ends an interval at a crossing, whose time has slopes.
template <class T>
void BatchRun<T>::arrive_at(double time, const std::function<T(const std::vector<T>&)>& value) {
  T end(time);
  if constexpr (!std::is_same_v<T, double>) {
    const T slopes = crossing_slopes(value, state_, rates_at(state_));
    end += (time_ - value_of(time_)) + slopes;
  }
  arrive(end);
}

template <class T>
void BatchRun<T>::meet(const T& instant) {
  if (has_slopes(instant - time_)) arrive(with_value(instant, value_of(time_)));
}

template <class T>
void BatchRun<T>::hold_clock(std::vector<T>& x) {
  if (has_slopes(time_)) follow(rates_at(x), -time_, x);
}

template <class T>
Balance BatchRun<T>::balance() {
  const auto book = [this](std::size_t which) { return value_of(state_[which]); };
  Balance books;
  books.heater_energy = book(slot::heater_energy);
  books.stirring_energy = book(slot::stirring_energy);
  books.poured_energy = book(slot::poured_energy);
  books.cooling_energy = book(slot::cooling_energy);
  books.lost_energy = book(slot::lost_energy);
  books.vapour_energy = book(slot::vapour_energy);
  books.stored_energy = value_of(model_.stored_energy(state_)) - initial_energy_;
  const double left = books.heater_energy + books.stirring_energy + books.poured_energy -
                      books.cooling_energy - books.lost_energy - books.vapour_energy -
                      books.stored_energy;
  const double poured = book(slot::poured_mass);
  const double missing = poured - book(slot::vapour_mass) - value_of(model_.product_mass(state_));
  books.heat_residual =
      left / std::max({std::abs(books.heater_energy), std::abs(books.cooling_energy),
                       std::abs(books.lost_energy), std::abs(books.vapour_energy),
                       std::abs(books.stored_energy), 1.0});
  books.mass_residual = missing / std::max(poured, 1e-3);
  return books;
}

template class BatchRun<double>;
template class BatchRun<Dual8>;

}  // namespace kettlecast
