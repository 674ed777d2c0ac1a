#include "batch_run.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "kettlecast/base/errors.hpp"

namespace kettlecast {
namespace {

Components components_of(const Layout& layout) {
  Components components{layout.names, layout.scales, layout.weighed_by_scale};
  components.names.emplace_back("control.integral");
  components.scales.push_back(1.0);
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

BatchRun::BatchRun(const Kettle& kettle, const Coefficients& coefficients,
                   std::vector<Addition> additions, const Start& start, const Options& options)
    : model_(kettle, coefficients.values(), std::move(additions)),
      state_(model_.initial_state(start)),
      integrator_(
          [this](const State& x, State& dxdt, double) {
            double extra_rate = 0.0;
            if (feedback_) feedback_(x, inputs_, extra_rate);
            model_.rates(inputs_, x, dxdt);
            dxdt.push_back(extra_rate);
          },
          components_of(model_.layout()), integrator_options(options)) {
  inputs_.pour_rate.assign(model_.additions().size(), 0.0);
  initial_energy_ = model_.stored_energy(state_);
  state_.push_back(0.0);
}

void BatchRun::start_pour(std::size_t addition) {
  const auto& what = model_.additions()[addition];
  if (what.pour_time > 0.0) {
    inputs_.pour_rate[addition] = what.mass / what.pour_time;
  } else {
    model_.pour(addition, what.mass, state_);
  }
}

int BatchRun::advance(double to, const std::vector<Watch>& watches, const StepObserver& observer) {
  std::vector<Watch> all = watches;
  for (const std::size_t metal : metal_slots) {
    all.push_back(
        {[metal](double, const State& x) { return x[metal] - hottest_metal; }, Crossing::rising});
  }
  const Stop stop = integrator_.advance(time_, to, state_, all, observer);
  time_ = stop.time;
  const int beyond = stop.watch - static_cast<int>(watches.size());
  if (beyond >= 0) fail_too_hot(metal_slots[beyond], time_);
  return stop.watch;
}

Balance BatchRun::balance() {
  Balance books;
  books.heater_energy = state_[slot::heater_energy];
  books.stirring_energy = state_[slot::stirring_energy];
  books.poured_energy = state_[slot::poured_energy];
  books.cooling_energy = state_[slot::cooling_energy];
  books.lost_energy = state_[slot::lost_energy];
  books.vapour_energy = state_[slot::vapour_energy];
  books.stored_energy = model_.stored_energy(state_) - initial_energy_;
  const double left = books.heater_energy + books.stirring_energy + books.poured_energy -
                      books.cooling_energy - books.lost_energy - books.vapour_energy -
                      books.stored_energy;
  const double poured = state_[slot::poured_mass];
  const double missing = poured - state_[slot::vapour_mass] - model_.product_mass(state_);
  books.heat_residual =
      left / std::max({std::abs(books.heater_energy), std::abs(books.cooling_energy),
                       std::abs(books.lost_energy), std::abs(books.vapour_energy),
                       std::abs(books.stored_energy), 1.0});
  books.mass_residual = missing / std::max(poured, 1e-3);
  return books;
}

}  // namespace kettlecast
