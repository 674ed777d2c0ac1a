#include <pybind11/native_enum.h>

#include <tuple>

#include "bind.hpp"
#include "checked.hpp"
#include "kettlecast/transfer/film_cards.hpp"
#include "kettlecast/transfer/film_geometry.hpp"
#include "kettlecast/transfer/fluid.hpp"
#include "kettlecast/transfer/power_law.hpp"
#include "kettlecast/transfer/ribbon.hpp"
#include "kettlecast/transfer/scraped.hpp"
#include "kettlecast/transfer/stirring.hpp"

namespace kettlecast::python {
namespace {

using Numbers = std::tuple<double, double, double, double>;

Numbers told(const AgitatedConstants& found) {
  return {found.constant, found.reynolds_exponent, found.prandtl_exponent,
          found.viscosity_exponent};
}

double nusselt(FilmSource source, FilmSurface surface, Impeller impeller,
               const FilmGroups<double>& groups) {
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

const py::arg impeller("impeller");

py::arg_v source() { return py::arg_v("source", FilmSource::penney, "FilmSource.penney"); }

void bind_film_numbers(py::module_& module) {
  const auto by_source = [&](const char* name, FilmSurface surface, const char* text) {
    define(
        module, name,
        [=](Impeller kind, double reynolds, double prandtl, double ratio, FilmSource book) {
          return nusselt(book, surface, kind, {reynolds, prandtl, ratio});
        },
        text, impeller, named("reynolds"), named("prandtl"), named("viscosity_ratio") = 1.0,
        source());
  };
  by_source("wall_nusselt", FilmSurface::wall,
            "Nusselt number h D / k at the vessel wall [-]; constants of the source.");
  by_source("coil_nusselt", FilmSurface::coil,
            "Nusselt number at a helical coil [-], with the tube diameter (Penney) or the vessel "
            "diameter (Kern).");
  define(
      module, "floor_nusselt",
      [](Impeller kind, double reynolds, double prandtl, double ratio) {
        return nusselt(FilmSource::penney, FilmSurface::floor, kind, {reynolds, prandtl, ratio});
      },
      "Nusselt number h D / k at a heated floor [-]; Penney & Atiemo-Obeng (2004), 14.4.", impeller,
      named("reynolds"), named("prandtl"), named("viscosity_ratio") = 1.0);
  define(module, "chart_nusselt", &chart_nusselt<double>,
         "Nusselt number of a factor j read from a chart [-]; Kern (1950), figure 20.2.",
         named("factor"), named("prandtl"), named("viscosity_ratio") = 1.0);
}

void bind_film_constants(py::module_& module) {
  define(
      module, "wall_constants",
      [](Impeller kind, double reynolds, FilmSource book) {
        return told(constants_at(film_constants(book, FilmSurface::wall, kind), reynolds));
      },
      "C and the exponents of Re, Pr and viscosity ratio [-] that hold at a Reynolds number.",
      impeller, named("reynolds"), source());
  define(
      module, "floor_constants",
      [](Impeller kind) {
        return told(
            constants_at(film_constants(FilmSource::penney, FilmSurface::floor, kind), 0.0));
      },
      "C and the exponents of Re, Pr and the viscosity ratio [-] at a heated floor.", impeller);
  define(
      module, "coil_constants",
      [](Impeller kind, FilmSource book) {
        return told(constants_at(film_constants(book, FilmSurface::coil, kind), 0.0));
      },
      "C and the exponents of Re, Pr and the viscosity ratio [-] at a helical coil.", impeller,
      source());
}

void bind_film_geometry(py::module_& module) {
  define(module, "depth_factor", &depth_factor<double>,
         "Factor of a film for the depth over the vessel diameter [-]; Penney (2004).",
         named("depth_ratio"));
  define(module, "blade_height_factor", &blade_height_factor<double>,
         "Factor of a film for the blade height over the standard [-]; Penney (2004).",
         named("height_ratio"));
  define(module, "pitch_factor", &pitch_factor<double>,
         "Factor of a film for the pitch over the propeller diameter [-]; Penney (2004).",
         named("pitch_ratio"));
  define(module, "coil_factor", &coil_factor<double>,
         "Factor of a coil for agitator and tube diameter over that of the vessel [-]; Penney "
         "(2004).",
         named("agitator_ratio"), named("tube_ratio"));
}

void bind_groups(py::module_& module) {
  define(
      module, "reynolds",
      [](double density, double speed, double diameter, double viscosity) {
        return agitator_reynolds_number(Fluid<double>{density, 0.0, 0.0, viscosity, 0.0}, speed,
                                        diameter);
      },
      "Reynolds number of an agitator, rho N d^2 / mu [-], N in turns per second.",
      named("density"), named("speed"), named("diameter"), named("viscosity"));
  define(
      module, "prandtl",
      [](double specific_heat, double viscosity, double conductivity) {
        return prandtl_number(Fluid<double>{0.0, specific_heat, conductivity, viscosity, 0.0});
      },
      "Prandtl number, cp mu / k [-].", named("specific_heat"), named("viscosity"),
      named("conductivity"));
  define(
      module, "film_coefficient",
      [](double number, double conductivity, double length) {
        return number * conductivity / length;
      },
      "Film coefficient Nu k / L [W/(m2 K)].", named("nusselt"), named("conductivity"),
      named("length"));
  define(
      module, "scraped_coefficient",
      [](double conductivity, double density, double specific_heat, double passes,
         double efficiency) {
        return scraped_coefficient(Fluid<double>{density, specific_heat, conductivity, 0.0, 0.0},
                                   1.0 / passes, efficiency);
      },
      "Film at a scraped wall [W/(m2 K)] by penetration theory; passes of blades per second.",
      named("conductivity"), named("density"), named("specific_heat"),
      named("passes", 1e-9, 1e9, "1/s"), named("efficiency") = 1.0);
}

void bind_power(py::module_& module) {
  define(
      module, "power_constants",
      [](Impeller kind) {
        const StirringConstants found = stirring_constants(kind);
        return std::tuple(found.laminar, found.turbulent);
      },
      "Laminar Np Re and turbulent Np of an agitator [-]; sources in transfer/stirring.hpp.",
      impeller);
  define(
      module, "power_number",
      [](Impeller kind, double reynolds) {
        return power_number(reynolds, stirring_constants(kind));
      },
      "Power number [-], laminar K_p / Re passing smoothly into the turbulent constant.", impeller,
      named("reynolds", 1e-12, 1e12, "-"));
  define(
      module, "power",
      [](double number, double density, double speed, double diameter) {
        return stirring_power(number, density, speed, diameter);
      },
      "Power Np rho N^3 d^5, which becomes heat in the product [W].", named("power_number"),
      named("density"), named("speed"), named("diameter"));
  define(
      module, "stirring_heat",
      [](Impeller kind, double density, double viscosity, double speed, double diameter) {
        return stirring_power(stirring_constants(kind), density, viscosity, speed, diameter);
      },
      "Heat that an agitator puts into the product [W]; 0 at rest.", impeller, named("density"),
      named("viscosity"), named("speed"), named("diameter"));
  define(module, "mean_over_cycle", &mean_over_cycle<double>,
         "Mean of a film coefficient or of the stirring heat over on/off cycles [unit of on].",
         named("on"), named("off"), named("on_share"));
}

double ribbon_constant(double diameter, double vessel_diameter, double height, double pitch,
                       double width, double blades) {
  require_between("agitation.ribbon_laminar_constant", "vessel_diameter", vessel_diameter,
                  1.0001 * diameter, 1e4, "m");
  return ribbon_laminar_constant(RibbonGeometry{diameter, vessel_diameter, height, pitch, width},
                                 blades);
}

void bind_viscous(py::module_& module) {
  define(
      module, "shear_constant", [](Impeller kind) { return stirring_constants(kind).shear; },
      "Shear rate over turns per second [-]; sources in transfer/stirring.hpp.", impeller);
  define(module, "shear_rate", &shear_rate<double>,
         "Mean shear rate around an agitator [1/s]; Metzner & Otto (1957).",
         named("shear_constant"), named("speed"));
  define(
      module, "apparent_viscosity",
      [](double consistency, double exponent, double shear_rate) {
        return apparent_viscosity(PowerLaw{consistency, exponent}, shear_rate);
      },
      "Apparent viscosity of a power-law liquid [Pa s], K gamma^(n - 1).", named("consistency"),
      named("exponent"), named("shear_rate"));
  define(module, "ribbon_laminar_constant", &ribbon_constant,
         "Np Re of a helical ribbon in laminar flow [-]; Rieger, Novak & Havelkova (1988).",
         named("diameter"), named("vessel_diameter"), named("height"), named("pitch"),
         named("width"), named("blades"));
  define(module, "ribbon_mixing_time", &ribbon_mixing_time<double>,
         "Mixing time of a helical ribbon in laminar flow [s]; Grenville and others (2001).",
         named("laminar_constant"), named("speed", 1e-9, 1e6, "1/s"));
}

}  // namespace

void bind_agitation(py::module_& module) {
  bind_enums(module);
  auto transfer = transfer_of(module);
  auto agitation = transfer.def_submodule("agitation", "Films and power of agitators.");
  bind_groups(agitation);
  bind_film_numbers(agitation);
  bind_film_constants(agitation);
  bind_film_geometry(agitation);
  bind_power(agitation);
  bind_viscous(agitation);
}

}  // namespace kettlecast::python
