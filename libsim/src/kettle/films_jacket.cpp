// Films of jackets.

#include "kettlecast/kettle/films.hpp"
#include "kettlecast/properties/water.hpp"

namespace kettlecast {

double steam_temperature(const Kettle& kettle) {
  const double pressure = kettle.surroundings.pressure + kettle.jacket.steam_pressure;
  return water::saturation_temperature((1.0 - kettle.jacket.air_share) * pressure);
}

template <class T>
T steam_film_coefficient(const Jacket&, const T&, const T&) {
  return T(5000.0);
}

template <class T>
T jacket_flow_coefficient(const Kettle&, const JacketFlow&, const T&) {
  return T(800.0);
}

template double steam_film_coefficient<double>(const Jacket&, const double&, const double&);
template double jacket_flow_coefficient<double>(const Kettle&, const JacketFlow&, const double&);

}  // namespace kettlecast
