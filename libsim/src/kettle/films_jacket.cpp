// Films of jackets: steam that condenses, or a liquid that flows through.

#include <cmath>

#include "kettlecast/base/constants.hpp"
#include "kettlecast/kettle/films.hpp"
#include "kettlecast/network/liquid_pool.hpp"
#include "kettlecast/numerics/dual.hpp"
#include "kettlecast/properties/glycol.hpp"
#include "kettlecast/properties/steam.hpp"
#include "kettlecast/transfer/annular_gap.hpp"
#include "kettlecast/transfer/natural_convection.hpp"
#include "kettlecast/transfer/steam_jacket.hpp"

namespace kettlecast {
namespace {

// Smallest difference between jacket and wall that a film is taken for [K]; keeps it finite.
constexpr double least_difference = 0.5;

// Forced and natural convection blend as in films.hpp.
constexpr double blend_exponent = 3.0;

template <class T>
T magnitude(const T& difference) {
  using std::sqrt;
  return sqrt(difference * difference + least_difference * least_difference);
}

/// Way of steam or liquid along the wall [m]; under a floor that is jacketed it also runs from the
/// middle to the rim.
double path_length(const Kettle& kettle) {
  const double under = kettle.jacket.under_floor ? 0.5 * kettle.diameter : 0.0;
  return kettle.jacket.height + under;
}

template <class T>
Fluid<T> jacket_fluid(const JacketFlow& liquid, const T& temperature) {
  const double share = liquid.glycol;
  const T at = within_fits(temperature);
  return {glycol::density(share, at), glycol::specific_heat(share, at),
          glycol::conductivity(share, at), glycol::viscosity(share, at),
          glycol::expansivity(share, at)};
}

}  // namespace

double steam_temperature(const Kettle& kettle) {
  const double pressure = kettle.surroundings.pressure + kettle.jacket.steam_pressure;
  return steam::temperature_with_air(pressure, kettle.jacket.air_share);
}

template <class T>
T steam_film_coefficient(const Kettle& kettle, const T& steam, const T& wall) {
  const T middle = within_fits(T(0.5 * (steam + wall)));
  const T specific_heat = water::specific_heat(middle);
  const T viscosity = water::viscosity(middle);
  const T conductivity = water::conductivity(middle);
  const T at = within_fits(steam);
  const Condensate<T> film{water::density(middle), water::vapour_density(at), conductivity,
                           viscosity, water::latent_heat(at)};
  return steam_jacket_coefficient(film, T(specific_heat * viscosity / conductivity),
                                  magnitude(T(steam - wall)), T(path_length(kettle)),
                                  T(steam::air_mass_fraction(kettle.jacket.air_share)));
}

template <class T>
T jacket_flow_coefficient(const Kettle& kettle, const JacketFlow& liquid, const T& temperature,
                          const T& wall) {
  const double gap = kettle.jacket.gap;
  const double hydraulic = 2.0 * gap;
  const Fluid<T> fluid = jacket_fluid(liquid, temperature);
  const double section = constants::pi * (kettle.diameter + gap) * gap;
  const T reynolds = liquid.flow * hydraulic / (section * fluid.viscosity);
  const T forced =
      gap_nusselt(reynolds, prandtl_number(fluid), kettle.diameter / (kettle.diameter + hydraulic),
                  hydraulic / path_length(kettle)) *
      fluid.conductivity / hydraulic;
  const double height = path_length(kettle);
  const T rayleigh = rayleigh_number(fluid, magnitude(T(wall - temperature)), height);
  const T natural =
      vertical_wall_nusselt(rayleigh, prandtl_number(fluid)) * fluid.conductivity / height;
  return blend(forced, natural, blend_exponent);
}

template double steam_film_coefficient<double>(const Kettle&, const double&, const double&);
template Dual8 steam_film_coefficient<Dual8>(const Kettle&, const Dual8&, const Dual8&);
template double jacket_flow_coefficient<double>(const Kettle&, const JacketFlow&, const double&,
                                                const double&);
template Dual8 jacket_flow_coefficient<Dual8>(const Kettle&, const JacketFlow&, const Dual8&,
                                              const Dual8&);

}  // namespace kettlecast
