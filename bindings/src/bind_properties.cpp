#include <pybind11/numpy.h>

#include "bind.hpp"
#include "kettlecast/properties/air.hpp"
#include "kettlecast/properties/atmosphere.hpp"
#include "kettlecast/properties/composition.hpp"
#include "kettlecast/properties/freezing.hpp"
#include "kettlecast/properties/oil.hpp"
#include "kettlecast/properties/water.hpp"

namespace kettlecast::python {
namespace {

namespace py = pybind11;

using Property = double (*)(const double&);

/// Property of the temperature [K], for numbers and arrays of any shape.
void define(py::module_& module, const char* name, Property property, const char* text) {
  module.def(name, py::vectorize([property](double temperature) { return property(temperature); }),
             py::arg("temperature"), text);
}

void bind_water(py::module_& parent) {
  auto module = parent.def_submodule("water", "Saturated liquid water, 273 to 433 K.");
  define(module, "saturation_pressure", &water::saturation_pressure<double>, "[Pa]");
  define(module, "specific_heat", &water::specific_heat<double>, "[J/(kg K)]");
  define(module, "specific_enthalpy", &water::specific_enthalpy<double>, "[J/kg], 0 at 273.15 K");
  define(module, "density", &water::density<double>, "[kg/m3]");
  define(module, "conductivity", &water::conductivity<double>, "[W/(m K)]");
  define(module, "viscosity", &water::viscosity<double>, "[Pa s]");
  define(module, "expansivity", &water::expansivity<double>, "[1/K]");
  define(module, "latent_heat", &water::latent_heat<double>, "[J/kg]");
  define(module, "surface_tension", &water::surface_tension<double>, "[N/m]");
  define(module, "vapour_density", &water::vapour_density<double>, "[kg/m3]");
  module.def("saturation_temperature",
             py::vectorize([](double pressure) { return water::saturation_temperature(pressure); }),
             py::arg("pressure"), "[K] at a pressure [Pa]");
}

void bind_oil(py::module_& parent) {
  auto module = parent.def_submodule("oil", "A mean cooking oil, 278 to 473 K.");
  define(module, "density", &oil::density<double>, "[kg/m3]");
  define(module, "specific_heat", &oil::specific_heat<double>, "[J/(kg K)]");
  define(module, "specific_enthalpy", &oil::specific_enthalpy<double>, "[J/kg], 0 at 273.15 K");
  define(module, "conductivity", &oil::conductivity<double>, "[W/(m K)]");
  define(module, "viscosity", &oil::viscosity<double>, "[Pa s]");
  define(module, "expansivity", &oil::expansivity<double>, "[1/K]");
}

void bind_food_properties(py::module_& parent) {
  auto module = parent.def_submodule("foods", "Foods from their composition.");
  const auto of_food = [&](const char* name, double (*property)(const Composition&, const double&),
                           const char* text) {
    module.def(
        name,
        [property](const Food& food, double temperature) {
          return property(food.composition, temperature);
        },
        py::arg("food"), py::arg("temperature"), text);
  };
  of_food("specific_heat", &specific_heat<double>, "Unfrozen [J/(kg K)].");
  of_food("density", &density<double>, "Unfrozen [kg/m3].");
  of_food("conductivity", &conductivity<double>, "Unfrozen [W/(m K)].");
  module.def(
      "specific_enthalpy",
      [](const Food& food, double temperature) {
        return FreezingFood(food).specific_enthalpy(temperature);
      },
      py::arg("food"), py::arg("temperature"), "Freezing included [J/kg]; 0 unfrozen at 273.15 K.");
  module.def(
      "ice_fraction",
      [](const Food& food, double temperature) {
        return FreezingFood(food).ice_fraction(temperature);
      },
      py::arg("food"), py::arg("temperature"), "Ice per mass of food [kg/kg].");
}

}  // namespace

void bind_properties(py::module_& module) {
  auto properties = module.def_submodule("properties", "Material properties in SI units.");
  bind_water(properties);
  bind_oil(properties);
  bind_food_properties(properties);
  properties.def("pressure_at_altitude",
                 py::vectorize([](double altitude) { return pressure_at_altitude(altitude); }),
                 py::arg("altitude"), "US Standard Atmosphere 1976 [Pa] at an altitude [m].");
}

}  // namespace kettlecast::python
