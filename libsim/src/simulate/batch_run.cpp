#include "batch_run.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "kettlecast/base/errors.hpp"

namespace kettlecast {
namespace {

Components components_of(const Layout& layout) {
  Components components{layout.names, layout.scales};
  components.names.emplace_back("control.integral");
  components.scales.push_back(1.0);
  return components;
}

/// A floor hotter than this is beyond any cooking and beyond the model [K].
constexpr double hottest_floor = 773.15;

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
  all.push_back({[](double, const State& x) { return x[slot::floor_upper] - hottest_floor; },
                 Crossing::rising});
  const Stop stop = integrator_.advance(time_, to, state_, all, observer);
  time_ = stop.time;
  if (stop.watch == static_cast<int>(watches.size())) {
    throw IntegrationFailure(
        "the floor passes 500 degC: the kettle is heated with too little in it to take the heat",
        time_, "floor.temperature");
  }
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
  books.heat_residual = left / std::max({books.heater_energy, books.cooling_energy, 1.0});
  books.mass_residual = missing / std::max(poured, 1e-3);
  return books;
}

}  // namespace kettlecast
