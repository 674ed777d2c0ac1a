#include <cmath>

#include "bind.hpp"
#include "kettlecast/base/errors.hpp"
#include "kettlecast/transfer/batch_exchange.hpp"
#include "kettlecast/transfer/batch_passes.hpp"
#include "kettlecast/transfer/batch_sums.hpp"
#include "kettlecast/transfer/batch_time.hpp"
#include "kettlecast/transfer/two_node.hpp"

namespace kettlecast::python {
namespace {

namespace py = pybind11;
using Batch = LumpedBatch<double>;

constexpr double smallest = 1e-12, largest = 1e15;

void positive(const char* key, double value, const char* unit) {
  require_between("batch", key, value, smallest, largest, unit);
}

void not_negative(const char* key, double value, const char* unit) {
  require_between("batch", key, value, 0.0, largest, unit);
}

double kelvin(const char* key, double value) {
  require_between("batch", key, value, 0.0, 1e4, "K");
  return value;
}

/// A number that exists only where the wanted temperature can be reached.
double reachable(const char* what, double value) {
  if (std::isfinite(value)) return value;
  throw OutsideValidity(std::string("batch: no ") + what +
                        " brings the batch to this temperature; it has to lie between the "
                        "temperature at the start and the one that medium and power tend to, and a "
                        "flowing medium brings at most its capacity flow");
}

Batch checked(double heat_capacity, double conductance, double medium, double power) {
  positive("heat_capacity", heat_capacity, "J/K");
  not_negative("conductance", conductance, "W/K");
  kelvin("medium", medium);
  require_between("batch", "power", power, -largest, largest, "W");
  return {heat_capacity, conductance, medium, power};
}

void bind_times(py::module_& module) {
  module.def(
      "time_to_temperature",
      [](double heat_capacity, double conductance, double medium, double start, double target,
         double power) {
        const Batch batch = checked(heat_capacity, conductance, medium, power);
        return reachable(
            "time", time_to_temperature(batch, kelvin("start", start), kelvin("target", target)));
      },
      py::arg("heat_capacity"), py::arg("conductance"), py::arg("medium"), py::arg("start"),
      py::arg("target"), py::arg("power") = 0.0,
      "Time [s] from start to target [K] with a medium [K] behind a conductance [W/K] and constant "
      "power [W]; Kern, Process Heat Transfer (1950), ch. 18.");
  module.def(
      "temperature_after",
      [](double heat_capacity, double conductance, double medium, double start, double time,
         double power) {
        not_negative("time", time, "s");
        return temperature_after(checked(heat_capacity, conductance, medium, power),
                                 kelvin("start", start), time);
      },
      py::arg("heat_capacity"), py::arg("conductance"), py::arg("medium"), py::arg("start"),
      py::arg("time"), py::arg("power") = 0.0,
      "Temperature [K] a time [s] after start [K]; Kern (1950), ch. 18.");
  module.def(
      "steady_temperature",
      [](double conductance, double medium, double power) {
        positive("conductance", conductance, "W/K");
        return steady_temperature(Batch{1.0, conductance, medium, power});
      },
      py::arg("conductance"), py::arg("medium"), py::arg("power"),
      "Temperature [K] at which the loss equals the power [W]; heat balance.");
}

void bind_sizing(py::module_& module) {
  module.def(
      "required_power",
      [](double heat_capacity, double conductance, double medium, double start, double target,
         double time) {
        positive("time", time, "s");
        return required_power(checked(heat_capacity, conductance, medium, 0.0),
                              kelvin("start", start), kelvin("target", target), time);
      },
      py::arg("heat_capacity"), py::arg("conductance"), py::arg("medium"), py::arg("start"),
      py::arg("target"), py::arg("time"),
      "Constant power [W] from start to target [K] in a time [s], losses included; heat balance.");
  module.def(
      "required_conductance",
      [](double heat_capacity, double medium, double start, double target, double time) {
        positive("time", time, "s");
        const Batch batch = checked(heat_capacity, 0.0, medium, 0.0);
        return reachable("conductance", required_conductance(batch, kelvin("start", start),
                                                             kelvin("target", target), time));
      },
      py::arg("heat_capacity"), py::arg("medium"), py::arg("start"), py::arg("target"),
      py::arg("time"),
      "Conductance U A to an isothermal medium [W/K] for a time [s]; Kern (1950), ch. 18.");
  module.def(
      "required_area",
      [](double heat_capacity, double overall_coefficient, double medium, double start,
         double target, double time) {
        positive("overall_coefficient", overall_coefficient, "W/(m2 K)");
        positive("time", time, "s");
        const Batch batch = checked(heat_capacity, 0.0, medium, 0.0);
        return reachable("area", required_conductance(batch, kelvin("start", start),
                                                      kelvin("target", target), time)) /
               overall_coefficient;
      },
      py::arg("heat_capacity"), py::arg("overall_coefficient"), py::arg("medium"), py::arg("start"),
      py::arg("target"), py::arg("time"),
      "Area of coil or jacket [m2] for a time [s] with isothermal medium; Kern (1950), ch. 18.");
  module.def(
      "lumped_rate",
      [](double film_coefficient, double surface_per_volume, double density, double specific_heat) {
        positive("density", density, "kg/m3");
        positive("specific_heat", specific_heat, "J/(kg K)");
        return lumped_rate(film_coefficient, surface_per_volume, density, specific_heat);
      },
      py::arg("film_coefficient"), py::arg("surface_per_volume"), py::arg("density"),
      py::arg("specific_heat"),
      "Rate h (A/V) / (rho cp) of a lumped body [1/s]; Incropera & DeWitt, section 5.1.");
  module.def(
      "hemisphere_surface_per_volume",
      [](double radius) {
        positive("radius", radius, "m");
        return hemisphere_surface_per_volume(radius);
      },
      py::arg("radius"), "Jacketed surface per volume of a hemispherical kettle [1/m]; geometry.");
}

void bind_exchange(py::module_& module) {
  const auto flows = [&](const char* name, double (*function)(const double&, const double&),
                         const char* text) {
    module.def(
        name,
        [function](double conductance, double capacity_flow) {
          positive("conductance", conductance, "W/K");
          positive("capacity_flow", capacity_flow, "W/K");
          return function(conductance, capacity_flow);
        },
        py::arg("conductance"), py::arg("capacity_flow"), text);
  };
  flows("difference_ratio", &difference_ratio<double>,
        "Ratio K = exp(U A / (W C)) of the temperature differences along coil or jacket [-]; Kern "
        "(1950), ch. 18.");
  flows("flowing_medium_conductance", &flowing_medium_conductance<double>,
        "Effective conductance W C (1 - 1/K) of a medium that changes its temperature [W/K]; Kern "
        "(1950), ch. 18.");
  module.def(
      "flowing_medium_area_conductance",
      [](double effective, double capacity_flow) {
        positive("effective", effective, "W/K");
        positive("capacity_flow", capacity_flow, "W/K");
        return reachable("area", flowing_medium_area_conductance(effective, capacity_flow));
      },
      py::arg("effective"), py::arg("capacity_flow"),
      "U A that has an effective conductance with a flowing medium [W/K]; Kern (1950), ch. 18.");
  module.def(
      "counterflow_conductance",
      [](double conductance, double medium_capacity_flow, double batch_capacity_flow) {
        positive("conductance", conductance, "W/K");
        positive("medium_capacity_flow", medium_capacity_flow, "W/K");
        positive("batch_capacity_flow", batch_capacity_flow, "W/K");
        return counterflow_conductance(conductance, medium_capacity_flow, batch_capacity_flow);
      },
      py::arg("conductance"), py::arg("medium_capacity_flow"), py::arg("batch_capacity_flow"),
      "Effective conductance of an external counterflow exchanger [W/K]; Kern (1950), ch. 18.");
  module.def(
      "shell_and_tube_conductance",
      [](double conductance, double medium_capacity_flow, double batch_capacity_flow, int shells) {
        positive("conductance", conductance, "W/K");
        positive("medium_capacity_flow", medium_capacity_flow, "W/K");
        positive("batch_capacity_flow", batch_capacity_flow, "W/K");
        require_between("batch", "shells", shells, 1.0, 100.0, "");
        return shell_and_tube_conductance(conductance, medium_capacity_flow, batch_capacity_flow,
                                          shells);
      },
      py::arg("conductance"), py::arg("medium_capacity_flow"), py::arg("batch_capacity_flow"),
      py::arg("shells") = 1,
      "Effective conductance of external 1-2, 2-4 ... exchangers [W/K]; Kern (1950), ch. 18.");
}

void bind_passes(py::module_& module) {
  module.def(
      "temperature_after_passes",
      [](double effectiveness, double medium, double start, double passes) {
        require_between("batch", "effectiveness", effectiveness, 1e-6, 1.0, "");
        not_negative("passes", passes, "");
        return temperature_after_passes(effectiveness, kelvin("medium", medium),
                                        kelvin("start", start), passes);
      },
      py::arg("effectiveness"), py::arg("medium"), py::arg("start"), py::arg("passes"),
      "Temperature [K] of an unstirred batch after passes [-] through an exchanger; Kern (1950), "
      "p. 637.");
  module.def(
      "passes_to_temperature",
      [](double effectiveness, double medium, double start, double target) {
        require_between("batch", "effectiveness", effectiveness, 1e-6, 1.0, "");
        return reachable("number of passes",
                         passes_to_temperature(effectiveness, kelvin("medium", medium),
                                               kelvin("start", start), kelvin("target", target)));
      },
      py::arg("effectiveness"), py::arg("medium"), py::arg("start"), py::arg("target"),
      "Passes [-] of an unstirred batch through an exchanger to a temperature [K]; Kern (1950), "
      "p. 637.");
}

void bind_sums(py::module_& module) {
  module.def(
      "sensible_heat",
      [](double mass, double specific_heat, double start, double target) {
        return sensible_heat(mass, specific_heat, start, target);
      },
      py::arg("mass"), py::arg("specific_heat"), py::arg("start"), py::arg("target"),
      "Heat m cp (T - T_0) [J]; definition.");
  module.def(
      "boil_off_heat",
      [](double mass, double share, double latent_heat) {
        require_between("batch", "share", share, 0.0, 1.0, "");
        return boil_off_heat(mass, share, latent_heat);
      },
      py::arg("mass"), py::arg("share"), py::arg("latent_heat"),
      "Heat to boil off a share [-] of a mass [J]; definition.");
  module.def(
      "mass_of_vapour",
      [](double heat, double latent_heat) {
        positive("latent_heat", latent_heat, "J/kg");
        return mass_of_vapour(heat, latent_heat);
      },
      py::arg("heat"), py::arg("latent_heat"),
      "Water boiled off by a heat, or steam that gives it [kg]; of a heat flow [kg/s]; "
      "definition.");
  module.def(
      "mixing_temperature",
      [](double capacity, double temperature, double added_capacity, double added_temperature) {
        not_negative("capacity", capacity, "J/K");
        not_negative("added_capacity", added_capacity, "J/K");
        positive("capacity and added_capacity", capacity + added_capacity, "J/K");
        return mixing_temperature(capacity, kelvin("temperature", temperature), added_capacity,
                                  kelvin("added_temperature", added_temperature));
      },
      py::arg("capacity"), py::arg("temperature"), py::arg("added_capacity"),
      py::arg("added_temperature"), "Temperature after mixing [K]; heat balance.");
}

}  // namespace

void bind_batch(py::module_& module) {
  auto transfer = module.def_submodule("transfer", "Heat transfer correlations in SI units.");
  auto batch = transfer.def_submodule("batch", "Times, sizes and heats of whole batches.");
  bind_times(batch);
  bind_sizing(batch);
  bind_exchange(batch);
  bind_passes(batch);
  bind_sums(batch);
  bind_two_node(batch);
}

}  // namespace kettlecast::python
