#include <string>

#include "bind.hpp"
#include "checked.hpp"
#include "kettlecast/properties/atmosphere.hpp"
#include "kettlecast/properties/component.hpp"
#include "kettlecast/properties/composition.hpp"
#include "kettlecast/properties/food_estimates.hpp"
#include "kettlecast/properties/freezing.hpp"
#include "kettlecast/properties/frozen_food.hpp"
#include "kettlecast/properties/oil.hpp"
#include "kettlecast/properties/water.hpp"

namespace kettlecast::python {
namespace {

/// Property of the temperature, for numbers and arrays of any shape.
template <class Property>
void define_at(py::module_& module, const char* name, Property property, const char* text) {
  define_for_arrays(module, name, property, text, named("temperature"));
}

void bind_water(py::module_& parent) {
  auto module = parent.def_submodule("water", "Saturated liquid water, 273 to 433 K.");
  define_at(module, "saturation_pressure", &water::saturation_pressure<double>, "[Pa]");
  define_at(module, "specific_heat", &water::specific_heat<double>, "[J/(kg K)]");
  define_at(module, "specific_enthalpy", &water::specific_enthalpy<double>,
            "[J/kg], 0 at 273.15 K");
  define_at(module, "density", &water::density<double>, "[kg/m3]");
  define_at(module, "conductivity", &water::conductivity<double>, "[W/(m K)]");
  define_at(module, "viscosity", &water::viscosity<double>, "[Pa s]");
  define_at(module, "expansivity", &water::expansivity<double>, "[1/K]");
  define_at(module, "latent_heat", &water::latent_heat<double>, "[J/kg]");
  define_at(module, "surface_tension", &water::surface_tension<double>, "[N/m]");
  define_at(module, "vapour_density", &water::vapour_density<double>, "[kg/m3]");
  define_for_arrays(module, "saturation_temperature", &water::saturation_temperature<double>,
                    "[K] at a pressure [Pa]", named("pressure"));
}

void bind_oil(py::module_& parent) {
  auto module = parent.def_submodule("oil", "A mean cooking oil, 278 to 473 K.");
  define_at(module, "density", &oil::density<double>, "[kg/m3]");
  define_at(module, "specific_heat", &oil::specific_heat<double>, "[J/(kg K)]");
  define_at(module, "specific_enthalpy", &oil::specific_enthalpy<double>, "[J/kg], 0 at 273.15 K");
  define_at(module, "conductivity", &oil::conductivity<double>, "[W/(m K)]");
  define_at(module, "viscosity", &oil::viscosity<double>, "[Pa s]");
  define_at(module, "expansivity", &oil::expansivity<double>, "[1/K]");
}

void bind_components(py::module_& parent) {
  auto module = parent.def_submodule("components", "Components of food, each alone.");
  const auto add = [&](const char* name, const Component& part) {
    auto one = module.def_submodule(name, "One component; Choi & Okos (1986), -40 to 150 degC.");
    const auto of = [&](const char* property, const ComponentProperty& value, const char* text) {
      define_at(
          one, property, [value](double temperature) { return value(temperature); }, text);
    };
    of("density", part.density, "[kg/m3]");
    of("specific_heat", part.specific_heat, "[J/(kg K)]");
    of("conductivity", part.conductivity, "[W/(m K)]");
  };
  add("water", component::water);
  add("supercooled_water", component::supercooled_water);
  add("ice", component::ice);
  add("protein", component::protein);
  add("fat", component::fat);
  add("carbohydrate", component::carbohydrate);
  add("fibre", component::fibre);
  add("ash", component::ash);
}

const py::arg food_argument("food");

/// Property of a food at a temperature.
template <class Property>
void of_food(py::module_& module, const char* name, Property property, const char* text) {
  define(module, name, property, text, food_argument, named("temperature", 228.0, 473.15, "K"));
}

using OfComposition = double (*)(const Composition&, const double&);
using OfFrozen = double (*)(const Composition&, const double&, const double&);

void of_composition(py::module_& module, const char* name, OfComposition property,
                    const char* text) {
  of_food(
      module, name,
      [=](const Food& food, double temperature) { return property(food.composition, temperature); },
      text);
}

void of_frozen(py::module_& module, const char* name, OfFrozen property, const char* text) {
  const std::string where = std::string("foods.") + name;
  define(
      module, name,
      [=](const Food& food, double temperature, double ice_fraction) {
        require_between(where, "ice_fraction", ice_fraction, 0.0, food.composition.water, "kg/kg");
        return property(food.composition, temperature, ice_fraction);
      },
      text, food_argument, named("temperature", 228.0, 273.16, "K"),
      named("ice_fraction", 0.0, 1.0, "kg/kg"));
}

void bind_food_properties(py::module_& parent) {
  auto module = parent.def_submodule("foods", "Foods from their composition.");
  of_composition(module, "specific_heat", &specific_heat<double>, "Unfrozen [J/(kg K)].");
  of_composition(module, "density", &density<double>, "Unfrozen [kg/m3].");
  of_composition(module, "conductivity", &conductivity<double>,
                 "Unfrozen, components in parallel, the most there can be [W/(m K)].");
  of_composition(module, "series_conductivity", &series_conductivity<double>,
                 "Unfrozen, components in series, the least there can be [W/(m K)].");
  of_food(
      module, "specific_enthalpy",
      [](const Food& food, double t) { return FreezingFood(food).specific_enthalpy(t); },
      "Freezing included [J/kg]; 0 unfrozen at 273.15 K.");
  of_food(
      module, "apparent_specific_heat",
      [](const Food& food, double t) { return FreezingFood(food).specific_heat(t); },
      "Slope of the specific enthalpy, freezing included [J/(kg K)].");
  of_food(
      module, "ice_fraction",
      [](const Food& food, double t) { return FreezingFood(food).ice_fraction(t); },
      "Ice per mass of food by Miles et al. [kg/kg].");
}

void bind_food_estimates(py::module_& parent) {
  auto module = parent.def_submodule("foods", "Foods from their composition.");
  define(
      module, "latent_heat", [](const Food& food) { return latent_heat(food.composition); },
      "Of all its water, as tables state it [J/kg].", food_argument);
  define(
      module, "heldman_singh_specific_heat",
      [](const Food& food) { return heldman_singh_specific_heat(food.composition); },
      "Unfrozen, at any temperature, by Heldman & Singh (1981) [J/(kg K)].", food_argument);
  of_food(module, "tchigeov_ice_fraction", &tchigeov_ice_fraction<double>,
          "Ice per mass of food by Tchigeov (1979) [kg/kg].");
  of_food(
      module, "chen_specific_heat",
      [](const Food& food, double t) { return chen_curve(food).specific_heat(t); },
      "Freezing included, by Chen (1985) [J/(kg K)].");
  of_food(
      module, "chen_specific_enthalpy",
      [](const Food& food, double t) { return chen_curve(food).specific_enthalpy(t); },
      "By Chen (1985), 0 at 233.15 K [J/kg].");
  of_food(
      module, "schwartzberg_specific_heat",
      [](const Food& food, double t) { return schwartzberg_curve(food).specific_heat(t); },
      "Freezing included, by Schwartzberg (1976) [J/(kg K)].");
  of_food(
      module, "schwartzberg_specific_enthalpy",
      [](const Food& food, double t) { return schwartzberg_curve(food).specific_enthalpy(t); },
      "By Schwartzberg (1976), 0 at 233.15 K [J/kg].");
  of_frozen(module, "frozen_density", &frozen_density<double>, "Partly frozen [kg/m3].");
  of_frozen(module, "frozen_conductivity", &frozen_conductivity<double>,
            "Partly frozen, components in parallel [W/(m K)].");
  of_frozen(module, "frozen_series_conductivity", &frozen_series_conductivity<double>,
            "Partly frozen, components in series [W/(m K)].");
}

void bind_atmosphere(py::module_& module) {
  const auto altitude = named("altitude");
  define_for_arrays(module, "pressure_at_altitude", &pressure_at_altitude<double>,
                    "US Standard Atmosphere 1976 [Pa] at an altitude [m].", altitude);
  define_for_arrays(module, "temperature_at_altitude", &temperature_at_altitude<double>,
                    "US Standard Atmosphere 1976 [K] at an altitude [m].", altitude);
  define_for_arrays(module, "density_at_altitude", &density_at_altitude<double>,
                    "US Standard Atmosphere 1976 [kg/m3] at an altitude [m].", altitude);
}

}  // namespace

void bind_properties(py::module_& module) {
  auto properties = properties_of(module);
  bind_water(properties);
  bind_oil(properties);
  bind_components(properties);
  bind_food_properties(properties);
  bind_food_estimates(properties);
  bind_atmosphere(properties);
}

}  // namespace kettlecast::python
