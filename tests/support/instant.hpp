#pragma once

#include <string>
#include <utility>
#include <vector>

#include "batch.hpp"
#include "catch.hpp"
#include "kettlecast/kettle/model.hpp"
#include "kettlecast/numerics/integrator.hpp"

/// A kettle model with product in it, looked at one instant or for some time without a controller.
class Instant {
 public:
  /// Pours all additions at once.
  Instant(const kettlecast::Kettle& kettle, std::vector<kettlecast::Addition> additions,
          const kettlecast::Start& start = {}, const kettlecast::Coefficients& coefficients = {})
      : model(kettle, coefficients.values(), std::move(additions)),
        state(model.initial_state(start)) {
    for (std::size_t i = 0; i < model.additions().size(); ++i) {
      model.pour(i, model.additions()[i].mass, state);
    }
    inputs.pour_rate.assign(model.additions().size(), 0.0);
  }

  /// Rates of change now.
  std::vector<double> rates() {
    std::vector<double> found;
    model.rates(inputs, state, found);
    return found;
  }

  /// What the state means now.
  const kettlecast::Scene<double>& scene() { return model.scene_at(state); }

  /// Lets time pass with the inputs as they are [s].
  void wait(double duration) {
    const auto& layout = model.layout();
    kettlecast::Integrator integrator(
        [this](const auto& x, auto& dxdt, double) { model.rates(inputs, x, dxdt); },
        {layout.names, layout.scales}, {});
    integrator.advance(0.0, duration, state, {}, [](double, double, const auto&) {});
  }

  /// Change of a quantity of the state per second along the rates, by central difference.
  template <class Quantity>
  double along(const std::vector<double>& rates_now, Quantity quantity) const {
    const double step = 1e-3;
    auto ahead = state, behind = state;
    for (std::size_t i = 0; i < state.size(); ++i) {
      ahead[i] += step * rates_now[i];
      behind[i] -= step * rates_now[i];
    }
    return (quantity(ahead) - quantity(behind)) / (2.0 * step);
  }

  /// First law and conservation of mass: what is stored is what came less what left.
  void check_books() {
    using namespace kettlecast;
    const auto now = rates();
    const double stored = along(now, [&](const auto& x) { return model.stored_energy(x); });
    const double given = now[slot::heater_energy] + now[slot::stirring_energy] +
                         now[slot::poured_energy] - now[slot::cooling_energy] -
                         now[slot::lost_energy] - now[slot::vapour_energy];
    // Rounding of 1e8 J over the 2 ms of the difference: 1e-5 W per bit, some tens of bits.
    CHECK_THAT(stored, Catch::Matchers::WithinAbs(given, 0.05));
    const double held = along(now, [&](const auto& x) { return model.product_mass(x); });
    CHECK_THAT(held,
               Catch::Matchers::WithinAbs(now[slot::poured_mass] - now[slot::vapour_mass], 1e-9));
  }

  kettlecast::KettleModel<double> model;
  std::vector<double> state;
  kettlecast::Inputs inputs;
};
