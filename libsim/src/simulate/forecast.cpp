#include "kettlecast/simulate/forecast.hpp"

#include "kettlecast/base/errors.hpp"
#include "recipe_run.hpp"

namespace kettlecast {

Forecast simulate(const Kettle& kettle, const Coefficients& coefficients, const Recipe& recipe,
                  const Start& start, const Options& options) {
  check(recipe);
  require_between("Options", "output_interval", options.output_interval, 0.01, 3600.0, "s");
  BatchRun<double> run(kettle, coefficients.values(), all_additions(recipe), start, options);
  Forecast forecast;
  Recorder recorder(run, forecast.trace, options.output_interval);
  forecast.phases = run_phases(run, recipe, {}, recorder);
  forecast.balance = run.balance();
  forecast.duration = run.time();
  forecast.product_mass = run.model().product_mass(run.state());
  forecast.steps = run.steps();
  return forecast;
}

}  // namespace kettlecast
