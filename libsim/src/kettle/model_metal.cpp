// Heat in floor, jacket and wall, and from them to the product.

#include <algorithm>

#include "flows.hpp"
#include "kettlecast/base/constants.hpp"
#include "kettlecast/kettle/films.hpp"
#include "kettlecast/numerics/dual.hpp"
#include "kettlecast/numerics/smooth.hpp"
#include "kettlecast/transfer/contact.hpp"
#include "kettlecast/transfer/radiation.hpp"

namespace kettlecast {
namespace {

// Inside of the wall above the product to the air over it [W/(m2 K)]: natural convection and
// radiation in an enclosure, common practice, no source.
constexpr double headspace_film = 6.0;

// Emissivity of a used steel floor [-]. Source: lightly oxidised stainless steel 0.3 to 0.4,
// Incropera, table A.11 (from memory).
constexpr double metal_emissivity = 0.35;

// Longest time that pieces rest on the floor while the agitator stands [s]; warmth goes through a
// dice of a centimetre in about as long.
constexpr double longest_contact = 300.0;

// Time in which temperatures of neighbouring metal even out at least [s]: no sensor of a kettle is
// faster.
constexpr double shortest_settling = 0.2;

// Volume share of water below which oil, above which water is the continuous liquid and wets the
// floor; emulsions invert in between. Source: phase inversion of stirred oil and water, about
// 0.3 to 0.7 by volume (from memory).
constexpr double oil_continuous = 0.3, water_continuous = 0.7;

}  // namespace

/// Conductance from the elements to the floor [W/K].
template <class T>
T KettleModel<T>::elements_conductance() const {
  return coefficient(Coefficient::elements_heat_capacity) * std::max(kettle_.floor_power, 1.0) /
         coefficient(Coefficient::elements_lag);
}

/// Conductance between the two layers of the floor [W/K].
template <class T>
T KettleModel<T>::plate_conductance() const {
  const double plain = metal(kettle_.floor_metal).conductivity * geometry_.floor_area /
                       (0.5 * kettle_.floor_thickness);
  return plain / coefficient(Coefficient::floor_resistance_factor);
}

template <class T>
void KettleModel<T>::heat_floor(const Inputs& inputs, const std::vector<T>& x, Flows& flows) const {
  const T heater =
      coefficient(Coefficient::floor_efficiency) * (kettle_.floor_power * inputs.floor_heat);
  flows.node_heat[slot::elements] += heater;
  flows.rate[slot::heater_energy] += heater;
  flows.between(slot::elements, slot::floor_lower,
                elements_conductance() * (x[slot::elements] - x[slot::floor_lower]));
  flows.between(slot::floor_lower, slot::floor_upper,
                plate_conductance() * (x[slot::floor_lower] - x[slot::floor_upper]));
  if (kettle_.jacket.under_floor) return;
  flows.to_room(slot::floor_lower, coefficient(Coefficient::floor_loss) * geometry_.floor_area *
                                       (x[slot::floor_lower] - room_temperature()));
}

/// Turns the heat of elements and floor layers into rates of temperature.
///
///     (C + M) dT/dt = Q,   M_ij = -m_ij, m_ij = max(0, G_ij t - C_i C_j / (C_i + C_j)), rows of M
///     add up to 0
///
/// A difference across a conductance G evens out with the time constant C_ij / G; M lets none be
/// shorter than t. The sum of C dT/dt stays that of Q, so that no heat is made or lost, and where
/// nothing changes the temperatures are those without M. A thin floor would else ask for steps of
/// a millisecond.
template <class T>
void KettleModel<T>::balance_floor(const std::array<T, 6>& capacities, Flows& flows) const {
  const auto& heat = flows.node_heat;
  const T elements = capacities[slot::elements];
  const T lower = capacities[slot::floor_lower];
  const T upper = capacities[slot::floor_upper];
  const auto inertia = [](const T& conductance, const T& one, const T& other) {
    const T lacking = conductance * shortest_settling - one * other / (one + other);
    return lacking > 0.0 ? lacking : T(0.0);
  };
  const T below = inertia(elements_conductance(), elements, lower);
  const T within = inertia(plate_conductance(), lower, upper);
  const T from_below = below / (elements + below);
  const T from_above = within / (upper + within);
  const T middle = (heat[slot::floor_lower] + from_below * heat[slot::elements] +
                    from_above * heat[slot::floor_upper]) /
                   (lower + from_below * elements + from_above * upper);
  flows.rate[slot::floor_lower] += middle;
  flows.rate[slot::elements] += (heat[slot::elements] + below * middle) / (elements + below);
  flows.rate[slot::floor_upper] += (heat[slot::floor_upper] + within * middle) / (upper + within);
}

/// Heat that climbs into the dry wall: along the metal, and under a lid as vapour that condenses on
/// it and runs back.
template <class T>
void KettleModel<T>::heat_dry_wall(const Inputs& inputs, const std::vector<T>& x,
                                   Flows& flows) const {
  const auto& scene = flows.scene;
  const double along = metal(kettle_.wall_metal).conductivity * kettle_.wall_thickness *
                       geometry_.circumference / (0.5 * kettle_.height);
  flows.between(slot::wall_wet, slot::wall_dry, along * (x[slot::wall_wet] - x[slot::wall_dry]));
  if (inputs.cover != Cover::lid) return;
  const T condensing = condensation_flux(
      kettle_, {scene.upper_temperature, scene.water_activity, 0.0}, x[slot::wall_dry]);
  const T share = scene.immersion * flows.water_presence;
  flows.to_liquid(slot::wall_dry, -share * scene.dry_area * condensing);
}

template <class T>
void KettleModel<T>::lose_from_wall(const Inputs& inputs, const std::vector<T>& x,
                                    Flows& flows) const {
  const auto& scene = flows.scene;
  const T room = room_temperature();
  const T loss = coefficient(Coefficient::wall_loss);
  const T covered = jacketed_area(scene);
  const double jacketed = geometry_.circumference * kettle_.jacket.height;
  const double shell = jacketed + (kettle_.jacket.under_floor ? geometry_.floor_area : 0.0);
  const double inside = inputs.cover == Cover::lid ? 0.0 : headspace_film;
  flows.to_room(slot::jacket, loss * shell * (x[slot::jacket] - room));
  flows.to_room(slot::wall_wet, loss * (scene.wet_area - covered) * (x[slot::wall_wet] - room));
  flows.to_room(slot::wall_dry,
                (loss * (scene.dry_area - jacketed + covered) + inside * scene.dry_area) *
                    (x[slot::wall_dry] - room));
}

/// What of the floor no product covers convects and radiates into the open.
template <class T>
void KettleModel<T>::lose_from_bare_floor(const std::vector<T>& x, Flows& flows) const {
  const T room = room_temperature();
  const T bare = geometry_.floor_area * (1.0 - flows.scene.coverage);
  const T floor = x[slot::floor_upper];
  flows.to_room(slot::floor_upper, bare * (headspace_film * (floor - room) +
                                           radiative_heat_flux(metal_emissivity, floor, T(room))));
}

/// Convection and nucleate boiling from a heated surface to the liquid [W/m2]. The two add up:
/// Chen, Ind. Eng. Chem. Process Des. Dev. 5 (1966) 322; his suppression is left to the fitted
/// boiling factor. Water boils only where it, not oil, is the continuous liquid that wets the
/// surface.
template <class T>
typename KettleModel<T>::Flux KettleModel<T>::heated_surface_flux(const HeatedSurface& surface,
                                                                  const Flows& flows) const {
  const auto& scene = flows.scene;
  const T convection =
      (surface.temperature - surface.liquid) / (1.0 / surface.film + surface.plate);
  const T drop = convection > 0.0 ? T(convection * surface.plate) : T(0.0);
  const T excess = surface.temperature - drop - scene.boiling_point;
  if (!(excess > 0.0)) return {convection, T(0.0)};
  const T wets = smooth_step(
      T((watery_share(scene.pool) - oil_continuous) / (water_continuous - oil_continuous)));
  const T boiling =
      coefficient(Coefficient::floor_boiling_factor) * wets * flows.water_presence *
      boiling_heat_flux(excess, scene.boiling_point,
                        watery_viscosity(scene.pool, scene.thick, scene.boiling_point));
  // The plate passes no more than brings its surface down to the boiling point.
  return {convection, boiling / (1.0 + boiling * surface.plate / excess)};
}

template <class T>
T KettleModel<T>::quarter_floor() const {
  return coefficient(Coefficient::floor_resistance_factor) *
         (0.25 * kettle_.floor_thickness / metal(kettle_.floor_metal).conductivity);
}

template <class T>
void KettleModel<T>::floor_to_liquid(const Inputs& inputs, const std::vector<T>& x,
                                     Flows& flows) const {
  const auto& scene = flows.scene;
  const T floor = x[slot::floor_upper];
  const T film = coefficient(Coefficient::floor_film_factor) *
                 floor_film_coefficient(kettle_, flows.fluid, flows.stirring(inputs, floor));
  const Flux flux =
      heated_surface_flux({floor, scene.lower_temperature, film, quarter_floor()}, flows);
  const T wetted = geometry_.floor_area * scene.coverage * scene.immersion;
  flows.to_liquid(slot::floor_upper, wetted * (flux.convection + flux.boiling));
  // Bubbles carry their heat through all of the liquid; only convection parts it into layers.
  flows.layering_heat += wetted * flux.convection / lower_share;
}

/// Direct contact, where there is too little liquid to carry the pieces.
template <class T>
void KettleModel<T>::floor_to_pieces(const Inputs& inputs, const std::vector<T>& x,
                                     Flows& flows) const {
  const auto& scene = flows.scene;
  const T area = geometry_.floor_area * scene.coverage * (1.0 - scene.immersion);
  const T rest = T(heap_contact_time(inputs.agitator_speed, kettle_.diameter, longest_contact));
  for (std::size_t i = 0; i < pieces_.size(); ++i) {
    const auto& piece = scene.pieces[i];
    const std::size_t outer = pieces_[i].shells.count - 1;
    const T penetration = penetration_coefficient(
        shell_conductivity(pieces_[i].shells, piece.temperature[outer]),
        T(pieces_[i].shells.density), T(pieces_[i].shells.freezing.unfrozen_specific_heat), rest);
    const T film = contact_coefficient(penetration,
                                       T(1.0 / coefficient(Coefficient::floor_contact_resistance)));
    const T heat_flow =
        film * area * piece.share * (x[slot::floor_upper] - piece.temperature[outer]);
    flows.node_heat[slot::floor_upper] -= heat_flow;
    flows.rate[layout_.pieces[i].enthalpy + outer] += heat_flow;
  }
}

template <class T>
void KettleModel<T>::wall_to_liquid(const Inputs& inputs, const std::vector<T>& x,
                                    Flows& flows) const {
  const auto& scene = flows.scene;
  const T wall = x[slot::wall_wet];
  const T film = coefficient(Coefficient::wall_film_factor) *
                 wall_film_coefficient(kettle_, flows.fluid, flows.stirring(inputs, wall));
  const T plate(0.5 * kettle_.wall_thickness / metal(kettle_.wall_metal).conductivity);
  const Flux flux = heated_surface_flux({wall, scene.liquid_temperature, film, plate}, flows);
  flows.to_liquid(slot::wall_wet,
                  scene.wall_contact * scene.immersion * (flux.convection + flux.boiling));
}

template class KettleModel<double>;
template class KettleModel<Dual8>;

}  // namespace kettlecast
