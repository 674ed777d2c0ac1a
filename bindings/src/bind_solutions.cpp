#include <string>

#include "bind.hpp"
#include "kettlecast/base/errors.hpp"
#include "kettlecast/properties/brine.hpp"
#include "kettlecast/properties/oil.hpp"
#include "kettlecast/properties/solutes.hpp"
#include "kettlecast/properties/syrup.hpp"

namespace kettlecast::python {
namespace {

namespace py = pybind11;

constexpr double hottest = 520.0;  ///< of all properties here [K]

/// Argument of a solution: its name, the lowest and highest value, the unit for a message.
struct Argument {
  const char* name;
  double lower;
  double upper;
  const char* unit;
};

constexpr Argument sugar_share{"sugar", 0.0, 1.0, "kg/kg"};
constexpr Argument salt_share{"salt", 0.0, 1.0, "kg/kg"};
constexpr Argument kelvin{"temperature", 255.0, hottest, "K"};
constexpr Argument pascal{"pressure", 1e3, 4.4e5, "Pa"};

void require(const std::string& where, const Argument& argument, double value) {
  require_between(where, argument.name, value, argument.lower, argument.upper, argument.unit);
}

using OfOne = double (*)(const double&);
using OfTwo = double (*)(const double&, const double&);

/// Function of one number that must lie in its range.
void define(py::module_& module, const char* name, OfOne function, const Argument& argument,
            const char* text) {
  module.def(
      name,
      [=](double value) {
        require(name, argument, value);
        return function(value);
      },
      py::arg(argument.name), text);
}

/// Function of two numbers that must lie in their ranges.
void define(py::module_& module, const char* name, OfTwo function, const Argument& first,
            const Argument& second, const char* text) {
  module.def(
      name,
      [=](double one, double two) {
        require(name, first, one);
        require(name, second, two);
        return function(one, two);
      },
      py::arg(first.name), py::arg(second.name), text);
}

void bind_sugar(py::module_& parent) {
  auto module = parent.def_submodule("sugar", "Sucrose syrup, sugar as mass fraction [kg/kg].");
  define(module, "water_activity", &sugar::water_activity<double>, sugar_share,
         "Activity of the water near boiling [-] (Norrish 1966; Starzak & Peacock 1997).");
  define(module, "boiling_temperature", &sugar::boiling_temperature<double>, sugar_share, pascal,
         "Temperature at which syrup boils [K] (activity of its water, IAPWS-IF97).");
  define(module, "boiling_elevation", &sugar::boiling_elevation<double>, sugar_share, pascal,
         "How much hotter than water syrup boils [K] (activity of its water, IAPWS-IF97).");
  define(module, "boiling_concentration", &sugar::boiling_concentration<double>, kelvin, pascal,
         "Sugar in syrup that boils at a temperature [kg/kg]; inverse of boiling_temperature.");
  define(module, "saturation", &sugar::saturation<double>, kelvin,
         "Sugar in a saturated solution [kg/kg] (Herzfeld 1892, 0-100 degC).");
  define(module, "density", &sugar::density<double>, sugar_share, kelvin,
         "Density [kg/m3] (ICUMSA 1990, 0-85 %, 0-100 degC).");
  define(module, "relative_density", &sugar::relative_density<double>, sugar_share, kelvin,
         "Density over that of water at the same temperature [-] (ICUMSA 1990).");
  define(module, "saturated_density", &sugar::saturated_density<double>, kelvin,
         "Density of a saturated solution at its own temperature [kg/m3] (ICUMSA 1990).");
  define(module, "baume", &sugar::baume<double>, sugar_share,
         "Degrees Baume at 20 degC (modulus 145).");
  define(module, "sugar_of_baume", &sugar::sugar_of_baume<double>, {"degrees", 0.0, 51.0, "degBe"},
         "Sugar of syrup with a Baume degree at 20 degC [kg/kg]; inverse of baume.");
  define(module, "viscosity", &sugar::viscosity<double>, sugar_share, kelvin,
         "Dynamic viscosity [Pa s] (Genotelle 1978, 0-75 %, 0-100 degC).");
  define(module, "specific_heat", &sugar::specific_heat<double>, sugar_share, kelvin,
         "Specific heat [J/(kg K)] (Bubnik et al. 1995, 0-90 %, 0-100 degC).");
  define(module, "solid_specific_heat", &sugar::solid_specific_heat<double>, kelvin,
         "Specific heat of solid sucrose [J/(kg K)] (Mohos 2010, 0-100 degC).");
  define(module, "conductivity", &sugar::conductivity<double>, sugar_share, kelvin,
         "Conductivity [W/(m K)] (Riedel 1949, 0-80 %, 0-80 degC).");
}

void bind_salt(py::module_& parent) {
  auto module = parent.def_submodule("salt", "Brine of NaCl, salt as mass fraction [kg/kg].");
  define(module, "water_activity", &salt::water_activity<double>, salt_share, kelvin,
         "Activity of the water, undissolved salt included [-] (Moller 1988).");
  define(module, "boiling_temperature", &salt::boiling_temperature<double>, salt_share, pascal,
         "Temperature at which brine boils [K] (Moller 1988, IAPWS-IF97).");
  define(module, "boiling_elevation", &salt::boiling_elevation<double>, salt_share, pascal,
         "How much hotter than water brine boils [K] (Moller 1988, IAPWS-IF97).");
  define(module, "saturated_boiling_temperature", &salt::saturated_boiling_temperature<double>,
         pascal, "Temperature at which brine boils over undissolved salt [K] (Moller 1988).");
  define(module, "sea_salt_elevation", &salt::sea_salt_elevation<double>,
         {"salinity", 0.0, 0.12, "kg/kg"}, pascal,
         "How much hotter than water a sea-salt solution boils [K] (Sharqawy et al. 2010).");
  define(module, "saturation", &salt::saturation<double>, kelvin,
         "Salt in a saturated brine [kg/kg] (Potter, Babcock & Brown 1977).");
  define(module, "density", &salt::density<double>, salt_share, kelvin,
         "Density [kg/m3] (Laliberte 2009, 0-26.6 %, 0-140 degC).");
  define(module, "viscosity", &salt::viscosity<double>, salt_share, kelvin,
         "Dynamic viscosity [Pa s] (Laliberte 2009, 0-26.4 %, 5-154 degC).");
  define(module, "specific_heat", &salt::specific_heat<double>, salt_share, kelvin,
         "Specific heat [J/(kg K)] (Laliberte 2009, 0-26.1 %, 1.5-120 degC).");
}

void require_masses(const std::string& where, double water, double sugar, double salt) {
  require(where, {"water", 0.0, 1e9, "kg"}, water);
  require(where, {"sugar", 0.0, 1e9, "kg"}, sugar);
  require(where, {"salt", 0.0, 1e9, "kg"}, salt);
}

void bind_solutes(py::module_& parent) {
  auto module = parent.def_submodule("solutes", "Sugar and salt in one liquid, by mass [kg].");
  module.def(
      "water_activity",
      [](double water, double sugar, double salt) {
        require_masses("water_activity", water, sugar, salt);
        return solutes::water_activity(water, sugar, salt);
      },
      py::arg("water"), py::arg("sugar"), py::arg("salt"),
      "Activity of the water [-], product of those of sugar and of salt (Ross 1975).");
  module.def(
      "boiling_temperature",
      [](double water, double sugar, double salt, double pressure) {
        require_masses("boiling_temperature", water, sugar, salt);
        require("boiling_temperature", pascal, pressure);
        return solutes::boiling_temperature(water, sugar, salt, pressure);
      },
      py::arg("water"), py::arg("sugar"), py::arg("salt"), py::arg("pressure"),
      "Temperature at which the liquid boils [K] (Ross 1975, IAPWS-IF97).");
}

void bind_oils(py::module_& parent) {
  auto module = parent.def_submodule("oil");
  constexpr Argument reference{"reference", 1e-6, 1e3, "Pa s"};
  constexpr Argument at{"reference_temperature", 255.0, hottest, "K"};
  module.def(
      "arrhenius_viscosity",
      [=](double viscosity, double reference_temperature, double energy, double temperature) {
        require("arrhenius_viscosity", reference, viscosity);
        require("arrhenius_viscosity", at, reference_temperature);
        require("arrhenius_viscosity", {"energy", 0.0, 1e5, "J/mol"}, energy);
        require("arrhenius_viscosity", kelvin, temperature);
        return oil::arrhenius_viscosity(viscosity, reference_temperature, energy, temperature);
      },
      py::arg("reference"), py::arg("reference_temperature"), py::arg("energy"),
      py::arg("temperature"),
      "Viscosity from that at another temperature [Pa s] (Arrhenius; Diamante & Lan 2014).");
  module.def(
      "viscosity_like",
      [=](double viscosity, double reference_temperature, double temperature) {
        require("viscosity_like", reference, viscosity);
        require("viscosity_like", at, reference_temperature);
        require("viscosity_like", kelvin, temperature);
        return oil::viscosity_like(viscosity, reference_temperature, temperature);
      },
      py::arg("reference"), py::arg("reference_temperature"), py::arg("temperature"),
      "Viscosity of an oil known at one temperature [Pa s], falling as that of the mean oil.");
}

}  // namespace

void bind_solutions(py::module_& module) {
  auto properties = module.def_submodule("properties", "Material properties in SI units.");
  bind_sugar(properties);
  bind_salt(properties);
  bind_solutes(properties);
  bind_oils(properties);
}

}  // namespace kettlecast::python
