#include <string>

#include "bind.hpp"
#include "checked.hpp"
#include "kettlecast/properties/air.hpp"
#include "kettlecast/properties/saturation.hpp"
#include "kettlecast/properties/water_ambient.hpp"
#include "kettlecast/properties/water_saturation.hpp"
#include "kettlecast/properties/water_states.hpp"
#include "kettlecast/properties/water_transport.hpp"

namespace kettlecast::python {
namespace {

namespace states = kettlecast::water_states;

using TwoArguments = double (*)(const double&, const double&);

Named kelvin(double low, double high) { return named("temperature", low, high, "K"); }

// Ranges of the formulations.
const Named region1 = kelvin(273.15, 623.15), fluid = kelvin(273.15, 1173.15),
            tension = kelvin(248.15, 647.096), ambient = kelvin(253.15, 383.15),
            auxiliary = kelvin(273.16, 647.096);

void define_compressed(py::module_& module, const char* name, TwoArguments property,
                       const char* text) {
  const std::string where = std::string("water_states.") + name;
  define(
      module, name,
      [=](double temperature, double pressure) {
        // Saturation to within the digits of a table, so that its own pressures are taken.
        const double lowest = (1.0 - 1e-6) * water::saturation_pressure(temperature);
        require_between(where, "pressure", pressure, lowest, 100e6, "Pa");
        return property(temperature, pressure);
      },
      text, region1, named("pressure", 0.0, 100e6, "Pa"));
}

void define_transport(py::module_& module, const char* name, TwoArguments property,
                      const char* text) {
  define(module, name, property, text, named("density", 0.0, 1300.0, "kg/m3"), fluid);
}

void bind_air(py::module_& parent) {
  auto module = parent.def_submodule("air", "Dry and moist air near atmospheric pressure.");
  const auto dry = kelvin(250.0, 500.0);
  const auto pressure = named("pressure", 1e3, 200e3, "Pa");
  define(module, "density", &air::density<double>, "Dry, ideal gas [kg/m3].", dry, pressure);
  define(module, "specific_heat", &air::specific_heat<double>,
         "Dry [J/(kg K)]; fit to Lemmon et al. (2000).", dry);
  define(module, "conductivity", &air::conductivity<double>,
         "Dry [W/(m K)]; US Standard Atmosphere 1976.", dry);
  define(module, "viscosity", &air::viscosity<double>, "Dry [Pa s]; US Standard Atmosphere 1976.",
         dry);
  define(module, "vapour_diffusivity", &air::vapour_diffusivity<double>,
         "Of water vapour in air [m2/s]; Marrero & Mason (1972).", dry, pressure);
  define(module, "moist_density", &air::moist_density<double>,
         "With a mole fraction of water vapour, ideal gas [kg/m3].", kelvin(250.0, 400.0), pressure,
         named("vapour_fraction"));
}

}  // namespace

void bind_states(py::module_& parent) {
  auto properties = properties_of(parent);
  bind_air(properties);
  auto module = properties.def_submodule(
      "water_states", "Water by the released IAPWS equations: reference-grade, slow.");
  define_compressed(module, "compressed_volume", &states::compressed_volume<double>,
                    "Of liquid water [m3/kg]; IAPWS R7-97 region 1.");
  define_compressed(module, "compressed_density", &states::compressed_density<double>,
                    "Of liquid water [kg/m3]; IAPWS R7-97 region 1.");
  define_compressed(module, "compressed_enthalpy", &states::compressed_enthalpy<double>,
                    "Of liquid water [J/kg]; IAPWS R7-97 region 1.");
  define_compressed(module, "compressed_specific_heat", &states::compressed_specific_heat<double>,
                    "Of liquid water [J/(kg K)]; IAPWS R7-97 region 1.");
  define_transport(module, "viscosity", &states::viscosity<double>,
                   "Of water and steam, no critical enhancement [Pa s]; IAPWS R12-08.");
  define_transport(module, "conductivity", &states::conductivity<double>,
                   "Of water and steam, no critical enhancement [W/(m K)]; IAPWS R15-11.");
  define(module, "surface_tension", &states::surface_tension<double>,
         "Against steam [N/m]; IAPWS R1-76.", tension);
  define(module, "ambient_density", &states::ambient_density<double>,
         "Of liquid water at 0.1 MPa [kg/m3]; IAPWS SR6-08.", ambient);
  define(module, "ambient_specific_heat", &states::ambient_specific_heat<double>,
         "Of liquid water at 0.1 MPa [J/(kg K)]; IAPWS SR6-08.", ambient);
  define(module, "ambient_viscosity", &states::ambient_viscosity<double>,
         "Of liquid water at 0.1 MPa [Pa s]; IAPWS SR6-08.", ambient);
  define(module, "ambient_conductivity", &states::ambient_conductivity<double>,
         "Of liquid water at 0.1 MPa [W/(m K)]; IAPWS SR6-08.", ambient);
  define(module, "saturation_pressure", &states::saturation_pressure<double>, "[Pa]; IAPWS SR1-86.",
         auxiliary);
  define(module, "saturation_pressure_slope", &states::saturation_pressure_slope<double>,
         "dp/dT [Pa/K]; IAPWS SR1-86.", auxiliary);
  define(module, "saturated_liquid_density", &states::saturated_liquid_density<double>,
         "[kg/m3]; IAPWS SR1-86.", auxiliary);
  define(module, "saturated_vapour_density", &states::saturated_vapour_density<double>,
         "[kg/m3]; IAPWS SR1-86.", auxiliary);
  define(module, "saturated_liquid_enthalpy", &states::saturated_liquid_enthalpy<double>,
         "Zero at the triple point [J/kg]; IAPWS SR1-86.", auxiliary);
  define(module, "saturated_vapour_enthalpy", &states::saturated_vapour_enthalpy<double>,
         "On the scale of the liquid [J/kg]; IAPWS SR1-86.", auxiliary);
}

}  // namespace kettlecast::python
