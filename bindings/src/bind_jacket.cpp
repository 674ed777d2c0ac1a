#include <sstream>

#include "bind.hpp"
#include "checked.hpp"
#include "kettlecast/base/constants.hpp"
#include "kettlecast/properties/glycol.hpp"
#include "kettlecast/transfer/annular_gap.hpp"
#include "kettlecast/transfer/fluid.hpp"
#include "kettlecast/transfer/jacket_flow.hpp"
#include "kettlecast/transfer/jacket_swirl.hpp"

namespace kettlecast::python {
namespace {

void bind_lehrer(py::module_& module) {
  define(module, "lehrer_velocity", &lehrer_velocity<double>,
         "Velocity in a plain jacket [m/s]; Lehrer (1970), VDI Heat Atlas. Tangential inlet: no "
         "buoyant velocity.",
         named("volume_flow"), named("gap"), named("height"), named("inlet_diameter"),
         named("buoyant_velocity") = 0.0);
  define(module, "lehrer_buoyant_velocity", &lehrer_buoyant_velocity<double>,
         "Velocity that buoyancy adds for a radial inlet at the bottom [m/s], to be subtracted for "
         "one at the top; Lehrer (1970).",
         named("expansivity"), named("height"), named("warming"));
  define(module, "lehrer_length", &lehrer_length<double>,
         "Length for Reynolds and Nusselt number of lehrer_nusselt [m]; Lehrer (1970).",
         named("gap"));
  define(module, "lehrer_nusselt", &lehrer_nusselt<double>,
         "Nusselt number of a plain jacket [-]; Lehrer (1970), VDI Heat Atlas.",
         named("reynolds", -1e12, 1e12, "-"), named("prandtl", 1.0, 1e12, "-"),
         named("viscosity_ratio") = 1.0);
}

void bind_swirl_velocities(py::module_& module) {
  define(
      module, "swirl_velocity",
      [](double volume_flow, double gap, double vessel_diameter, double height,
         double inlet_diameter, double kinematic_viscosity) {
        return swirl_velocity(volume_flow,
                              JacketShape{gap, vessel_diameter, height, inlet_diameter},
                              kinematic_viscosity);
      },
      "Velocity in a jacket with a tangential inlet [m/s]; Stein & Schmidt (1993).",
      named("volume_flow"), named("gap"), named("vessel_diameter"), named("height"),
      named("inlet_diameter"), named("kinematic_viscosity"));
  define(
      module, "radial_velocity",
      [](double volume_flow, double gap, double vessel_diameter, double height,
         double inlet_diameter) {
        return radial_velocity(volume_flow,
                               JacketShape{gap, vessel_diameter, height, inlet_diameter});
      },
      "Velocity in a jacket with a radial inlet [m/s]; Stein & Schmidt (1993).",
      named("volume_flow"), named("gap"), named("vessel_diameter"), named("height"),
      named("inlet_diameter"));
}

double grashof(double density, double density_at_wall, double length, double viscosity) {
  return constants::gravity * density * (density - density_at_wall) * length * length * length /
         (viscosity * viscosity);
}

double reynolds(double density, double velocity, double length, double viscosity) {
  return reynolds_number(Fluid<double>{density, 0.0, 0.0, viscosity, 0.0}, velocity, length);
}

void bind_stein_schmidt(py::module_& module) {
  define(module, "path_length", &jacket_path,
         "Length of the path through a jacket [m]; Stein & Schmidt (1993).",
         named("vessel_diameter"), named("height"));
  define(module, "grashof", &grashof, "Grashof number g rho (rho - rho_w) L^3 / mu^2 [-].",
         named("density"), named("density_at_wall"), named("length"), named("viscosity"));
  define(module, "buoyant_reynolds", &buoyant_reynolds<double>,
         "Reynolds number with buoyancy [-], grashof negative where it hinders; Stein & Schmidt.",
         named("reynolds"), named("grashof"), named("height_ratio", 0.0, 1e6, "-"));
  define(module, "stein_schmidt_nusselt", &stein_schmidt_nusselt<double>,
         "Nusselt number of a plain jacket with twice the gap [-]; Stein & Schmidt (1993).",
         named("reynolds"), named("prandtl"), named("length_ratio"),
         named("viscosity_ratio") = 1.0);
}

void bind_gap(py::module_& module) {
  define(module, "reynolds", &reynolds, "Reynolds number rho v L / mu [-].", named("density"),
         named("velocity"), named("length"), named("viscosity"));
  define(module, "gap_nusselt", &gap_nusselt<double>,
         "Nusselt number at the inner wall of an annular gap [-], laminar to turbulent; Gnielinski "
         "(2009).",
         named("reynolds", 0.0, 1e6, "-"), named("prandtl", 0.6, 1e3, "-"), named("diameter_ratio"),
         named("length_ratio", 0.0, 1.0, "-"));
}

void bind_wall(py::module_& module) {
  define(module, "overall_coefficient", &overall_coefficient<double>,
         "Overall coefficient of a jacketed wall [W/(m2 K)], films, dirt [m2 K/W] and wall in "
         "series.",
         named("inside"), named("outside"), named("wall_thickness") = 0.0,
         named("wall_conductivity") = 16.0, named("dirt") = 0.0);
  define(module, "driving_difference", &driving_difference<double>,
         "Difference between jacket and product that drives a heat flow [K], Q / (U A).",
         named("heat_flow", -1e12, 1e12, "W"), named("coefficient"), named("area"));
}

constexpr double frozen_tolerance = 0.5;  // of the freezing point, that of its correlation [K]

void require_liquid(const std::string& where, double share, double temperature) {
  const double freezing = glycol::freezing_temperature(share);
  if (temperature >= freezing - frozen_tolerance) return;
  std::ostringstream text;
  text << where << ": " << temperature << " K is below the freezing point " << freezing
       << " K of a mixture with " << share << " kg/kg glycol";
  throw OutsideValidity(text.str());
}

void bind_glycol(py::module_& parent) {
  auto module = parent.def_submodule(
      "glycol",
      "Propylene glycol and water by mass share 0 to 0.6, 253 to 373 K; Melinder (2010).");
  const auto share = named("share", 0.0, 0.6, "kg/kg");
  const auto of_liquid = [&](const char* name, double (*property)(double, const double&),
                             const char* text) {
    const std::string where = std::string("glycol.") + name;
    define(
        module, name,
        [=](double mass_share, double temperature) {
          require_liquid(where, mass_share, temperature);
          return property(mass_share, temperature);
        },
        text, share, named("temperature", 253.15, 373.15, "K"));
  };
  of_liquid("density", &glycol::density<double>, "[kg/m3]");
  of_liquid("specific_heat", &glycol::specific_heat<double>, "[J/(kg K)]");
  of_liquid("conductivity", &glycol::conductivity<double>, "[W/(m K)]");
  of_liquid("viscosity", &glycol::viscosity<double>, "[Pa s]");
  of_liquid("expansivity", &glycol::expansivity<double>, "[1/K]");
  define(module, "freezing_temperature", &glycol::freezing_temperature,
         "Temperature at which the first ice forms [K].", share);
}

}  // namespace

void bind_jacket(py::module_& module) {
  auto transfer = transfer_of(module);
  auto jacket = transfer.def_submodule(
      "jacket", "Liquid in a jacket and the wall between it and the product.");
  bind_lehrer(jacket);
  bind_swirl_velocities(jacket);
  bind_stein_schmidt(jacket);
  bind_gap(jacket);
  bind_wall(jacket);
  auto properties = properties_of(module);
  bind_glycol(properties);
}

}  // namespace kettlecast::python
