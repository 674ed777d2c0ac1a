#include "kettlecast/kettle/films.hpp"

#include <cmath>

#include "kettlecast/base/constants.hpp"
#include "kettlecast/network/liquid_pool.hpp"
#include "kettlecast/numerics/dual.hpp"
#include "kettlecast/numerics/smooth.hpp"
#include "kettlecast/properties/air.hpp"
#include "kettlecast/properties/water.hpp"
#include "kettlecast/transfer/agitated.hpp"
#include "kettlecast/transfer/boiling.hpp"
#include "kettlecast/transfer/contact.hpp"
#include "kettlecast/transfer/evaporation.hpp"
#include "kettlecast/transfer/natural_convection.hpp"
#include "kettlecast/transfer/piece_film.hpp"
#include "kettlecast/transfer/radiation.hpp"
#include "kettlecast/transfer/scraped.hpp"
#include "kettlecast/transfer/stirring.hpp"

namespace kettlecast {
namespace {

constexpr double blend_exponent = 3.0;
// Smallest temperature difference that drives natural convection [K]; keeps slopes finite.
constexpr double least_difference = 0.1;
// Share of the ideal penetration coefficient that scrapers reach [-]: 0.3 to 1 is common practice,
// no source (transfer/scraped.hpp). Scraping matters in thick product, where the share is low; the
// fitted film factor scales it.
constexpr double scraping_efficiency = 0.3;
// Time between two blades of an agitator that hardly turns [s]: so long that what it scrapes is
// nothing beside natural convection, and no film jumps where the agitator stops.
constexpr double longest_scrape = 3600.0;
// Convection inside a covered kettle between liquid and wall [W/(m2 K)]; common practice, no
// source.
constexpr double enclosure_film = 6.0;
// Speed of the turning surface against the air, as a share of the tip speed of the agitator: the
// mean radius is two thirds of the rim and the liquid lags behind; common practice, no source.
constexpr double surface_speed_share = 0.5;
// Thickness that a coating of liquid on pieces keeps at least [m]; keeps the film finite.
constexpr double thinnest_coating = 1e-4;
constexpr double wet_emissivity = 0.96;  // water surface, Incropera table A.11

template <class T>
T magnitude(const T& difference) {
  using std::sqrt;
  return sqrt(difference * difference + least_difference * least_difference);
}

Impeller impeller_of(AgitatorKind kind) {
  switch (kind) {
    case AgitatorKind::paddle:
      return Impeller::paddle;
    case AgitatorKind::helical_ribbon:
      return Impeller::helical_ribbon;
    case AgitatorKind::turbine:
      return Impeller::pitched_turbine;
    default:
      return Impeller::anchor;
  }
}

template <class T>
T wall_nusselt(AgitatorKind kind, const FilmGroups<T>& at) {
  switch (kind) {
    case AgitatorKind::paddle:
      return agitated_nusselt(at, wall_film::paddle);
    case AgitatorKind::helical_ribbon:
      return agitated_nusselt(at, wall_film::helical_ribbon);
    case AgitatorKind::turbine:
      return agitated_nusselt(at, wall_film::pitched_turbine);
    default:
      return agitated_nusselt(at, wall_film::anchor);
  }
}

/// Film of blades that scrape the surface clean; nothing for others [W/(m2 K)].
template <class T>
T scraped(const Kettle& kettle, const Fluid<T>& fluid, double speed) {
  if (kettle.agitator != AgitatorKind::scraped_anchor) return T(0.0);
  const double between = contact_time(speed, static_cast<double>(kettle.blades), longest_scrape);
  return scraped_coefficient(fluid, T(between), scraping_efficiency);
}

template <class T>
T forced(const Kettle& kettle, const Fluid<T>& fluid, const Stirring<T>& stirring, bool at_floor) {
  if (kettle.agitator == AgitatorKind::none || stirring.speed <= 0.0) return T(0.0);
  const FilmGroups<T> at{agitator_reynolds_number(fluid, stirring.speed, kettle.agitator_diameter),
                         prandtl_number(fluid), stirring.viscosity_ratio};
  const T nusselt = at_floor && kettle.agitator == AgitatorKind::turbine
                        ? agitated_nusselt(at, floor_film::pitched_turbine)
                        : wall_nusselt(kettle.agitator, at);
  return blend(T(nusselt * fluid.conductivity / kettle.diameter),
               scraped(kettle, fluid, stirring.speed), blend_exponent);
}

}  // namespace

template <class T>
T floor_film_coefficient(const Kettle& kettle, const Fluid<T>& fluid, const Stirring<T>& stirring) {
  const double length = kettle.diameter / 4.0;  // area over perimeter of a disc
  const T rayleigh = rayleigh_number(fluid, magnitude(stirring.difference), length);
  const T natural = plate_facing_up_nusselt(rayleigh) * fluid.conductivity / length;
  return blend(forced(kettle, fluid, stirring, true), natural, blend_exponent);
}

template <class T>
T wall_film_coefficient(const Kettle& kettle, const Fluid<T>& fluid, const Stirring<T>& stirring) {
  // A turbulent vertical film does not depend on the height; a quarter of the diameter stands
  // for the level, which would add a kink.
  const double length = kettle.diameter / 4.0;
  const T rayleigh = rayleigh_number(fluid, magnitude(stirring.difference), length);
  const T natural =
      vertical_wall_nusselt(rayleigh, prandtl_number(fluid)) * fluid.conductivity / length;
  return blend(forced(kettle, fluid, stirring, false), natural, blend_exponent);
}

double agitator_shear_rate(const Kettle& kettle, double speed) {
  if (kettle.agitator == AgitatorKind::none) return 0.0;
  return stirring_constants(impeller_of(kettle.agitator)).shear * speed;
}

template <class T>
T agitator_power(const Kettle& kettle, const Fluid<T>& fluid, double speed) {
  if (kettle.agitator == AgitatorKind::none || speed <= 0.0) return T(0.0);
  return stirring_power(stirring_constants(impeller_of(kettle.agitator)), fluid.density,
                        fluid.viscosity, speed, kettle.agitator_diameter);
}

template <class T>
T piece_film_coefficient(const Kettle& kettle, const Fluid<T>& fluid, const PieceMotion<T>& motion,
                         double size) {
  using std::sqrt;
  const double stirred = 0.1 * constants::pi * kettle.agitator_diameter * motion.speed;
  // Water below 4 degC sinks when it warms: buoyancy moves it all the same.
  const T lightness = sqrt(fluid.expansivity * fluid.expansivity + 1e-12);
  const T buoyant = constants::gravity * lightness * magnitude(motion.difference) * size;
  const T velocity = sqrt(stirred * stirred + buoyant);
  const T reynolds = reynolds_number(fluid, velocity, size);
  const T swum = ranz_marshall_nusselt(reynolds, prandtl_number(fluid)) * fluid.conductivity / size;
  const T heaped = 2.0 * fluid.conductivity / (motion.coating + thinnest_coating);
  return heaped + motion.swimming * (swum - heaped);
}

template <class T>
T boiling_heat_flux(const T& excess, const T& boiling_point, const T& viscosity) {
  if (excess <= 0.0) return T(0.0);
  const T at = within_fits(boiling_point);
  const T specific_heat = water::specific_heat(at);
  const BoilingLiquid<T> liquid{water::density(at),
                                water::vapour_density(at),
                                specific_heat,
                                water::latent_heat(at),
                                water::surface_tension(at),
                                viscosity,
                                specific_heat * viscosity / water::conductivity(at)};
  return nucleate_heat_flux(liquid, excess, BoilingSurface{});
}

template <class T>
T condensation_flux(const Kettle& kettle, const FreeSurface<T>& liquid, const T& wall) {
  if (wall >= liquid.temperature) return T(0.0);
  const T pressure(kettle.surroundings.pressure);
  const T middle = 0.5 * (liquid.temperature + wall);
  const T lewis =
      air::thermal_diffusivity(middle, pressure) / air::vapour_diffusivity(middle, pressure);
  const T mass_coefficient = lewis_mass_coefficient(
      T(enclosure_film), T(air::density(middle, pressure) * air::specific_heat(middle)), lewis);
  const T vapour = mass_coefficient * constants::water_molar_mass /
                   (constants::molar_gas * middle) *
                   (liquid.activity * water::saturation_pressure(liquid.temperature) -
                    water::saturation_pressure(wall));
  // A wall between the dew point and the liquid takes up no vapour.
  const T condensing = vapour > 0.0 ? vapour : T(0.0);
  return enclosure_film * (liquid.temperature - wall) + condensing * water::latent_heat(middle);
}

template <class T>
SurfaceLoss<T> surface_loss(const Kettle& kettle, const FreeSurface<T>& free,
                            const T& room_temperature) {
  const T& surface = free.temperature;
  const double tip_speed = constants::pi * kettle.agitator_diameter * free.speed;
  const double air_speed = kettle.surroundings.air_speed + surface_speed_share * tip_speed;
  const auto& room = kettle.surroundings;
  const T pressure(room.pressure);
  const T room_vapour = room.relative_humidity * water::saturation_pressure(room_temperature);
  const T surface_vapour = free.activity * water::saturation_pressure(within_fits(surface));
  const T middle = 0.5 * (surface + room_temperature);
  const WetSurface<T> wet{
      {air::density(middle, pressure), air::specific_heat(middle), air::conductivity(middle),
       air::viscosity(middle), 1.0 / middle},
      air::moist_density(surface, pressure, limited_vapour_fraction(surface_vapour, pressure)),
      air::moist_density(room_temperature, pressure, T(room_vapour / pressure)),
      kettle.diameter,
      air_speed};
  const T film = wet_surface_coefficient(wet);
  const T lewis =
      air::thermal_diffusivity(middle, pressure) / air::vapour_diffusivity(middle, pressure);
  const T mass_coefficient =
      lewis_mass_coefficient(film, T(wet.film.density * wet.film.specific_heat), lewis);
  return {open_surface_evaporation(mass_coefficient, middle, pressure, surface_vapour, room_vapour),
          film * (surface - room_temperature),
          radiative_heat_flux(wet_emissivity, surface, room_temperature)};
}

template double floor_film_coefficient<double>(const Kettle&, const Fluid<double>&,
                                               const Stirring<double>&);
template Dual8 floor_film_coefficient<Dual8>(const Kettle&, const Fluid<Dual8>&,
                                             const Stirring<Dual8>&);
template double wall_film_coefficient<double>(const Kettle&, const Fluid<double>&,
                                              const Stirring<double>&);
template Dual8 wall_film_coefficient<Dual8>(const Kettle&, const Fluid<Dual8>&,
                                            const Stirring<Dual8>&);
template double piece_film_coefficient<double>(const Kettle&, const Fluid<double>&,
                                               const PieceMotion<double>&, double);
template Dual8 piece_film_coefficient<Dual8>(const Kettle&, const Fluid<Dual8>&,
                                             const PieceMotion<Dual8>&, double);
template double agitator_power<double>(const Kettle&, const Fluid<double>&, double);
template Dual8 agitator_power<Dual8>(const Kettle&, const Fluid<Dual8>&, double);
template double boiling_heat_flux<double>(const double&, const double&, const double&);
template Dual8 boiling_heat_flux<Dual8>(const Dual8&, const Dual8&, const Dual8&);
template double condensation_flux<double>(const Kettle&, const FreeSurface<double>&, const double&);
template Dual8 condensation_flux<Dual8>(const Kettle&, const FreeSurface<Dual8>&, const Dual8&);
template SurfaceLoss<double> surface_loss<double>(const Kettle&, const FreeSurface<double>&,
                                                  const double&);
template SurfaceLoss<Dual8> surface_loss<Dual8>(const Kettle&, const FreeSurface<Dual8>&,
                                                const Dual8&);

}  // namespace kettlecast
