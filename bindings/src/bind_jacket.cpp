#include <sstream>

#include "bind.hpp"
#include "checks.hpp"
#include "kettlecast/base/constants.hpp"
#include "kettlecast/properties/glycol.hpp"
#include "kettlecast/transfer/annular_gap.hpp"
#include "kettlecast/transfer/jacket_flow.hpp"
#include "kettlecast/transfer/jacket_swirl.hpp"

namespace kettlecast::python {
namespace {

namespace py = pybind11;

void bind_lehrer(py::module_& module) {
  module.def(
      "lehrer_velocity",
      [](double volume_flow, double gap, double height, double inlet_diameter,
         double buoyant_velocity) {
        above_zero("lehrer_velocity",
                   {{"gap", gap}, {"height", height}, {"inlet_diameter", inlet_diameter}});
        require_between("lehrer_velocity", "volume_flow", volume_flow, 0.0, most, "m3/s");
        require_between("lehrer_velocity", "buoyant_velocity", buoyant_velocity, -most, most,
                        "m/s");
        return lehrer_velocity(volume_flow, gap, height, inlet_diameter, buoyant_velocity);
      },
      py::arg("volume_flow"), py::arg("gap"), py::arg("height"), py::arg("inlet_diameter"),
      py::arg("buoyant_velocity") = 0.0,
      "Velocity in a plain jacket [m/s]; Lehrer (1970), VDI Heat Atlas. Tangential inlet: no "
      "buoyant velocity.");
  module.def(
      "lehrer_buoyant_velocity",
      [](double expansivity, double height, double warming) {
        above_zero("lehrer_buoyant_velocity", {{"height", height}});
        require_between("lehrer_buoyant_velocity", "expansivity", expansivity, -1.0, 1.0, "1/K");
        require_between("lehrer_buoyant_velocity", "warming", warming, -1e3, 1e3, "K");
        return lehrer_buoyant_velocity(expansivity, height, warming);
      },
      py::arg("expansivity"), py::arg("height"), py::arg("warming"),
      "Velocity that buoyancy adds for a radial inlet at the bottom [m/s], to be subtracted for "
      "one "
      "at the top; Lehrer (1970).");
  module.def(
      "lehrer_length",
      [](double gap) {
        above_zero("lehrer_length", {{"gap", gap}});
        return lehrer_length(gap);
      },
      py::arg("gap"),
      "Length for Reynolds and Nusselt number of lehrer_nusselt [m]; Lehrer (1970).");
  module.def(
      "lehrer_nusselt",
      [](double reynolds, double prandtl, double viscosity_ratio) {
        require_between("lehrer_nusselt", "reynolds", reynolds, -most, most, "-");
        require_between("lehrer_nusselt", "prandtl", prandtl, 1.0, most, "-");
        above_zero("lehrer_nusselt", {{"viscosity_ratio", viscosity_ratio}});
        return lehrer_nusselt(reynolds, prandtl, viscosity_ratio);
      },
      py::arg("reynolds"), py::arg("prandtl"), py::arg("viscosity_ratio") = 1.0,
      "Nusselt number of a plain jacket [-]; Lehrer (1970), VDI Heat Atlas.");
}

void bind_swirl_velocities(py::module_& module) {
  module.def(
      "swirl_velocity",
      [](double volume_flow, double gap, double vessel_diameter, double height,
         double inlet_diameter, double kinematic_viscosity) {
        above_zero("swirl_velocity", {{"gap", gap},
                                      {"vessel_diameter", vessel_diameter},
                                      {"height", height},
                                      {"inlet_diameter", inlet_diameter},
                                      {"kinematic_viscosity", kinematic_viscosity}});
        not_negative("swirl_velocity", {{"volume_flow", volume_flow}});
        return swirl_velocity(volume_flow,
                              JacketShape{gap, vessel_diameter, height, inlet_diameter},
                              kinematic_viscosity);
      },
      py::arg("volume_flow"), py::arg("gap"), py::arg("vessel_diameter"), py::arg("height"),
      py::arg("inlet_diameter"), py::arg("kinematic_viscosity"),
      "Velocity in a jacket with a tangential inlet [m/s]; Stein & Schmidt (1993).");
  module.def(
      "radial_velocity",
      [](double volume_flow, double gap, double vessel_diameter, double height,
         double inlet_diameter) {
        above_zero("radial_velocity", {{"gap", gap},
                                       {"vessel_diameter", vessel_diameter},
                                       {"height", height},
                                       {"inlet_diameter", inlet_diameter}});
        not_negative("radial_velocity", {{"volume_flow", volume_flow}});
        return radial_velocity(volume_flow,
                               JacketShape{gap, vessel_diameter, height, inlet_diameter});
      },
      py::arg("volume_flow"), py::arg("gap"), py::arg("vessel_diameter"), py::arg("height"),
      py::arg("inlet_diameter"),
      "Velocity in a jacket with a radial inlet [m/s]; Stein & Schmidt (1993).");
}

void bind_stein_schmidt(py::module_& module) {
  module.def(
      "path_length",
      [](double vessel_diameter, double height) {
        above_zero("path_length", {{"vessel_diameter", vessel_diameter}, {"height", height}});
        return jacket_path(vessel_diameter, height);
      },
      py::arg("vessel_diameter"), py::arg("height"),
      "Length of the path through a jacket [m]; Stein & Schmidt (1993).");
  module.def(
      "grashof",
      [](double density, double density_at_wall, double length, double viscosity) {
        above_zero("grashof", {{"density", density},
                               {"density_at_wall", density_at_wall},
                               {"length", length},
                               {"viscosity", viscosity}});
        return constants::gravity * density * (density - density_at_wall) * length * length *
               length / (viscosity * viscosity);
      },
      py::arg("density"), py::arg("density_at_wall"), py::arg("length"), py::arg("viscosity"),
      "Grashof number g rho (rho - rho_w) L^3 / mu^2 [-].");
  module.def(
      "buoyant_reynolds",
      [](double reynolds, double grashof, double height_ratio) {
        not_negative("buoyant_reynolds", {{"reynolds", reynolds}, {"height_ratio", height_ratio}});
        require_between("buoyant_reynolds", "grashof", grashof, -most, most, "-");
        return buoyant_reynolds(reynolds, grashof, height_ratio);
      },
      py::arg("reynolds"), py::arg("grashof"), py::arg("height_ratio"),
      "Reynolds number with buoyancy [-], grashof negative where it hinders; Stein & Schmidt.");
  module.def(
      "stein_schmidt_nusselt",
      [](double reynolds, double prandtl, double length_ratio, double viscosity_ratio) {
        above_zero("stein_schmidt_nusselt",
                   {{"prandtl", prandtl}, {"viscosity_ratio", viscosity_ratio}});
        not_negative("stein_schmidt_nusselt",
                     {{"reynolds", reynolds}, {"length_ratio", length_ratio}});
        return stein_schmidt_nusselt(reynolds, prandtl, length_ratio, viscosity_ratio);
      },
      py::arg("reynolds"), py::arg("prandtl"), py::arg("length_ratio"),
      py::arg("viscosity_ratio") = 1.0,
      "Nusselt number of a plain jacket with twice the gap [-]; Stein & Schmidt (1993).");
}

void bind_gap(py::module_& module) {
  module.def(
      "reynolds",
      [](double density, double velocity, double length, double viscosity) {
        above_zero("reynolds",
                   {{"density", density}, {"length", length}, {"viscosity", viscosity}});
        require_between("reynolds", "velocity", velocity, -most, most, "m/s");
        return density * velocity * length / viscosity;
      },
      py::arg("density"), py::arg("velocity"), py::arg("length"), py::arg("viscosity"),
      "Reynolds number rho v L / mu [-].");
  module.def(
      "gap_nusselt",
      [](double reynolds, double prandtl, double diameter_ratio, double length_ratio) {
        require_between("gap_nusselt", "reynolds", reynolds, 0.0, 1e6, "-");
        require_between("gap_nusselt", "prandtl", prandtl, 0.6, 1e3, "-");
        require_between("gap_nusselt", "diameter_ratio", diameter_ratio, 1e-3, 0.999, "-");
        require_between("gap_nusselt", "length_ratio", length_ratio, 0.0, 1.0, "-");
        return gap_nusselt(reynolds, prandtl, diameter_ratio, length_ratio);
      },
      py::arg("reynolds"), py::arg("prandtl"), py::arg("diameter_ratio"), py::arg("length_ratio"),
      "Nusselt number at the inner wall of an annular gap [-], laminar to turbulent; Gnielinski "
      "(2009).");
}

void bind_wall(py::module_& module) {
  module.def(
      "overall_coefficient",
      [](double inside, double outside, double wall_thickness, double wall_conductivity,
         double dirt) {
        above_zero(
            "overall_coefficient",
            {{"inside", inside}, {"outside", outside}, {"wall_conductivity", wall_conductivity}});
        require_between("overall_coefficient", "wall_thickness", wall_thickness, 0.0, 1.0, "m");
        require_between("overall_coefficient", "dirt", dirt, 0.0, most, "m2 K/W");
        return overall_coefficient(inside, outside, wall_thickness, wall_conductivity, dirt);
      },
      py::arg("inside"), py::arg("outside"), py::arg("wall_thickness") = 0.0,
      py::arg("wall_conductivity") = 16.0, py::arg("dirt") = 0.0,
      "Overall coefficient of a jacketed wall [W/(m2 K)], films, dirt [m2 K/W] and wall in "
      "series.");
  module.def(
      "driving_difference",
      [](double heat_flow, double coefficient, double area) {
        above_zero("driving_difference", {{"coefficient", coefficient}, {"area", area}});
        require_between("driving_difference", "heat_flow", heat_flow, -most, most, "W");
        return driving_difference(heat_flow, coefficient, area);
      },
      py::arg("heat_flow"), py::arg("coefficient"), py::arg("area"),
      "Difference between jacket and product that drives a heat flow [K], Q / (U A).");
}

constexpr double frozen_tolerance = 0.5;  // of the freezing point, that of its correlation [K]

void require_share(const char* where, double share) {
  require_between(where, "share", share, 0.0, 0.6, "kg/kg");
}

void require_liquid(const char* where, double share, double temperature) {
  require_share(where, share);
  require_between(where, "temperature", temperature, 253.15, 373.15, "K");
  const double freezing = glycol::freezing_temperature(share);
  if (temperature >= freezing - frozen_tolerance) return;
  std::ostringstream text;
  text << where << ": " << temperature << " K is below the freezing point " << freezing
       << " K of a mixture with " << share << " kg/kg glycol";
  throw OutsideValidity(text.str());
}

using OfMixture = double (*)(double, const double&);

void define(py::module_& module, const char* name, OfMixture property, const char* text) {
  module.def(
      name,
      [=](double share, double temperature) {
        require_liquid(name, share, temperature);
        return property(share, temperature);
      },
      py::arg("share"), py::arg("temperature"), text);
}

void bind_glycol(py::module_& parent) {
  auto module = parent.def_submodule(
      "glycol",
      "Propylene glycol and water by mass share 0 to 0.6, 253 to 373 K; Melinder (2010).");
  define(module, "density", &glycol::density<double>, "[kg/m3]");
  define(module, "specific_heat", &glycol::specific_heat<double>, "[J/(kg K)]");
  define(module, "conductivity", &glycol::conductivity<double>, "[W/(m K)]");
  define(module, "viscosity", &glycol::viscosity<double>, "[Pa s]");
  define(module, "expansivity", &glycol::expansivity<double>, "[1/K]");
  module.def(
      "freezing_temperature",
      [](double share) {
        require_share("freezing_temperature", share);
        return glycol::freezing_temperature(share);
      },
      py::arg("share"), "Temperature at which the first ice forms [K].");
}

}  // namespace

void bind_jacket(py::module_& module) {
  auto transfer = module.def_submodule("transfer", "Heat transfer correlations in SI units.");
  auto jacket = transfer.def_submodule(
      "jacket", "Liquid in a jacket and the wall between it and the product.");
  bind_lehrer(jacket);
  bind_swirl_velocities(jacket);
  bind_stein_schmidt(jacket);
  bind_gap(jacket);
  bind_wall(jacket);
  auto properties = module.def_submodule("properties", "Material properties in SI units.");
  bind_glycol(properties);
}

}  // namespace kettlecast::python
