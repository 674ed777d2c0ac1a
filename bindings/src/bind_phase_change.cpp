#include <string>
#include <utility>

#include "bind.hpp"
#include "checked.hpp"
#include "kettlecast/properties/steam.hpp"
#include "kettlecast/transfer/boiling.hpp"
#include "kettlecast/transfer/boiling_surfaces.hpp"
#include "kettlecast/transfer/condensation.hpp"
#include "kettlecast/transfer/condensing_wall.hpp"
#include "kettlecast/transfer/simple_boiling.hpp"
#include "kettlecast/transfer/steam_jacket.hpp"

namespace kettlecast::python {
namespace {

void require_steam(const std::string& where, double gauge, double ambient) {
  require_between(where, "gauge_pressure", gauge, 612.0 - ambient, 1.0028e6 - ambient, "Pa");
}

void bind_steam(py::module_& parent) {
  auto module = parent.def_submodule("steam", "Saturated steam of a jacket, up to 180 degC.");
  const auto gauge_pressure = named("gauge_pressure", -2e5, 1.0028e6, "Pa");
  const auto ambient_pressure = named("ambient_pressure") = constants::atmosphere;
  const auto of_gauge = [&](const char* name, double (*property)(const double&, double),
                            const char* text) {
    const std::string where = std::string("steam.") + name;
    define(
        module, name,
        [=](double gauge, double ambient) {
          require_steam(where, gauge, ambient);
          return property(gauge, ambient);
        },
        text, gauge_pressure, ambient_pressure);
  };
  of_gauge("temperature", &steam::temperature<double>,
           "[K] at which steam condenses at a gauge pressure [Pa]. IAPWS-IF97.");
  of_gauge("latent_heat", &steam::latent_heat<double>,
           "[J/kg] at a gauge pressure [Pa]. Within 1.3e-5 of IAPWS-IF97.");
  of_gauge("density", &steam::density<double>,
           "Of the steam [kg/m3] at a gauge pressure [Pa]. Within 1.0e-4 of IAPWS-IF97.");
  define(
      module, "temperature_with_air",
      [](double gauge, double air_fraction, double ambient) {
        const char* where = "steam.temperature_with_air";
        require_steam(where, gauge, ambient);
        const double whole = gauge + ambient;
        require_steam(where, (1.0 - air_fraction) * whole - ambient, ambient);
        return steam::temperature_with_air(whole, air_fraction);
      },
      "Dew point [K] of steam with a mole fraction of air [-], by Dalton's law.", gauge_pressure,
      named("air_fraction"), ambient_pressure);
  define(module, "air_mass_fraction", &steam::air_mass_fraction<double>,
         "Mass fraction [-] of air from its mole fraction in steam [-].", named("air_fraction"));
}

double rohsenow(double density, double vapour_density, double specific_heat, double latent_heat,
                double surface_tension, double viscosity, double prandtl, double excess,
                double surface_constant, double exponent) {
  return rohsenow_heat_flux(
      {density, vapour_density, specific_heat, latent_heat, surface_tension, viscosity, prandtl},
      excess, {surface_constant, exponent});
}

double rohsenow_of_flux(double density, double vapour_density, double specific_heat,
                        double latent_heat, double surface_tension, double viscosity,
                        double prandtl, double heat_flux, double surface_constant,
                        double exponent) {
  return rohsenow_excess(
      {density, vapour_density, specific_heat, latent_heat, surface_tension, viscosity, prandtl},
      heat_flux, {surface_constant, exponent});
}

template <class Function>
void define_rohsenow(py::module_& module, const char* name, Function function, const char* given,
                     const char* text) {
  define(module, name, function, text, named("density"), named("vapour_density"),
         named("specific_heat"), named("latent_heat"), named("surface_tension"), named("viscosity"),
         named("prandtl"), named(given), named("surface_constant") = BoilingSurface{}.constant,
         named("prandtl_exponent") = BoilingSurface{}.prandtl_exponent);
}

void bind_kettle_boiling(py::module_& module) {
  const auto of_excess = [&](const char* name, const PowerLaws<2>& laws, auto function,
                             const char* text) {
    define(
        module, name,
        [=](double excess, double pressure) { return function(excess, pressure, laws); }, text,
        named("excess"), named("pressure") = constants::atmosphere);
  };
  of_excess("kettle_floor_coefficient", simple_boiling::floor, &simple_boiling_coefficient<double>,
            "Water boiling on a floor [W/(m2 K)]. Geankoplis 4.8 (from memory).");
  of_excess("kettle_wall_coefficient", simple_boiling::wall, &simple_boiling_coefficient<double>,
            "Water boiling on a wall [W/(m2 K)]. Geankoplis 4.8 (from memory).");
  of_excess("kettle_floor_heat_flux", simple_boiling::floor, &simple_boiling_heat_flux<double>,
            "Into water boiling on a floor [W/m2]; up to 240 kW/m2.");
  of_excess("kettle_wall_heat_flux", simple_boiling::wall, &simple_boiling_heat_flux<double>,
            "Into water boiling on a wall [W/m2]; up to 63 kW/m2.");
}

void bind_boiling(py::module_& parent) {
  auto module = parent.def_submodule("boiling", "Pool boiling.");
  define_rohsenow(module, "rohsenow_heat_flux", &rohsenow, "excess",
                  "Of nucleate boiling [W/m2] at an excess temperature [K]. Rohsenow (1952).");
  define_rohsenow(module, "rohsenow_excess", &rohsenow_of_flux, "heat_flux",
                  "Excess temperature [K] of nucleate boiling at a flux. Rohsenow (1952).");
  define(
      module, "critical_heat_flux",
      [](double density, double vapour_density, double latent_heat, double surface_tension,
         double constant) {
        return critical_heat_flux(BoilingLiquid<double>{density, vapour_density, 0.0, latent_heat,
                                                        surface_tension, 0.0, 0.0},
                                  constant);
      },
      "[W/m2]; constant pi/24 by Zuber (1958), 0.149 by Lienhard & Dhir, 0.18 in other books.",
      named("density"), named("vapour_density"), named("latent_heat"), named("surface_tension"),
      named("constant") = constants::pi / 24.0);
  bind_kettle_boiling(module);
  define(
      module, "surface_constants",
      [](const std::string& name) {
        const BoilingSurface& found = boiling_pair(name).constants;
        return std::pair(found.constant, found.prandtl_exponent);
      },
      "C_sf and Prandtl exponent [-] of a liquid on a surface for Rohsenow.", py::arg("name"));
  define(module, "surface_names", &boiling_pair_names, "Liquids on surfaces that have constants.");
  define(module, "boil_off_rate", &boil_off_rate<double>,
         "Water that boils off [kg/s] at a heat flow [W]; feed_heat brings a feed to the boil.",
         named("heat_flow"), named("latent_heat"), named("feed_heat") = 0.0);
}

void bind_films(py::module_& module) {
  define(module, "modified_latent_heat", &modified_latent_heat<double>,
         "h_fg + share cp dT [J/kg]; share 3/8 by Bromley (1952), 0.68 by Rohsenow (1956).",
         named("latent_heat"), named("specific_heat"), named("subcooling"),
         named("share") = film_cooling::rohsenow);
  define(
      module, "laminar_film_coefficient",
      [](double density, double vapour_density, double conductivity, double viscosity,
         double latent_heat, double subcooling, double length, double inclination) {
        return laminar_film_coefficient(
            {density, vapour_density, conductivity, viscosity, latent_heat}, subcooling, length,
            inclination);
      },
      "Mean of a laminar film on a plate [W/(m2 K)]. Nusselt (1916).", named("density"),
      named("vapour_density"), named("conductivity"), named("viscosity"), named("latent_heat"),
      named("subcooling"), named("length"), named("inclination") = constants::pi / 2.0);
  define(
      module, "film_thickness",
      [](double density, double vapour_density, double conductivity, double viscosity,
         double latent_heat, double subcooling, double distance) {
        return film_thickness({density, vapour_density, conductivity, viscosity, latent_heat},
                              subcooling, distance);
      },
      "Of a laminar film on a wall [m] at a distance from its upper edge. Nusselt (1916).",
      named("density"), named("vapour_density"), named("conductivity"), named("viscosity"),
      named("latent_heat"), named("subcooling"), named("distance"));
  define(
      module, "tube_film_coefficient",
      [](double density, double vapour_density, double conductivity, double viscosity,
         double latent_heat, double subcooling, double diameter, double coefficient) {
        return tube_film_coefficient(
            {density, vapour_density, conductivity, viscosity, latent_heat}, subcooling, diameter,
            coefficient);
      },
      "Mean around a horizontal tube [W/(m2 K)]; 0.728 by Nusselt, 0.725 to 0.782 by source.",
      named("density"), named("vapour_density"), named("conductivity"), named("viscosity"),
      named("latent_heat"), named("subcooling"), named("diameter"),
      named("coefficient", 0.0, 10.0, "-") = tube_film::nusselt);
}

void bind_walls(py::module_& module) {
  define(
      module, "film_reynolds_number",
      [](double viscosity, double latent_heat, double coefficient, double subcooling,
         double length) {
        return film_reynolds_number({0.0, 0.0, 0.0, viscosity, latent_heat}, coefficient,
                                    subcooling, length);
      },
      "4 h dT L / (mu h_fg) [-] at the lower edge.", named("viscosity"), named("latent_heat"),
      named("coefficient", 0.0, 1e12, "W/(m2 K)"), named("subcooling"), named("length"));
  define(module, "film_number_by_reynolds", &film_number_by_reynolds<double>,
         "h (nu^2/g)^(1/3) / k [-], laminar to turbulent. Incropera & DeWitt 10.38-10.40.",
         named("reynolds", 1e-9, 1e12, "-"), named("prandtl"));
  define(module, "film_number", &film_number<double>,
         "The same by k L dT / (mu h_fg (nu^2/g)^(1/3)) [-]. Incropera & DeWitt 10.42-10.44.",
         named("parameter"), named("prandtl"));
  define(
      module, "jacket_coefficient",
      [](double density, double vapour_density, double conductivity, double viscosity,
         double latent_heat, double prandtl, double subcooling, double height, double air) {
        return steam_jacket_coefficient(
            {density, vapour_density, conductivity, viscosity, latent_heat}, prandtl, subcooling,
            height, air);
      },
      "Steam side of a jacket or wall [W/(m2 K)], any film, resting air by Uchida (1965).",
      named("density"), named("vapour_density"), named("conductivity"), named("viscosity"),
      named("latent_heat"), named("prandtl"), named("subcooling"), named("height"),
      named("air_mass_fraction") = 0.0);
  define(module, "coefficient_with_air", &coefficient_with_air<double>,
         "Film with resting air in the steam in series [W/(m2 K)]. Uchida (1965); caution.",
         named("film_coefficient"), named("air_mass_fraction"));
  define(module, "condensate_rate", &condensate_rate<double>, "[kg/s] at a heat flow [W].",
         named("heat_flow"), named("latent_heat"));
}

}  // namespace

void bind_phase_change(py::module_& module) {
  auto properties = module.def_submodule("properties");
  bind_steam(properties);
  auto transfer = transfer_of(module);
  bind_boiling(transfer);
  auto condensation = transfer.def_submodule("condensation", "Films of condensate.");
  bind_films(condensation);
  bind_walls(condensation);
}

}  // namespace kettlecast::python
