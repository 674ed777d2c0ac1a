#include "bind.hpp"
#include "checked.hpp"
#include "kettlecast/properties/brine.hpp"
#include "kettlecast/properties/oil.hpp"
#include "kettlecast/properties/solutes.hpp"
#include "kettlecast/properties/syrup.hpp"

namespace kettlecast::python {
namespace {

constexpr double hottest = 520.0;  ///< of all properties here [K]

const Named sugar_share = named("sugar");
const Named salt_share = named("salt");
const Named kelvin = named("temperature", 255.0, hottest, "K");
const Named pascal = named("pressure", 1e3, 4.4e5, "Pa");

void bind_sugar(py::module_& parent) {
  auto module = parent.def_submodule("sugar", "Sucrose syrup, sugar as mass fraction [kg/kg].");
  define(
      module, "water_activity", [](double sugar) { return sugar::water_activity(sugar); },
      "Activity of the water near boiling [-] (Norrish 1966; Starzak & Peacock 1997).",
      sugar_share);
  define(module, "boiling_temperature", &sugar::boiling_temperature<double>,
         "Temperature at which syrup boils [K] (activity of its water, IAPWS-IF97).", sugar_share,
         pascal);
  define(module, "boiling_elevation", &sugar::boiling_elevation<double>,
         "How much hotter than water syrup boils [K] (activity of its water, IAPWS-IF97).",
         sugar_share, pascal);
  define(module, "boiling_concentration", &sugar::boiling_concentration<double>,
         "Sugar in syrup that boils at a temperature [kg/kg]; inverse of boiling_temperature.",
         kelvin, pascal);
  define(module, "saturation", &sugar::saturation<double>,
         "Sugar in a saturated solution [kg/kg] (Herzfeld 1892, 0-100 degC).", kelvin);
  define(module, "density", &sugar::density<double>,
         "Density [kg/m3] (ICUMSA 1990, 0-85 %, 0-100 degC).", sugar_share, kelvin);
  define(module, "relative_density", &sugar::relative_density<double>,
         "Density over that of water at the same temperature [-] (ICUMSA 1990).", sugar_share,
         kelvin);
  define(module, "saturated_density", &sugar::saturated_density<double>,
         "Density of a saturated solution at its own temperature [kg/m3] (ICUMSA 1990).", kelvin);
  define(module, "baume", &sugar::baume<double>, "Degrees Baume at 20 degC (modulus 145).",
         sugar_share);
  define(module, "sugar_of_baume", &sugar::sugar_of_baume<double>,
         "Sugar of syrup with a Baume degree at 20 degC [kg/kg]; inverse of baume.",
         named("degrees"));
  define(module, "viscosity", &sugar::viscosity<double>,
         "Dynamic viscosity [Pa s] (Genotelle 1978, 0-75 %, 0-100 degC).", sugar_share, kelvin);
  define(module, "specific_heat", &sugar::specific_heat<double>,
         "Specific heat [J/(kg K)] (Bubnik et al. 1995, 0-90 %, 0-100 degC).", sugar_share, kelvin);
  define(module, "solid_specific_heat", &sugar::solid_specific_heat<double>,
         "Specific heat of solid sucrose [J/(kg K)] (Mohos 2010, 0-100 degC).", kelvin);
  define(module, "conductivity", &sugar::conductivity<double>,
         "Conductivity [W/(m K)] (Riedel 1949, 0-80 %, 0-80 degC).", sugar_share, kelvin);
}

void bind_salt(py::module_& parent) {
  auto module = parent.def_submodule("salt", "Brine of NaCl, salt as mass fraction [kg/kg].");
  define(module, "water_activity", &salt::water_activity<double>,
         "Activity of the water, undissolved salt included [-] (Moller 1988).", salt_share, kelvin);
  define(module, "boiling_temperature", &salt::boiling_temperature<double>,
         "Temperature at which brine boils [K] (Moller 1988, IAPWS-IF97).", salt_share, pascal);
  define(module, "boiling_elevation", &salt::boiling_elevation<double>,
         "How much hotter than water brine boils [K] (Moller 1988, IAPWS-IF97).", salt_share,
         pascal);
  define(module, "saturated_boiling_temperature", &salt::saturated_boiling_temperature<double>,
         "Temperature at which brine boils over undissolved salt [K] (Moller 1988).", pascal);
  define(module, "sea_salt_elevation", &salt::sea_salt_elevation<double>,
         "How much hotter than water a sea-salt solution boils [K] (Sharqawy et al. 2010).",
         named("salinity"), pascal);
  define(module, "saturation", &salt::saturation<double>,
         "Salt in a saturated brine [kg/kg] (Potter, Babcock & Brown 1977).", kelvin);
  define(module, "density", &salt::density<double>,
         "Density [kg/m3] (Laliberte 2009, 0-26.6 %, 0-140 degC).", salt_share, kelvin);
  define(module, "viscosity", &salt::viscosity<double>,
         "Dynamic viscosity [Pa s] (Laliberte 2009, 0-26.4 %, 5-154 degC).", salt_share, kelvin);
  define(module, "specific_heat", &salt::specific_heat<double>,
         "Specific heat [J/(kg K)] (Laliberte 2009, 0-26.1 %, 1.5-120 degC).", salt_share, kelvin);
}

void bind_solutes(py::module_& parent) {
  auto module = parent.def_submodule("solutes", "Sugar and salt in one liquid, by mass [kg].");
  const auto sugar = named("sugar", 0.0, 1e9, "kg");
  const auto salt = named("salt", 0.0, 1e9, "kg");
  define(module, "water_activity", &solutes::water_activity<double>,
         "Activity of the water [-], product of those of sugar and of salt (Ross 1975).",
         named("water"), sugar, salt);
  define(module, "boiling_temperature", &solutes::boiling_temperature<double>,
         "Temperature at which the liquid boils [K] (Ross 1975, IAPWS-IF97).", named("water"),
         sugar, salt, pascal);
}

void bind_oils(py::module_& parent) {
  auto module = parent.def_submodule("oil");
  const auto reference = named("reference", 1e-6, 1e3, "Pa s");
  const auto at = named("reference_temperature", 255.0, hottest, "K");
  define(module, "arrhenius_viscosity", &oil::arrhenius_viscosity<double>,
         "Viscosity from that at another temperature [Pa s] (Arrhenius; Diamante & Lan 2014).",
         reference, at, named("energy"), kelvin);
  define(module, "viscosity_like", &oil::viscosity_like<double>,
         "Viscosity of an oil known at one temperature [Pa s], falling as that of the mean oil.",
         reference, at, kelvin);
}

}  // namespace

void bind_solutions(py::module_& module) {
  auto properties = properties_of(module);
  bind_sugar(properties);
  bind_salt(properties);
  bind_solutes(properties);
  bind_oils(properties);
}

}  // namespace kettlecast::python
