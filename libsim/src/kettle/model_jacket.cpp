// Heat into the jacket, out of it, and from it to wall and floor.

#include <algorithm>

#include "flows.hpp"
#include "kettlecast/kettle/films.hpp"
#include "kettlecast/numerics/dual.hpp"
#include "kettlecast/numerics/smooth.hpp"
#include "kettlecast/properties/glycol.hpp"

namespace kettlecast {
namespace {

// The jacket's own switch throttles it within this band before its limit [K].
constexpr double jacket_band = 2.0;

/// Heat that a liquid of a jacket gives to it [W]; the jacket is stirred, so that what leaves it
/// has its temperature.
template <class T>
T given_by(const JacketFlow& liquid, const T& jacket_temperature) {
  const T specific_heat = glycol::specific_heat(liquid.glycol, T(liquid.inlet_temperature));
  return liquid.flow * specific_heat * (liquid.inlet_temperature - jacket_temperature);
}

}  // namespace

/// Heat that elements, steam or hot liquid give to the jacket [W]. Steam stops condensing at its
/// own temperature, whatever limit is set.
template <class T>
T KettleModel<T>::jacket_supply(const Inputs& inputs, const T& temperature) const {
  const Jacket& jacket = kettle_.jacket;
  const double limit = jacket.kind == JacketKind::steam
                           ? std::min(inputs.jacket_limit, steam_temperature_)
                           : inputs.jacket_limit;
  const T share = inputs.jacket_heat * smooth_step(T((limit - temperature) / jacket_band));
  if (jacket.kind == JacketKind::liquid) return share * given_by(jacket.heating, temperature);
  return coefficient(Coefficient::jacket_efficiency) * share * jacket.power;
}

/// Heat that the cold liquid takes from the jacket [W].
template <class T>
T KettleModel<T>::jacket_cooling(const Inputs& inputs, const T& temperature) const {
  if (inputs.cooling <= 0.0) return T(0.0);
  const T share = inputs.cooling * smooth_step(T((temperature - inputs.cool_limit) / jacket_band));
  return -share * given_by(kettle_.jacket.cooling, temperature);
}

/// Film coefficient inside the jacket [W/(m2 K)].
template <class T>
T KettleModel<T>::jacket_film(const Inputs& inputs, const T& jacket, const T& wall) const {
  const Jacket& fed = kettle_.jacket;
  const T factor = coefficient(Coefficient::jacket_film_factor);
  if (inputs.cooling > 0.0) {
    return factor * jacket_flow_coefficient(kettle_, fed.cooling, jacket, wall);
  }
  return factor * (fed.kind == JacketKind::steam
                       ? steam_film_coefficient(kettle_, jacket, wall)
                       : jacket_flow_coefficient(kettle_, fed.heating, jacket, wall));
}

/// Conductance from the jacket to a square metre of wall or floor [W/(m2 K)]: the film, and the
/// metal up to the node behind it. The fitted conductance of elements counts from the node.
///
/// @param plate  resistance of that metal [m2 K/W]
template <class T>
T KettleModel<T>::jacket_conductance(const Inputs& inputs, const T& jacket, const T& wall,
                                     const T& plate) const {
  if (kettle_.jacket.kind == JacketKind::electric && inputs.cooling <= 0.0) {
    return coefficient(Coefficient::jacket_conductance);
  }
  return 1.0 / (1.0 / jacket_film(inputs, jacket, wall) + plate);
}

/// The jacket is one body at one temperature; it heats or cools the wetted and the dry wall behind
/// it, and the floor if it lies under it.
template <class T>
void KettleModel<T>::heat_jacket(const Inputs& inputs, const std::vector<T>& x,
                                 Flows& flows) const {
  const T jacket = x[slot::jacket];
  const T supplied = jacket_supply(inputs, jacket);
  const T removed = jacket_cooling(inputs, jacket);
  flows.node_heat[slot::jacket] += supplied - removed;
  flows.rate[slot::heater_energy] += supplied;
  flows.rate[slot::cooling_energy] += removed;
  const T covered = jacketed_area(flows.scene);
  const T bare = geometry_.circumference * kettle_.jacket.height - covered;
  const double under = kettle_.jacket.under_floor ? geometry_.floor_area : 0.0;
  const auto heat = [&](std::size_t node, const T& area, const T& plate) {
    flows.between(slot::jacket, node,
                  jacket_conductance(inputs, jacket, x[node], plate) * area * (jacket - x[node]));
  };
  const T half_wall(0.5 * kettle_.wall_thickness / metal(kettle_.wall_metal).conductivity);
  heat(slot::wall_wet, covered, half_wall);
  heat(slot::wall_dry, bare, half_wall);
  if (under > 0.0) heat(slot::floor_lower, T(under), quarter_floor());
}

template class KettleModel<double>;
template class KettleModel<Dual8>;

}  // namespace kettlecast
