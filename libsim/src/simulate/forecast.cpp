#include "kettlecast/simulate/forecast.hpp"

#include "kettlecast/base/errors.hpp"
#include "phase_run.hpp"

namespace kettlecast {
namespace {

std::vector<Addition> all_additions(const Recipe& recipe) {
  std::vector<Addition> additions;
  for (const auto& phase : recipe.phases) {
    additions.insert(additions.end(), phase.additions.begin(), phase.additions.end());
  }
  return additions;
}

}  // namespace

Forecast simulate(const Kettle& kettle, const Coefficients& coefficients, const Recipe& recipe,
                  const Start& start, const Options& options) {
  check(recipe);
  require_between("Options", "output_interval", options.output_interval, 0.01, 3600.0, "s");
  BatchRun run(kettle, coefficients, all_additions(recipe), start, options);
  Forecast forecast;
  Recorder recorder(run, forecast.trace, options.output_interval);
  HeaterSwitch heater;
  std::size_t first_addition = 0;
  for (std::size_t i = 0; i < recipe.phases.size(); ++i) {
    const Phase& phase = recipe.phases[i];
    PhaseRun phase_run(run, phase, first_addition, heater);
    try {
      forecast.phases.push_back(phase_run.run(recorder, static_cast<int>(i)));
    } catch (const IntegrationFailure& failure) {
      throw IntegrationFailure(failure.reason, failure.time, failure.component, phase.name);
    }
    heater = phase_run.heater();
    first_addition += phase.additions.size();
  }
  forecast.balance = run.balance();
  forecast.duration = run.time();
  forecast.product_mass = run.model().product_mass(run.state());
  forecast.steps = run.steps();
  return forecast;
}

}  // namespace kettlecast
