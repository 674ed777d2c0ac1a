#include <string>

#include "bind.hpp"
#include "kettlecast/base/errors.hpp"
#include "kettlecast/properties/air.hpp"
#include "kettlecast/properties/saturation.hpp"
#include "kettlecast/properties/water_ambient.hpp"
#include "kettlecast/properties/water_saturation.hpp"
#include "kettlecast/properties/water_states.hpp"
#include "kettlecast/properties/water_transport.hpp"

namespace kettlecast::python {
namespace {

namespace py = pybind11;
namespace states = kettlecast::water_states;

using OneArgument = double (*)(const double&);
using TwoArguments = double (*)(const double&, const double&);

/// Range of a formulation [K].
struct Range {
  double low, high;
};
constexpr Range region1{273.15, 623.15}, fluid{273.15, 1173.15}, tension{248.15, 647.096},
    ambient{253.15, 383.15}, auxiliary{273.16, 647.096};

std::string place(const char* name) { return std::string("water_states.") + name; }

void define(py::module_& module, const char* name, OneArgument property, Range range,
            const char* text) {
  module.def(
      name,
      [=](double temperature) {
        require_between(place(name), "temperature", temperature, range.low, range.high, "K");
        return property(temperature);
      },
      py::arg("temperature"), text);
}

void define_compressed(py::module_& module, const char* name, TwoArguments property,
                       const char* text) {
  module.def(
      name,
      [=](double temperature, double pressure) {
        require_between(place(name), "temperature", temperature, region1.low, region1.high, "K");
        // Saturation to within the digits of a table, so that its own pressures are taken.
        const double lowest = (1.0 - 1e-6) * water::saturation_pressure(temperature);
        require_between(place(name), "pressure", pressure, lowest, 100e6, "Pa");
        return property(temperature, pressure);
      },
      py::arg("temperature"), py::arg("pressure"), text);
}

void define_transport(py::module_& module, const char* name, TwoArguments property,
                      const char* text) {
  module.def(
      name,
      [=](double density, double temperature) {
        require_between(place(name), "density", density, 0.0, 1300.0, "kg/m3");
        require_between(place(name), "temperature", temperature, fluid.low, fluid.high, "K");
        return property(density, temperature);
      },
      py::arg("density"), py::arg("temperature"), text);
}

void bind_air(py::module_& parent) {
  auto module = parent.def_submodule("air", "Dry and moist air near atmospheric pressure.");
  const auto dry = [&](const char* name, OneArgument property, const char* text) {
    module.def(
        name,
        [=](double temperature) {
          require_between(std::string("air.") + name, "temperature", temperature, 250.0, 500.0,
                          "K");
          return property(temperature);
        },
        py::arg("temperature"), text);
  };
  const auto at_pressure = [&](const char* name, TwoArguments property, const char* text) {
    module.def(
        name,
        [=](double temperature, double pressure) {
          const std::string where = std::string("air.") + name;
          require_between(where, "temperature", temperature, 250.0, 500.0, "K");
          require_between(where, "pressure", pressure, 1e3, 200e3, "Pa");
          return property(temperature, pressure);
        },
        py::arg("temperature"), py::arg("pressure"), text);
  };
  at_pressure("density", &air::density<double>, "Dry, ideal gas [kg/m3].");
  dry("specific_heat", &air::specific_heat<double>, "Dry [J/(kg K)]; fit to Lemmon et al. (2000).");
  dry("conductivity", &air::conductivity<double>, "Dry [W/(m K)]; US Standard Atmosphere 1976.");
  dry("viscosity", &air::viscosity<double>, "Dry [Pa s]; US Standard Atmosphere 1976.");
  at_pressure("vapour_diffusivity", &air::vapour_diffusivity<double>,
              "Of water vapour in air [m2/s]; Marrero & Mason (1972).");
  module.def(
      "moist_density",
      [](double temperature, double pressure, double vapour_fraction) {
        require_between("air.moist_density", "temperature", temperature, 250.0, 400.0, "K");
        require_between("air.moist_density", "pressure", pressure, 1e3, 200e3, "Pa");
        require_between("air.moist_density", "vapour_fraction", vapour_fraction, 0.0, 1.0, "-");
        return air::moist_density(temperature, pressure, vapour_fraction);
      },
      py::arg("temperature"), py::arg("pressure"), py::arg("vapour_fraction"),
      "With a mole fraction of water vapour, ideal gas [kg/m3].");
}

}  // namespace

void bind_states(py::module_& parent) {
  auto properties = parent.def_submodule("properties", "Material properties in SI units.");
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
  define(module, "surface_tension", &states::surface_tension<double>, tension,
         "Against steam [N/m]; IAPWS R1-76.");
  define(module, "ambient_density", &states::ambient_density<double>, ambient,
         "Of liquid water at 0.1 MPa [kg/m3]; IAPWS SR6-08.");
  define(module, "ambient_specific_heat", &states::ambient_specific_heat<double>, ambient,
         "Of liquid water at 0.1 MPa [J/(kg K)]; IAPWS SR6-08.");
  define(module, "ambient_viscosity", &states::ambient_viscosity<double>, ambient,
         "Of liquid water at 0.1 MPa [Pa s]; IAPWS SR6-08.");
  define(module, "ambient_conductivity", &states::ambient_conductivity<double>, ambient,
         "Of liquid water at 0.1 MPa [W/(m K)]; IAPWS SR6-08.");
  define(module, "saturation_pressure", &states::saturation_pressure<double>, auxiliary,
         "[Pa]; IAPWS SR1-86.");
  define(module, "saturation_pressure_slope", &states::saturation_pressure_slope<double>, auxiliary,
         "dp/dT [Pa/K]; IAPWS SR1-86.");
  define(module, "saturated_liquid_density", &states::saturated_liquid_density<double>, auxiliary,
         "[kg/m3]; IAPWS SR1-86.");
  define(module, "saturated_vapour_density", &states::saturated_vapour_density<double>, auxiliary,
         "[kg/m3]; IAPWS SR1-86.");
  define(module, "saturated_liquid_enthalpy", &states::saturated_liquid_enthalpy<double>, auxiliary,
         "Zero at the triple point [J/kg]; IAPWS SR1-86.");
  define(module, "saturated_vapour_enthalpy", &states::saturated_vapour_enthalpy<double>, auxiliary,
         "On the scale of the liquid [J/kg]; IAPWS SR1-86.");
}

}  // namespace kettlecast::python
