#include <pybind11/native_enum.h>

#include <tuple>

#include "bind.hpp"
#include "checks.hpp"
#include "kettlecast/transfer/film_cards.hpp"
#include "kettlecast/transfer/film_geometry.hpp"
#include "kettlecast/transfer/fluid.hpp"
#include "kettlecast/transfer/power_law.hpp"
#include "kettlecast/transfer/ribbon.hpp"
#include "kettlecast/transfer/scraped.hpp"
#include "kettlecast/transfer/stirring.hpp"

namespace kettlecast::python {
namespace {

namespace py = pybind11;
using Numbers = std::tuple<double, double, double, double>;

Numbers told(const AgitatedConstants& found) {
  return {found.constant, found.reynolds_exponent, found.prandtl_exponent,
          found.viscosity_exponent};
}

double nusselt(FilmSurface surface, Impeller impeller, const FilmGroups<double>& groups,
               FilmSource source) {
  above_zero("nusselt", {{"prandtl", groups.prandtl}, {"viscosity_ratio", groups.viscosity_ratio}});
  not_negative("nusselt", {{"reynolds", groups.reynolds}});
  return agitated_nusselt(groups, film_constants(source, surface, impeller));
}

void bind_enums(py::module_& module) {
  py::native_enum<Impeller>(module, "Impeller", "enum.Enum", "Shape of an agitator.")
      .value("anchor", Impeller::anchor)
      .value("paddle", Impeller::paddle)
      .value("helical_ribbon", Impeller::helical_ribbon)
      .value("disc_turbine", Impeller::disc_turbine)
      .value("flat_turbine", Impeller::flat_turbine)
      .value("pitched_turbine", Impeller::pitched_turbine)
      .value("hydrofoil", Impeller::hydrofoil)
      .value("propeller", Impeller::propeller)
      .finalize();
  py::native_enum<FilmSource>(module, "FilmSource", "enum.Enum",
                              "Book that prints constants of stirred films.")
      .value("penney", FilmSource::penney)
      .value("geankoplis", FilmSource::geankoplis)
      .value("geankoplis_baffled", FilmSource::geankoplis_baffled)
      .value("kern", FilmSource::kern)
      .finalize();
}

void bind_film_numbers(py::module_& module) {
  module.def(
      "wall_nusselt",
      [](Impeller impeller, double reynolds, double prandtl, double viscosity_ratio,
         FilmSource source) {
        return nusselt(FilmSurface::wall, impeller, {reynolds, prandtl, viscosity_ratio}, source);
      },
      py::arg("impeller"), py::arg("reynolds"), py::arg("prandtl"),
      py::arg("viscosity_ratio") = 1.0,
      py::arg_v("source", FilmSource::penney, "FilmSource.penney"),
      "Nusselt number h D / k at the vessel wall [-]; constants of the source.");
  module.def(
      "floor_nusselt",
      [](Impeller impeller, double reynolds, double prandtl, double viscosity_ratio) {
        return nusselt(FilmSurface::floor, impeller, {reynolds, prandtl, viscosity_ratio},
                       FilmSource::penney);
      },
      py::arg("impeller"), py::arg("reynolds"), py::arg("prandtl"),
      py::arg("viscosity_ratio") = 1.0,
      "Nusselt number h D / k at a heated floor [-]; Penney & Atiemo-Obeng (2004), 14.4.");
  module.def(
      "coil_nusselt",
      [](Impeller impeller, double reynolds, double prandtl, double viscosity_ratio,
         FilmSource source) {
        return nusselt(FilmSurface::coil, impeller, {reynolds, prandtl, viscosity_ratio}, source);
      },
      py::arg("impeller"), py::arg("reynolds"), py::arg("prandtl"),
      py::arg("viscosity_ratio") = 1.0,
      py::arg_v("source", FilmSource::penney, "FilmSource.penney"),
      "Nusselt number at a helical coil [-], with the tube diameter (Penney) or the vessel "
      "diameter "
      "(Kern).");
  module.def(
      "chart_nusselt",
      [](double factor, double prandtl, double viscosity_ratio) {
        above_zero(
            "chart_nusselt",
            {{"factor", factor}, {"prandtl", prandtl}, {"viscosity_ratio", viscosity_ratio}});
        return chart_nusselt(factor, prandtl, viscosity_ratio);
      },
      py::arg("factor"), py::arg("prandtl"), py::arg("viscosity_ratio") = 1.0,
      "Nusselt number of a factor j read from a chart [-]; Kern (1950), figure 20.2.");
}

void bind_film_constants(py::module_& module) {
  module.def(
      "wall_constants",
      [](Impeller impeller, double reynolds, FilmSource source) {
        not_negative("wall_constants", {{"reynolds", reynolds}});
        return told(constants_at(film_constants(source, FilmSurface::wall, impeller), reynolds));
      },
      py::arg("impeller"), py::arg("reynolds"),
      py::arg_v("source", FilmSource::penney, "FilmSource.penney"),
      "C and the exponents of Re, Pr and viscosity ratio [-] that hold at a Reynolds number.");
  module.def(
      "floor_constants",
      [](Impeller impeller) {
        return told(
            constants_at(film_constants(FilmSource::penney, FilmSurface::floor, impeller), 0.0));
      },
      py::arg("impeller"),
      "C and the exponents of Re, Pr and the viscosity ratio [-] at a heated floor.");
  module.def(
      "coil_constants",
      [](Impeller impeller, FilmSource source) {
        return told(constants_at(film_constants(source, FilmSurface::coil, impeller), 0.0));
      },
      py::arg("impeller"), py::arg_v("source", FilmSource::penney, "FilmSource.penney"),
      "C and the exponents of Re, Pr and the viscosity ratio [-] at a helical coil.");
}

using OfOne = double (*)(const double&);

void define_factor(py::module_& module, const char* name, OfOne factor, const char* argument,
                   const char* text) {
  module.def(
      name,
      [=](double ratio) {
        above_zero(name, {{argument, ratio}});
        return factor(ratio);
      },
      py::arg(argument), text);
}

void bind_film_geometry(py::module_& module) {
  define_factor(module, "depth_factor", &depth_factor<double>, "depth_ratio",
                "Factor of a film for the depth over the vessel diameter [-]; Penney (2004).");
  define_factor(module, "blade_height_factor", &blade_height_factor<double>, "height_ratio",
                "Factor of a film for the blade height over the standard [-]; Penney (2004).");
  define_factor(module, "pitch_factor", &pitch_factor<double>, "pitch_ratio",
                "Factor of a film for the pitch over the propeller diameter [-]; Penney (2004).");
  module.def(
      "coil_factor",
      [](double agitator_ratio, double tube_ratio) {
        above_zero("coil_factor", {{"agitator_ratio", agitator_ratio}, {"tube_ratio", tube_ratio}});
        return coil_factor(agitator_ratio, tube_ratio);
      },
      py::arg("agitator_ratio"), py::arg("tube_ratio"),
      "Factor of a coil for agitator and tube diameter over that of the vessel [-]; Penney "
      "(2004).");
}

void bind_groups(py::module_& module) {
  module.def(
      "reynolds",
      [](double density, double speed, double diameter, double viscosity) {
        above_zero("reynolds",
                   {{"density", density}, {"diameter", diameter}, {"viscosity", viscosity}});
        not_negative("reynolds", {{"speed", speed}});
        const Fluid<double> fluid{density, 0.0, 0.0, viscosity, 0.0};
        return agitator_reynolds_number(fluid, speed, diameter);
      },
      py::arg("density"), py::arg("speed"), py::arg("diameter"), py::arg("viscosity"),
      "Reynolds number of an agitator, rho N d^2 / mu [-], N in turns per second.");
  module.def(
      "prandtl",
      [](double specific_heat, double viscosity, double conductivity) {
        above_zero("prandtl", {{"specific_heat", specific_heat},
                               {"viscosity", viscosity},
                               {"conductivity", conductivity}});
        return prandtl_number(Fluid<double>{0.0, specific_heat, conductivity, viscosity, 0.0});
      },
      py::arg("specific_heat"), py::arg("viscosity"), py::arg("conductivity"),
      "Prandtl number, cp mu / k [-].");
  module.def(
      "film_coefficient",
      [](double nusselt_number, double conductivity, double length) {
        not_negative("film_coefficient", {{"nusselt", nusselt_number}});
        above_zero("film_coefficient", {{"conductivity", conductivity}, {"length", length}});
        return nusselt_number * conductivity / length;
      },
      py::arg("nusselt"), py::arg("conductivity"), py::arg("length"),
      "Film coefficient Nu k / L [W/(m2 K)].");
  module.def(
      "scraped_coefficient",
      [](double conductivity, double density, double specific_heat, double passes,
         double efficiency) {
        above_zero("scraped_coefficient", {{"conductivity", conductivity},
                                           {"density", density},
                                           {"specific_heat", specific_heat},
                                           {"passes", passes}});
        require_between("scraped_coefficient", "efficiency", efficiency, 0.0, 1.0, "-");
        const Fluid<double> fluid{density, specific_heat, conductivity, 0.0, 0.0};
        return scraped_coefficient(fluid, 1.0 / passes, efficiency);
      },
      py::arg("conductivity"), py::arg("density"), py::arg("specific_heat"), py::arg("passes"),
      py::arg("efficiency") = 1.0,
      "Film at a scraped wall [W/(m2 K)] by penetration theory; passes of blades per second.");
}

void bind_power(py::module_& module) {
  module.def(
      "power_constants",
      [](Impeller impeller) {
        const StirringConstants found = stirring_constants(impeller);
        return std::tuple(found.laminar, found.turbulent);
      },
      py::arg("impeller"),
      "Laminar Np Re and turbulent Np of an agitator [-]; sources in transfer/stirring.hpp.");
  module.def(
      "power_number",
      [](Impeller impeller, double reynolds) {
        above_zero("power_number", {{"reynolds", reynolds}});
        return power_number(reynolds, stirring_constants(impeller));
      },
      py::arg("impeller"), py::arg("reynolds"),
      "Power number [-], laminar K_p / Re passing smoothly into the turbulent constant.");
  module.def(
      "power",
      [](double power_number, double density, double speed, double diameter) {
        not_negative("power", {{"power_number", power_number}, {"speed", speed}});
        above_zero("power", {{"density", density}, {"diameter", diameter}});
        return stirring_power(power_number, density, speed, diameter);
      },
      py::arg("power_number"), py::arg("density"), py::arg("speed"), py::arg("diameter"),
      "Power Np rho N^3 d^5, which becomes heat in the product [W].");
  module.def(
      "stirring_heat",
      [](Impeller impeller, double density, double viscosity, double speed, double diameter) {
        above_zero("stirring_heat",
                   {{"density", density}, {"viscosity", viscosity}, {"diameter", diameter}});
        not_negative("stirring_heat", {{"speed", speed}});
        return stirring_power(stirring_constants(impeller), density, viscosity, speed, diameter);
      },
      py::arg("impeller"), py::arg("density"), py::arg("viscosity"), py::arg("speed"),
      py::arg("diameter"), "Heat that an agitator puts into the product [W]; 0 at rest.");
  module.def(
      "mean_over_cycle",
      [](double on, double off, double on_share) {
        require_between("mean_over_cycle", "on_share", on_share, 0.0, 1.0, "-");
        not_negative("mean_over_cycle", {{"on", on}, {"off", off}});
        return mean_over_cycle(on, off, on_share);
      },
      py::arg("on"), py::arg("off"), py::arg("on_share"),
      "Mean of a film coefficient or of the stirring heat over on/off cycles [unit of on].");
}

void bind_viscous(py::module_& module) {
  module.def(
      "shear_constant", [](Impeller impeller) { return stirring_constants(impeller).shear; },
      py::arg("impeller"),
      "Shear rate over turns per second [-]; sources in transfer/stirring.hpp.");
  module.def(
      "shear_rate",
      [](double shear_constant, double speed) {
        not_negative("shear_rate", {{"shear_constant", shear_constant}, {"speed", speed}});
        return shear_rate(shear_constant, speed);
      },
      py::arg("shear_constant"), py::arg("speed"),
      "Mean shear rate around an agitator [1/s]; Metzner & Otto (1957).");
  module.def(
      "apparent_viscosity",
      [](double consistency, double exponent, double shear_rate) {
        above_zero("apparent_viscosity", {{"consistency", consistency}, {"exponent", exponent}});
        not_negative("apparent_viscosity", {{"shear_rate", shear_rate}});
        return apparent_viscosity(PowerLaw{consistency, exponent}, shear_rate);
      },
      py::arg("consistency"), py::arg("exponent"), py::arg("shear_rate"),
      "Apparent viscosity of a power-law liquid [Pa s], K gamma^(n - 1).");
  module.def(
      "ribbon_laminar_constant",
      [](double diameter, double vessel_diameter, double height, double pitch, double width,
         double blades) {
        above_zero("ribbon_laminar_constant", {{"diameter", diameter},
                                               {"height", height},
                                               {"pitch", pitch},
                                               {"width", width},
                                               {"blades", blades}});
        require_between("ribbon_laminar_constant", "vessel_diameter", vessel_diameter,
                        1.0001 * diameter, most, "m");
        return ribbon_laminar_constant(
            RibbonGeometry{diameter, vessel_diameter, height, pitch, width}, blades);
      },
      py::arg("diameter"), py::arg("vessel_diameter"), py::arg("height"), py::arg("pitch"),
      py::arg("width"), py::arg("blades"),
      "Np Re of a helical ribbon in laminar flow [-]; Rieger, Novak & Havelkova (1988).");
  module.def(
      "ribbon_mixing_time",
      [](double laminar_constant, double speed) {
        above_zero("ribbon_mixing_time",
                   {{"laminar_constant", laminar_constant}, {"speed", speed}});
        return ribbon_mixing_time(laminar_constant, speed);
      },
      py::arg("laminar_constant"), py::arg("speed"),
      "Mixing time of a helical ribbon in laminar flow [s]; Grenville and others (2001).");
}

}  // namespace

void bind_agitation(py::module_& module) {
  bind_enums(module);
  auto transfer = module.def_submodule("transfer", "Heat transfer correlations in SI units.");
  auto agitation = transfer.def_submodule("agitation", "Films and power of agitators.");
  bind_groups(agitation);
  bind_film_numbers(agitation);
  bind_film_constants(agitation);
  bind_film_geometry(agitation);
  bind_power(agitation);
  bind_viscous(agitation);
}

}  // namespace kettlecast::python
