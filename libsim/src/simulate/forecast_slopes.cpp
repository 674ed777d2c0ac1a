#include <optional>

#include "kettlecast/simulate/sensitivity.hpp"
#include "recipe_run.hpp"

namespace kettlecast {
namespace {

class Unwitnessed : public Witness<Dual8> {
 public:
  void step(int, double, double, const StateAt<Dual8>&) override {}
  void instant(int, double, const std::vector<Dual8>&) override {}
};

using Report = BasicPhaseReport<Dual8>;

std::optional<double> value_if_any(const std::optional<Dual8>& number) {
  return number ? std::optional<double>(number->value) : std::nullopt;
}

PhaseReport values_of(const Report& report) {
  PhaseReport plain;
  plain.name = report.name;
  plain.start = value_of(report.start);
  plain.duration = value_of(report.duration);
  plain.loaded = value_of(report.loaded);
  plain.time_to_reach = value_if_any(report.time_to_reach);
  plain.ended = report.ended;
  plain.peak = value_of(report.peak);
  plain.peak_reading = value_of(report.peak_reading);
  plain.overshoot = value_if_any(report.overshoot);
  plain.overshoot_reading = value_if_any(report.overshoot_reading);
  plain.evaporated = value_of(report.evaporated);
  plain.energy = value_of(report.energy);
  return plain;
}

/// Appends the slopes by the levers of a pass.
void append(const Dual8& number, const Levers& levers, std::vector<double>& slopes) {
  for (std::size_t k = 0; k < levers.size(); ++k) {
    slopes.push_back(number.slope[static_cast<int>(k)] / levers[k].scale);
  }
}
void append(const std::optional<Dual8>& number, const Levers& levers, std::vector<double>& slopes) {
  if (number) append(*number, levers, slopes);
}

void append(const Report& report, const Levers& levers, PhaseSlopes& slopes) {
  append(report.start, levers, slopes.start);
  append(report.duration, levers, slopes.duration);
  append(report.time_to_reach, levers, slopes.time_to_reach);
  append(report.peak, levers, slopes.peak);
  append(report.peak_reading, levers, slopes.peak_reading);
  append(report.overshoot, levers, slopes.overshoot);
  append(report.overshoot_reading, levers, slopes.overshoot_reading);
  append(report.evaporated, levers, slopes.evaporated);
  append(report.energy, levers, slopes.energy);
}

}  // namespace

ForecastSlopes simulate_slopes(const Kettle& kettle, const Coefficients& coefficients,
                               const Recipe& recipe, const Start& start,
                               const std::vector<Lever>& levers, const Options& options) {
  check(recipe);
  const auto additions = all_additions(recipe);
  check(levers, additions.size(), recipe.phases.size());
  ForecastSlopes result;
  result.slopes.resize(recipe.phases.size());
  in_groups<slopes_of<Dual8>>(levers, coefficients, [&](const Levers& group, std::size_t) {
    BatchRun<Dual8> run(kettle, seeded<Dual8>(coefficients, group), additions, start, options);
    seed_run(group, run);
    Unwitnessed nobody;
    const auto reports = run_phases(run, recipe, group, nobody);
    result.phases.clear();
    for (std::size_t i = 0; i < reports.size(); ++i) {
      result.phases.push_back(values_of(reports[i]));
      append(reports[i], group, result.slopes[i]);
    }
    append(run.time(), group, result.duration);
    append(run.model().product_mass(run.state()), group, result.product_mass);
  });
  return result;
}

}  // namespace kettlecast
