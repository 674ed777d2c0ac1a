#include <cmath>

#include "bind.hpp"
#include "checked.hpp"
#include "kettlecast/transfer/batch_exchange.hpp"
#include "kettlecast/transfer/batch_passes.hpp"
#include "kettlecast/transfer/batch_sums.hpp"
#include "kettlecast/transfer/batch_time.hpp"

namespace kettlecast::python {
namespace {

using Batch = LumpedBatch<double>;

constexpr double most = 1e15;

// A whole batch: its heat capacity is in J/K, it may be insulated, a time may have to pass.
const Named heat_capacity = named("heat_capacity", 1e-12, most, "J/K");
const Named conductance = named("conductance", 0.0, most, "W/K");
const Named time_above_zero = named("time", 1e-12, most, "s");

/// A number that exists only where the wanted temperature can be reached.
double reachable(const char* what, double value) {
  if (std::isfinite(value)) return value;
  throw OutsideValidity(std::string("batch: no ") + what +
                        " brings the batch to this temperature; it has to lie between the "
                        "temperature at the start and the one that medium and power tend to, and a "
                        "flowing medium brings at most its capacity flow");
}

double reachable_conductance(const char* what, double capacity, double medium, double start,
                             double target, double time) {
  return reachable(what,
                   required_conductance(Batch{capacity, 0.0, medium, 0.0}, start, target, time));
}

void bind_times(py::module_& module) {
  define(
      module, "time_to_temperature",
      [](double capacity, double loss, double medium, double start, double target, double power) {
        return reachable("time",
                         time_to_temperature(Batch{capacity, loss, medium, power}, start, target));
      },
      "Time [s] from start to target [K] with a medium [K] behind a conductance [W/K] and constant "
      "power [W]; Kern, Process Heat Transfer (1950), ch. 18.",
      heat_capacity, conductance, named("medium"), named("start"), named("target"),
      named("power") = 0.0);
  define(
      module, "temperature_after",
      [](double capacity, double loss, double medium, double start, double time, double power) {
        return temperature_after(Batch{capacity, loss, medium, power}, start, time);
      },
      "Temperature [K] a time [s] after start [K]; Kern (1950), ch. 18.", heat_capacity,
      conductance, named("medium"), named("start"), named("time"), named("power") = 0.0);
  define(
      module, "steady_temperature",
      [](double loss, double medium, double power) {
        return steady_temperature(Batch{1.0, loss, medium, power});
      },
      "Temperature [K] at which the loss equals the power [W]; heat balance.", named("conductance"),
      named("medium"), named("power"));
}

void bind_sizing(py::module_& module) {
  define(
      module, "required_power",
      [](double capacity, double loss, double medium, double start, double target, double time) {
        return required_power(Batch{capacity, loss, medium, 0.0}, start, target, time);
      },
      "Constant power [W] from start to target [K] in a time [s], losses included; heat balance.",
      heat_capacity, conductance, named("medium"), named("start"), named("target"),
      time_above_zero);
  define(
      module, "required_conductance",
      [](double capacity, double medium, double start, double target, double time) {
        return reachable_conductance("conductance", capacity, medium, start, target, time);
      },
      "Conductance U A to an isothermal medium [W/K] for a time [s]; Kern (1950), ch. 18.",
      heat_capacity, named("medium"), named("start"), named("target"), time_above_zero);
  define(
      module, "required_area",
      [](double capacity, double overall, double medium, double start, double target, double time) {
        return reachable_conductance("area", capacity, medium, start, target, time) / overall;
      },
      "Area of coil or jacket [m2] for a time [s] with isothermal medium; Kern (1950), ch. 18.",
      heat_capacity, named("overall_coefficient"), named("medium"), named("start"), named("target"),
      time_above_zero);
  define(module, "lumped_rate", &lumped_rate<double>,
         "Rate h (A/V) / (rho cp) of a lumped body [1/s]; Incropera & DeWitt, section 5.1.",
         named("film_coefficient", 0.0, 1e12, "W/(m2 K)"), named("surface_per_volume"),
         named("density"), named("specific_heat"));
  define(module, "hemisphere_surface_per_volume", &hemisphere_surface_per_volume<double>,
         "Jacketed surface per volume of a hemispherical kettle [1/m]; geometry.", named("radius"));
}

void bind_exchange(py::module_& module) {
  define(module, "difference_ratio", &difference_ratio<double>,
         "Ratio K = exp(U A / (W C)) of the temperature differences along coil or jacket [-]; Kern "
         "(1950), ch. 18.",
         named("conductance"), named("capacity_flow"));
  define(module, "flowing_medium_conductance", &flowing_medium_conductance<double>,
         "Effective conductance W C (1 - 1/K) of a medium that changes its temperature [W/K]; Kern "
         "(1950), ch. 18.",
         named("conductance"), named("capacity_flow"));
  define(
      module, "flowing_medium_area_conductance",
      [](double effective, double capacity_flow) {
        return reachable("area", flowing_medium_area_conductance(effective, capacity_flow));
      },
      "U A that has an effective conductance with a flowing medium [W/K]; Kern (1950), ch. 18.",
      named("effective"), named("capacity_flow"));
  define(module, "counterflow_conductance", &counterflow_conductance<double>,
         "Effective conductance of an external counterflow exchanger [W/K]; Kern (1950), ch. 18.",
         named("conductance"), named("medium_capacity_flow"), named("batch_capacity_flow"));
  define(module, "shell_and_tube_conductance", &shell_and_tube_conductance<double>,
         "Effective conductance of external 1-2, 2-4 ... exchangers [W/K]; Kern (1950), ch. 18.",
         named("conductance"), named("medium_capacity_flow"), named("batch_capacity_flow"),
         named("shells") = 1);
}

void bind_passes(py::module_& module) {
  define(module, "temperature_after_passes", &temperature_after_passes<double>,
         "Temperature [K] of an unstirred batch after passes [-] through an exchanger; Kern "
         "(1950), p. 637.",
         named("effectiveness"), named("medium"), named("start"), named("passes"));
  define(
      module, "passes_to_temperature",
      [](double effectiveness, double medium, double start, double target) {
        return reachable("number of passes",
                         passes_to_temperature(effectiveness, medium, start, target));
      },
      "Passes [-] of an unstirred batch through an exchanger to a temperature [K]; Kern (1950), "
      "p. 637.",
      named("effectiveness"), named("medium"), named("start"), named("target"));
}

void bind_sums(py::module_& module) {
  define(module, "sensible_heat", &sensible_heat<double>, "Heat m cp (T - T_0) [J]; definition.",
         named("mass"), named("specific_heat"), named("start"), named("target"));
  define(module, "boil_off_heat", &boil_off_heat<double>,
         "Heat to boil off a share [-] of a mass [J]; definition.", named("mass"), named("share"),
         named("latent_heat"));
  define(module, "mass_of_vapour", &mass_of_vapour<double>,
         "Water boiled off by a heat, or steam that gives it [kg]; of a heat flow [kg/s]; "
         "definition.",
         named("heat"), named("latent_heat"));
  define(
      module, "mixing_temperature",
      [](double capacity, double temperature, double added_capacity, double added_temperature) {
        require_between("batch.mixing_temperature", "capacity and added_capacity",
                        capacity + added_capacity, 1e-12, 2.0 * most, "J/K");
        return mixing_temperature(capacity, temperature, added_capacity, added_temperature);
      },
      "Temperature after mixing [K]; heat balance.", named("capacity"), named("temperature"),
      named("added_capacity"), named("added_temperature"));
}

}  // namespace

void bind_batch(py::module_& module) {
  auto transfer = transfer_of(module);
  auto batch = transfer.def_submodule("batch", "Times, sizes and heats of whole batches.");
  bind_times(batch);
  bind_sizing(batch);
  bind_exchange(batch);
  bind_passes(batch);
  bind_sums(batch);
  bind_two_node(batch);
}

}  // namespace kettlecast::python
