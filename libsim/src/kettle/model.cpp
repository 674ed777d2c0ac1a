#include "kettlecast/kettle/model.hpp"

#include <algorithm>
#include <utility>

#include "flows.hpp"
#include "kettlecast/base/constants.hpp"
#include "kettlecast/base/errors.hpp"
#include "kettlecast/numerics/dual.hpp"
#include "kettlecast/properties/composition.hpp"
#include "kettlecast/properties/glycol.hpp"

namespace kettlecast {
namespace {

// Height of jacket that a kettle without one has in the equations [m]; keeps its node regular.
constexpr double smallest_jacket = 1e-3;

std::string litres(double volume) {
  return std::to_string(static_cast<long>(volume * 1000.0 + 0.5)) + " L";
}

void check_filling(const Kettle& kettle, const std::vector<Addition>& additions) {
  double volume = 0.0;
  for (const auto& addition : additions) {
    volume += addition.mass / density(addition.food.composition, 293.15);
  }
  if (volume <= usable_volume(kettle)) return;
  throw InvalidArgument("Kettle \"" + kettle.name + "\": the additions fill " + litres(volume) +
                        ", allowed are at most " + litres(usable_volume(kettle)));
}

}  // namespace

template <class T>
KettleModel<T>::KettleModel(const Kettle& kettle,
                            const std::array<T, coefficient_count>& coefficients,
                            std::vector<Addition> additions)
    : kettle_(kettle), values_(coefficients), additions_(std::move(additions)) {
  check(kettle_);
  for (const auto& addition : additions_) {
    check(addition, "Kettle \"" + kettle_.name + "\"");
  }
  check_filling(kettle_, additions_);
  changes_.assign(additions_.size(), {coefficient(Coefficient::pour_delay),
                                      coefficient(Coefficient::addition_temperature_offset),
                                      coefficient(Coefficient::addition_mass_factor)});
  pieces_ = make_piece_classes(kettle_, additions_);
  layout_ = make_layout(additions_, pieces_);
  const VesselShape vessel = vessel_shape(kettle_);
  geometry_ = {vessel_sizes(vessel), floor_total_area(vessel), constants::pi * kettle_.diameter,
               kettle_.height};
  steam_temperature_ = steam_temperature(kettle_);
  boiling_point_ = water::saturation_temperature(kettle_.surroundings.pressure);
}

template <class T>
double KettleModel<T>::wall_area_capacity() const {
  const auto& wall = metal(kettle_.wall_metal);
  return wall.density * wall.specific_heat * kettle_.wall_thickness;
}

/// Heat capacity of the liquid that fills the jacket, per jacketed area [J/(m2 K)]. Cold liquid
/// that is let into an empty jacket is left out: it leaves as fast as it comes.
template <class T>
double KettleModel<T>::jacket_filling() const {
  if (kettle_.jacket.kind != JacketKind::liquid) return 0.0;
  const auto& liquid = kettle_.jacket.heating;
  const double at = liquid.inlet_temperature;
  return kettle_.jacket.gap * glycol::density(liquid.glycol, at) *
         glycol::specific_heat(liquid.glycol, at);
}

/// Heat capacities of elements, floor layers, jacket, wet and dry wall [J/K], by slot.
template <class T>
std::array<T, 6> KettleModel<T>::node_capacities(const Scene<T>& scene) const {
  const auto& plate = metal(kettle_.floor_metal);
  const T layer =
      coefficient(Coefficient::floor_capacity_factor) *
      (0.5 * plate.density * plate.specific_heat * kettle_.floor_thickness * geometry_.floor_area);
  const double jacketed =
      geometry_.circumference * std::max(kettle_.jacket.height, smallest_jacket) +
      (kettle_.jacket.under_floor ? geometry_.floor_area : 0.0);
  return {coefficient(Coefficient::elements_heat_capacity) * std::max(kettle_.floor_power, 1.0),
          layer,
          layer,
          (coefficient(Coefficient::jacket_heat_capacity) + jacket_filling()) * jacketed,
          wall_area_capacity() * scene.wet_area,
          wall_area_capacity() * scene.dry_area};
}

template <class T>
std::vector<T> KettleModel<T>::initial_state(const Start& start) const {
  require_between("Start", "floor", start.floor, 233.15, 573.15, "K");
  require_between("Start", "wall", start.wall, 233.15, 573.15, "K");
  const T floor_offset = coefficient(Coefficient::floor_sensor_offset);
  const T probe_offset = coefficient(Coefficient::probe_offset);
  const T floor = start.as_read ? T(start.floor - floor_offset) : T(start.floor);
  const T wall = start.as_read ? T(start.wall - probe_offset) : T(start.wall);
  std::vector<T> x(layout_.size(), T(0.0));
  for (auto node : {slot::elements, slot::floor_lower, slot::floor_upper}) x[node] = floor;
  for (auto node : {slot::jacket, slot::wall_wet, slot::wall_dry}) x[node] = wall;
  x[slot::liquid_enthalpy] = coefficient(Coefficient::agitator_heat_capacity) *
                             geometry_.floor_area * (wall - constants::ice_point);
  x[slot::floor_reading] = floor + floor_offset;
  for (auto reading : {slot::probe_reading, slot::core_reading}) x[reading] = wall + probe_offset;
  return x;
}

template <class T>
void KettleModel<T>::warm(const T& by, std::vector<T>& x) const {
  for (auto node :
       {slot::elements, slot::floor_lower, slot::floor_upper, slot::jacket, slot::wall_wet,
        slot::wall_dry, slot::floor_reading, slot::probe_reading, slot::core_reading}) {
    x[node] += by;
  }
  x[slot::liquid_enthalpy] +=
      coefficient(Coefficient::agitator_heat_capacity) * geometry_.floor_area * by;
}

template <class T>
const Scene<T>& KettleModel<T>::scene_at(const std::vector<T>& x) {
  const T metal_capacity = coefficient(Coefficient::agitator_heat_capacity) * geometry_.floor_area;
  observe({geometry_, metal_capacity, kettle_.surroundings.pressure, boiling_point_, &layout_,
           &pieces_, &additions_},
          x, scene_);
  return scene_;
}

template <class T>
void KettleModel<T>::rates(const Inputs& inputs, const std::vector<T>& x, std::vector<T>& dxdt) {
  dxdt.assign(layout_.size(), T(0.0));
  const auto& scene = scene_at(x);
  // Pieces thicken a liquid they swim in; between pieces in a heap it flows as it is.
  const T suspended =
      scene.swimming * scene.piece_volume / (scene.piece_volume + scene.liquid_volume + 1e-9);
  scene_.thick.shear_rate = agitator_shear_rate(kettle_, inputs.agitator_speed);
  Fluid<T> fluid = film_properties(scene.pool, scene.thick, scene.liquid_temperature);
  const T bulk_viscosity = fluid.viscosity;
  fluid.viscosity =
      suspension_viscosity(bulk_viscosity, suspended, coefficient(Coefficient::solids_thickening));
  Flows flows{dxdt, scene, fluid, bulk_viscosity,
              scene.pool.water / (scene.pool.water + last_film * geometry_.floor_area)};
  heat_floor(inputs, x, flows);
  heat_jacket(inputs, x, flows);
  heat_dry_wall(inputs, x, flows);
  lose_from_wall(inputs, x, flows);
  lose_from_bare_floor(x, flows);
  floor_to_liquid(inputs, x, flows);
  floor_to_pieces(inputs, x, flows);
  wall_to_liquid(inputs, x, flows);
  liquid_to_pieces(inputs, flows);
  within_pieces(flows);
  leave_surface(inputs, flows);
  boil_off(flows);
  release_juice(flows);
  stir(inputs, flows);
  thicken(flows);
  for (std::size_t i = 0; i < inputs.pour_rate.size(); ++i) {
    if (inputs.pour_rate[i] > 0.0) pour_on(i, inputs.pour_rate[i], dxdt);
  }
  mix_layers(inputs, x, flows);
  read_sensors(x, flows);
  balance_nodes(x, flows);
}

/// Area of the jacketed wall under product [m2].
template <class T>
T KettleModel<T>::jacketed_area(const Scene<T>& scene) const {
  return std::min(scene.wet_area, T(geometry_.circumference * kettle_.jacket.height));
}

/// Turns heat into rates of temperature. The wetted height moves: metal passes between wet and
/// dry wall with the temperature it has, so that no heat is made or lost.
template <class T>
void KettleModel<T>::balance_nodes(const std::vector<T>& x, Flows& flows) const {
  const auto& scene = flows.scene;
  T volume_rate = flows.rate[slot::water] / level_density_water +
                  flows.rate[slot::oil] / level_density_oil +
                  flows.rate[slot::solids] / solids_density;
  for (std::size_t i = 0; i < pieces_.size(); ++i) {
    const auto& slots = layout_.pieces[i];
    volume_rate += flows.rate[slots.poured] * dry_volume(pieces_[i].shells) +
                   flows.rate[slots.water] / level_density_water;
  }
  const T area_rate = scene.wall_area_rate * volume_rate;
  const T carried = wall_area_capacity() * area_rate * (x[slot::wall_dry] - x[slot::wall_wet]);
  flows.node_heat[area_rate > 0.0 ? slot::wall_wet : slot::wall_dry] += carried;
  const auto capacities = node_capacities(scene);
  balance_floor(capacities, flows);
  for (std::size_t node = slot::jacket; node < capacities.size(); ++node) {
    flows.rate[node] += flows.node_heat[node] / capacities[node];
  }
}

template <class T>
T KettleModel<T>::stored_energy(const std::vector<T>& x) {
  const auto capacities = node_capacities(scene_at(x));
  T energy = x[slot::liquid_enthalpy];
  for (std::size_t node = 0; node < capacities.size(); ++node) energy += capacities[node] * x[node];
  for (std::size_t i = 0; i < pieces_.size(); ++i) {
    for (std::size_t k = 0; k < pieces_[i].shells.count; ++k) {
      energy += x[layout_.pieces[i].enthalpy + k];
    }
  }
  return energy;
}

template <class T>
T KettleModel<T>::product_mass(const std::vector<T>& x) const {
  T mass = x[slot::water] + x[slot::oil] + x[slot::solids];
  for (std::size_t i = 0; i < pieces_.size(); ++i) {
    const auto& slots = layout_.pieces[i];
    mass += x[slots.poured] * (1.0 - pieces_[i].shells.water_share) + x[slots.water];
  }
  return mass;
}

template class KettleModel<double>;
template class KettleModel<Dual8>;

}  // namespace kettlecast
