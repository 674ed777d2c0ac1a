#include <optional>
#include <tuple>
#include <utility>
#include <vector>

#include "bind.hpp"
#include "checked.hpp"
#include "kettlecast/properties/process_time.hpp"
#include "kettlecast/simulate/exposure.hpp"

namespace kettlecast::python {
namespace {

using Numbers = std::vector<double>;

/// Wide enough for any kitchen and any micro-organism; catches degC and degF given as K.
Named kelvin(const char* name) { return named(name, 200.0, 900.0, "K"); }

void bind_rates(py::module_& module) {
  define(module, "lethal_rate", &lethality::lethal_rate<double>,
         "Lethal rate 10^((T - Tref)/z) [-]; Bigelow (1920).", kelvin("temperature"),
         kelvin("reference"), named("z"));
  define(module, "pasteurisation_rate", &lethality::pasteurisation_rate<double>,
         "Pasteurisation units per minute, 1.393^(T/degC - 60) [1/min].", kelvin("temperature"));
  define(module, "pasteurisation_z", &lethality::pasteurisation_z,
         "z that the pasteurisation unit stands for [K], 6.947.");
}

double z_value(double temperature_1, double decimal_reduction_1, double temperature_2,
               double decimal_reduction_2) {
  if ((temperature_2 - temperature_1) * (decimal_reduction_1 - decimal_reduction_2) <= 0.0) {
    throw InvalidArgument("lethality.z_value: D must be shorter at the higher temperature");
  }
  return lethality::z_value(temperature_1, decimal_reduction_1, temperature_2, decimal_reduction_2);
}

void bind_death_times(py::module_& module) {
  define(module, "decimal_reduction_time", &lethality::decimal_reduction_time<double>,
         "D at a temperature from D at the reference [s]; Stumbo (1973).", kelvin("temperature"),
         named("decimal_reduction"), kelvin("reference"), named("z"));
  define(module, "z_value", &z_value, "z from D at two temperatures [K]; Stumbo (1973).",
         kelvin("temperature_1"), named("decimal_reduction_1"), kelvin("temperature_2"),
         named("decimal_reduction_2"));
  define(
      module, "fit_death_times",
      [](const Numbers& temperatures, const Numbers& decimal_reductions, double reference) {
        const DeathTimes found = fit_death_times(temperatures, decimal_reductions, reference);
        return std::make_pair(found.decimal_reduction, found.z);
      },
      "D at the reference [s] and z [K] by least squares of log10 D.", py::arg("temperatures"),
      py::arg("decimal_reductions"), py::arg("reference"));
}

void bind_reductions(py::module_& module) {
  define(module, "log_reductions", &lethality::log_reductions<double>,
         "Decimal reductions t / D [-].", named("time"), named("decimal_reduction"));
  define(module, "hold_time", &lethality::hold_time<double>,
         "Time for a number of decimal reductions, n D [s].", named("reductions"),
         named("decimal_reduction", 0.0, 1e12, "s"));
}

void bind_sums(py::module_& module) {
  define(module, "process_time", &process_time<double>,
         "Time at the reference that kills as much [s]; exact between points that lines join.",
         py::arg("times"), kelvin("temperatures"), kelvin("reference"), named("z"));
}

void bind_browning(py::module_& module) {
  define(module, "rate", &browning::rate<double>,
         "Rate of browning over that at the reference [-]; Arrhenius, an indicator.",
         kelvin("temperature"), kelvin("reference"), named("activation_energy"));
  define(module, "browning_time", &browning_time<double>,
         "Time at the reference that browns as much [s]; Arrhenius, an indicator.",
         py::arg("times"), kelvin("temperatures"), kelvin("reference"), named("activation_energy"));
  define(module, "activation_energy_from_z", &browning::activation_energy_from_z<double>,
         "Activation energy ln(10) R T^2 / z [J/mol].", kelvin("temperature"), named("z"));
  define(
      module, "activation_energies",
      [] { return std::make_pair(browning::dry_crust_energy, browning::highest_energy); },
      "Of a dry crust, Zanoni et al. (1995), and the highest published one [J/mol].");
}

/// Together, at the longest and, if at all, first from when.
using Summary = std::tuple<double, double, std::optional<double>>;

Summary summary(const std::vector<Stay>& stays) {
  return {total_time(stays), longest_time(stays), first_time(stays)};
}

void bind_stays(py::module_& module) {
  define(
      module, "time_above",
      [](const Numbers& time, const Numbers& value, double level) {
        return summary(stays_above({time, value}, level));
      },
      "Whole and longest time at or above a level and when it began first [s].", py::arg("time"),
      py::arg("value"), py::arg("level"));
  define(
      module, "time_below",
      [](const Numbers& time, const Numbers& value, double level) {
        return summary(stays_below({time, value}, level));
      },
      "Whole and longest time below a level and when it began first [s].", py::arg("time"),
      py::arg("value"), py::arg("level"));
}

}  // namespace

void bind_exposure(py::module_& module) {
  auto properties = properties_of(module);
  auto lethal = properties.def_submodule("lethality", "Thermal death over time, for planning.");
  bind_rates(lethal);
  bind_death_times(lethal);
  bind_reductions(lethal);
  bind_sums(lethal);
  auto brown = properties.def_submodule("browning", "An indicator of browning, not a colour.");
  bind_browning(brown);
  auto exposure = module.def_submodule("exposure", "Time that signals spend above a level.");
  bind_stays(exposure);
}

}  // namespace kettlecast::python
