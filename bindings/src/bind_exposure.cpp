#include <optional>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include "bind.hpp"
#include "kettlecast/base/errors.hpp"
#include "kettlecast/properties/process_time.hpp"
#include "kettlecast/simulate/exposure.hpp"
#include "record.hpp"

namespace kettlecast::python {
namespace {

using Numbers = std::vector<double>;

/// Wide enough for any kitchen and any micro-organism; catches degC and degF given as K.
constexpr double coldest = 200.0, hottest = 900.0;

void require_temperature(const std::string& key, double value) {
  require_between("exposure", key, value, coldest, hottest, "K");
}

void require_temperatures(const Numbers& values) {
  for (const double value : values) require_temperature("temperatures", value);
}

void require_bigelow(double reference, double z) {
  require_temperature("reference", reference);
  require_between("exposure", "z", z, 0.1, 500.0, "K");
}

void require_time(const std::string& key, double value) {
  require_between("exposure", key, value, 1e-9, 1e12, "s");
}

void require_energy(double activation_energy) {
  require_between("browning", "activation_energy", activation_energy, 1e3, 1e6, "J/mol");
}

void bind_rates(py::module_& module) {
  module.def(
      "lethal_rate",
      [](double temperature, double reference, double z) {
        require_temperature("temperature", temperature);
        require_bigelow(reference, z);
        return lethality::lethal_rate(temperature, reference, z);
      },
      py::arg("temperature"), py::arg("reference"), py::arg("z"),
      "Lethal rate 10^((T - Tref)/z) [-]; Bigelow (1920).");
  module.def(
      "pasteurisation_rate",
      [](double temperature) {
        require_temperature("temperature", temperature);
        return lethality::pasteurisation_rate(temperature);
      },
      py::arg("temperature"), "Pasteurisation units per minute, 1.393^(T/degC - 60) [1/min].");
  module.def("pasteurisation_z", &lethality::pasteurisation_z,
             "z that the pasteurisation unit stands for [K], 6.947.");
}

void bind_death_times(py::module_& module) {
  module.def(
      "decimal_reduction_time",
      [](double temperature, double decimal_reduction, double reference, double z) {
        require_temperature("temperature", temperature);
        require_time("decimal_reduction", decimal_reduction);
        require_bigelow(reference, z);
        return lethality::decimal_reduction_time(temperature, decimal_reduction, reference, z);
      },
      py::arg("temperature"), py::arg("decimal_reduction"), py::arg("reference"), py::arg("z"),
      "D at a temperature from D at the reference [s]; Stumbo (1973).");
  module.def(
      "z_value",
      [](double temperature_1, double decimal_reduction_1, double temperature_2,
         double decimal_reduction_2) {
        require_temperature("temperature_1", temperature_1);
        require_temperature("temperature_2", temperature_2);
        require_time("decimal_reduction_1", decimal_reduction_1);
        require_time("decimal_reduction_2", decimal_reduction_2);
        if ((temperature_2 - temperature_1) * (decimal_reduction_1 - decimal_reduction_2) <= 0.0) {
          throw InvalidArgument("z_value: D must be shorter at the higher temperature");
        }
        return lethality::z_value(temperature_1, decimal_reduction_1, temperature_2,
                                  decimal_reduction_2);
      },
      py::arg("temperature_1"), py::arg("decimal_reduction_1"), py::arg("temperature_2"),
      py::arg("decimal_reduction_2"), "z from D at two temperatures [K]; Stumbo (1973).");
  module.def(
      "fit_death_times",
      [](const Numbers& temperatures, const Numbers& decimal_reductions, double reference) {
        const DeathTimes found = fit_death_times(temperatures, decimal_reductions, reference);
        return std::make_pair(found.decimal_reduction, found.z);
      },
      py::arg("temperatures"), py::arg("decimal_reductions"), py::arg("reference"),
      "D at the reference [s] and z [K] by least squares of log10 D.");
}

void bind_reductions(py::module_& module) {
  module.def(
      "log_reductions",
      [](double time, double decimal_reduction) {
        require_between("exposure", "time", time, 0.0, 1e12, "s");
        require_time("decimal_reduction", decimal_reduction);
        return lethality::log_reductions(time, decimal_reduction);
      },
      py::arg("time"), py::arg("decimal_reduction"), "Decimal reductions t / D [-].");
  module.def(
      "hold_time",
      [](double reductions, double decimal_reduction) {
        require_between("exposure", "reductions", reductions, 0.0, 100.0, "");
        require_between("exposure", "decimal_reduction", decimal_reduction, 0.0, 1e12, "s");
        return lethality::hold_time(reductions, decimal_reduction);
      },
      py::arg("reductions"), py::arg("decimal_reduction"),
      "Time for a number of decimal reductions, n D [s].");
}

void bind_sums(py::module_& module) {
  module.def(
      "process_time",
      [](const Numbers& times, const Numbers& temperatures, double reference, double z) {
        require_temperatures(temperatures);
        require_bigelow(reference, z);
        return process_time(times, temperatures, reference, z);
      },
      py::arg("times"), py::arg("temperatures"), py::arg("reference"), py::arg("z"),
      "Time at the reference that kills as much [s]; exact between points that lines join.");
}

void bind_browning(py::module_& module) {
  module.def(
      "rate",
      [](double temperature, double reference, double activation_energy) {
        require_temperature("temperature", temperature);
        require_temperature("reference", reference);
        require_energy(activation_energy);
        return browning::rate(temperature, reference, activation_energy);
      },
      py::arg("temperature"), py::arg("reference"), py::arg("activation_energy"),
      "Rate of browning over that at the reference [-]; Arrhenius, an indicator.");
  module.def(
      "browning_time",
      [](const Numbers& times, const Numbers& temperatures, double reference,
         double activation_energy) {
        require_temperatures(temperatures);
        require_temperature("reference", reference);
        require_energy(activation_energy);
        return browning_time(times, temperatures, reference, activation_energy);
      },
      py::arg("times"), py::arg("temperatures"), py::arg("reference"), py::arg("activation_energy"),
      "Time at the reference that browns as much [s]; Arrhenius, an indicator.");
  module.def(
      "activation_energy_from_z",
      [](double temperature, double z) {
        require_bigelow(temperature, z);
        return browning::activation_energy_from_z(temperature, z);
      },
      py::arg("temperature"), py::arg("z"), "Activation energy ln(10) R T^2 / z [J/mol].");
  module.def(
      "activation_energies",
      [] { return std::make_pair(browning::dry_crust_energy, browning::highest_energy); },
      "Of a dry crust, Zanoni et al. (1995), and the highest published one [J/mol].");
}

/// Together, at the longest and, if at all, first from when.
using Summary = std::tuple<double, double, std::optional<double>>;

Summary summary(const std::vector<Stay>& stays) {
  return {total_time(stays), longest_time(stays), first_time(stays)};
}

void bind_stays(py::module_& module) {
  module.def(
      "time_above",
      [](const Numbers& time, const Numbers& value, double level) {
        return summary(stays_above({time, value}, level));
      },
      py::arg("time"), py::arg("value"), py::arg("level"),
      "Whole and longest time at or above a level and when it began first [s].");
  module.def(
      "time_below",
      [](const Numbers& time, const Numbers& value, double level) {
        return summary(stays_below({time, value}, level));
      },
      py::arg("time"), py::arg("value"), py::arg("level"),
      "Whole and longest time below a level and when it began first [s].");
}

}  // namespace

void bind_exposure(py::module_& module) {
  auto properties = module.def_submodule("properties", "Material properties in SI units.");
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
