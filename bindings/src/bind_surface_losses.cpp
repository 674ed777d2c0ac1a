#include "bind.hpp"
#include "checked.hpp"
#include "kettlecast/transfer/evaporation.hpp"
#include "kettlecast/transfer/horizontal_cylinder.hpp"
#include "kettlecast/transfer/horizontal_plates.hpp"
#include "kettlecast/transfer/natural_convection.hpp"
#include "kettlecast/transfer/pool_evaporation.hpp"
#include "kettlecast/transfer/radiation.hpp"
#include "kettlecast/transfer/room_air.hpp"

namespace kettlecast::python {
namespace {

using OfRayleigh = double (*)(const double&);
using OfBoth = double (*)(const double&, const double&);

void define_nusselt(py::module_& module, const char* name, OfRayleigh function, const char* text) {
  define(module, name, function, text, named("rayleigh"));
}

void define_nusselt(py::module_& module, const char* name, OfBoth function, const char* text) {
  define(module, name, function, text, named("rayleigh"), named("prandtl"));
}

void bind_nusselt_numbers(py::module_& module) {
  define_nusselt(module, "vertical_wall_nusselt", &vertical_wall_nusselt<double>,
                 "[-], all flows. Churchill & Chu (1975), equation 9.");
  define_nusselt(module, "vertical_wall_laminar_nusselt", &vertical_wall_laminar_nusselt<double>,
                 "[-], Ra < 1e9. Churchill & Chu (1975), equation 8.");
  define_nusselt(module, "turbulent_wall_nusselt", &turbulent_wall_nusselt<double>,
                 "0.13 Ra^(1/3) [-]. McAdams (1954).");
  define_nusselt(module, "sphere_nusselt", &sphere_nusselt<double>,
                 "[-]. Churchill, Heat Exchanger Design Handbook.");
  define_nusselt(module, "horizontal_cylinder_nusselt", &horizontal_cylinder_nusselt<double>,
                 "[-]. Churchill & Chu (1975).");
  define_nusselt(module, "horizontal_cylinder_kuehn_nusselt",
                 &horizontal_cylinder_kuehn_nusselt<double>, "[-]. Kuehn & Goldstein (1976).");
  define_nusselt(module, "horizontal_cylinder_morgan_nusselt",
                 &horizontal_cylinder_morgan_nusselt<double>, "[-]. Morgan (1975), steps rounded.");
  define_nusselt(module, "plate_facing_up_nusselt", &plate_facing_up_nusselt<double>,
                 "[-], hot plate; McAdams (1954), joined over two decades, as kettles use it.");
  define_nusselt(module, "plate_facing_down_nusselt", &plate_facing_down_nusselt<double>,
                 "[-], hot plate. McAdams (1954).");
  define_nusselt(module, "plate_up_mcadams_nusselt", &plate_up_mcadams_nusselt<double>,
                 "[-], hot plate facing up or cold one down. McAdams (1954).");
  define_nusselt(module, "plate_up_vdi_nusselt", &plate_up_vdi_nusselt<double>,
                 "[-], hot plate facing up or cold one down. VDI Heat Atlas (2010), F2.");
  define_nusselt(module, "plate_up_raithby_nusselt", &plate_up_raithby_nusselt<double>,
                 "[-], hot plate facing up or cold one down. Raithby & Hollands (1998).");
  define_nusselt(module, "plate_down_vdi_nusselt", &plate_down_vdi_nusselt<double>,
                 "[-], hot plate facing down or cold one up. VDI Heat Atlas (2010), F2.");
  define_nusselt(module, "plate_down_raithby_nusselt", &plate_down_raithby_nusselt<double>,
                 "[-], hot plate facing down or cold one up. Raithby & Hollands (1998).");
}

void bind_room_air(py::module_& module) {
  define(
      module, "rayleigh_number",
      [](double density, double specific_heat, double conductivity, double viscosity,
         double expansivity, double difference, double length) {
        return rayleigh_number(
            Fluid<double>{density, specific_heat, conductivity, viscosity, expansivity}, difference,
            length);
      },
      "g beta dT L^3 rho^2 cp / (mu k) [-].", named("density"), named("specific_heat"),
      named("conductivity"), named("viscosity"), named("expansivity"), named("difference"),
      named("length"));
  const auto room = [&](const char* name, double constant, const char* text) {
    define(
        module, name, [=](double difference) { return room_air_coefficient(difference, constant); },
        text, named("difference"));
  };
  room("room_air_wall_coefficient", room_air::vertical,
       "Vertical surface in room air [W/(m2 K)]. Kern (1950), example 18.4.");
  room("room_air_up_coefficient", room_air::facing_up,
       "Hot surface facing up in room air [W/(m2 K)]. Kern (1950), from memory.");
  room("room_air_down_coefficient", room_air::facing_down,
       "Hot surface facing down in room air [W/(m2 K)]. Kern (1950), from memory.");
}

void bind_radiation(py::module_& parent) {
  auto module = parent.def_submodule("radiation", "Radiation of grey surfaces.");
  define(module, "radiative_heat_flux", &radiative_heat_flux<double>,
         "e sigma (T^4 - T_s^4) [W/m2]. Stefan-Boltzmann.", named("emissivity"), named("surface"),
         named("surroundings"));
  define(module, "radiation_coefficient", &radiation_coefficient<double>,
         "The same per kelvin of difference [W/(m2 K)]. Incropera & DeWitt 1.9.",
         named("emissivity"), named("surface"), named("surroundings"));
  define(module, "exchange_emissivity", &exchange_emissivity,
         "Of a body inside another [-], area_ratio inner/outer. Incropera & DeWitt, table 13.3.",
         named("inner"), named("outer"), named("area_ratio"));
  define(module, "shielded_emissivity", &shielded_emissivity,
         "Of two plates with one sheet between them [-]. Incropera & DeWitt 13.27.", named("first"),
         named("second"), named("shield"));
}

void bind_evaporation(py::module_& parent) {
  auto module = parent.def_submodule("evaporation", "Evaporation from open surfaces.");
  define(module, "lewis_number", &lewis_number<double>, "alpha / D [-].",
         named("thermal_diffusivity"), named("vapour_diffusivity"));
  define(module, "lewis_mass_coefficient", &lewis_mass_coefficient<double>,
         "h / (rho cp Le^(2/3)) [m/s]. Chilton & Colburn (1934).", named("film_coefficient"),
         named("heat_capacity"), named("lewis"));
  define(module, "open_surface_evaporation", &open_surface_evaporation<double>,
         "With Stefan flow [kg/(m2 s)]. Bird, Stewart & Lightfoot 18.2.", named("mass_coefficient"),
         named("temperature"), named("pressure"), named("surface_vapour_pressure"),
         named("ambient_vapour_pressure"));
  define(
      module, "pool_evaporation",
      [](double difference, double air_speed, double latent_heat, double activity) {
        return pool_evaporation(difference, air_speed, latent_heat, activity);
      },
      "Pool equation [kg/(m2 s)]. Carrier (1918), ASHRAE; activity 0.74 if undisturbed.",
      named("pressure_difference"), named("air_speed"), named("latent_heat"),
      named("activity") = 1.0);
  define(
      module, "draught_factor", [](double air_speed) { return draught_factor(air_speed); },
      "Evaporation under a hood or fan over that in still air [-]. Pool equation.",
      named("air_speed"));
  define(module, "latent_heat_flux", &latent_heat_flux<double>,
         "Heat that evaporation takes [W/m2].", named("evaporation"), named("latent_heat"));
}

}  // namespace

void bind_surface_losses(py::module_& parent) {
  auto transfer = transfer_of(parent);
  auto convection = transfer.def_submodule("convection", "Natural convection.");
  bind_nusselt_numbers(convection);
  bind_room_air(convection);
  bind_radiation(transfer);
  bind_evaporation(transfer);
}

}  // namespace kettlecast::python
