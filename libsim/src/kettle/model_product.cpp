// Heat and water in the product: pieces, free surface, boiling, juice, pours; and the sensors.

#include <cmath>

#include "flows.hpp"
#include "kettlecast/base/constants.hpp"
#include "kettlecast/kettle/films.hpp"
#include "kettlecast/numerics/dual.hpp"
#include "kettlecast/numerics/smooth.hpp"
#include "kettlecast/properties/composition.hpp"

namespace kettlecast {
namespace {

// Time in which superheated product boils down to its boiling point [s], and the superheat over
// which boiling sets in [K]. Real product boils within a fraction of a kelvin of saturation; both
// only need to be small against what a probe can show.
constexpr double boiling_time = 1.0;
constexpr double boiling_onset = 0.5;

// Water per mass of food below which pieces dry up [kg/kg].
constexpr double last_moisture = 0.02;

// A lid is one more sheet in the way of convection and radiation, which halves them; what passes
// as vapour is a fitted coefficient. Source: one radiation shield of equal emissivity halves the
// exchange (Incropera, Fundamentals of Heat and Mass Transfer, radiation shields; from memory).
constexpr double lid_share = 0.5;

// Rate at which bubbles mix the layers per kelvin that the lower one is superheated [1/(K s)]: fast
// against anything a probe can show, no source.
constexpr double bubble_mixing = 0.5;

// Depth of product below which layers mix as if it were this deep [m].
constexpr double least_depth = 5e-3;

// Juice starts to flow where plant cells soften and flows fully when cooked [K]: vegetables
// soften between 60 and 90 degC, common practice, no source.
constexpr double juice_onset = 333.15, juice_full = 363.15;

/// 1: pieces wet enough to evaporate freely, 0: dried up [-].
template <class T>
T moisture(const PieceScene<T>& piece) {
  if (!(piece.water_per_mass > 0.0)) return T(0.0);
  return piece.water_per_mass / (piece.water_per_mass + last_moisture);
}

/// One kilogram of a liquid food.
template <class T>
LiquidPool<T> kilogram_of(const Food& food) {
  const auto& composition = food.composition;
  const double rest = 1.0 - composition.water - composition.fat;
  return {T(composition.water), T(composition.fat), T(rest), T(0.0), T(0.0)};
}

/// 0 below zero, x above, joined by a parabola over `width`; exactly zero where nothing flows.
template <class T>
T ramp(const T& x, double width) {
  if (x <= 0.0) return T(0.0);
  return x < width ? T(x * x / (2.0 * width)) : T(x - 0.5 * width);
}

}  // namespace

/// Film between the pieces of a class and the liquid [W/(m2 K)]. It is the liquid between pieces;
/// they thicken what flows past a wall. Those that swim and those in a heap have fitted factors of
/// their own.
template <class T>
T KettleModel<T>::piece_film(const Inputs& inputs, const Flows& flows, std::size_t i,
                             const T& coating) const {
  const auto& scene = flows.scene;
  const auto& shells = pieces_[i].shells;
  Fluid<T> fluid = flows.fluid;
  fluid.viscosity = flows.bulk_viscosity;
  const T difference = scene.liquid_temperature - scene.pieces[i].temperature[shells.count - 1];
  const auto film = [&](double swimming) {
    return piece_film_coefficient(
        kettle_, fluid, {inputs.agitator_speed, T(swimming), coating, difference}, shells.size);
  };
  T mean(0.0);
  if (scene.swimming > 0.0) {
    mean += scene.swimming * coefficient(Coefficient::piece_film_factor) * film(1.0);
  }
  if (scene.swimming < 1.0) {
    mean += (1.0 - scene.swimming) * coefficient(Coefficient::piece_coating_factor) * film(0.0);
  }
  return mean;
}

template <class T>
void KettleModel<T>::liquid_to_pieces(const Inputs& inputs, Flows& flows) const {
  const auto& scene = flows.scene;
  T surface(1e-9);
  for (std::size_t i = 0; i < pieces_.size(); ++i) {
    surface += scene.pieces[i].poured * pieces_[i].shells.area;
  }
  const T coating = scene.liquid_volume / surface;
  for (std::size_t i = 0; i < pieces_.size(); ++i) {
    const auto& piece = scene.pieces[i];
    const std::size_t outer = pieces_[i].shells.count - 1;
    const T film = piece_film(inputs, flows, i, coating);
    const T inside = pieces_[i].shells.surface_resistance /
                     shell_conductivity(pieces_[i].shells, piece.temperature[outer]);
    const T heat_flow = piece.poured * pieces_[i].shells.area * scene.immersion *
                        (scene.liquid_temperature - piece.temperature[outer]) /
                        (1.0 / film + inside);
    flows.rate[slot::liquid_enthalpy] -= heat_flow;
    flows.rate[layout_.pieces[i].enthalpy + outer] += heat_flow;
  }
}

template <class T>
void KettleModel<T>::within_pieces(Flows& flows) const {
  for (std::size_t i = 0; i < pieces_.size(); ++i) {
    const auto& piece = flows.scene.pieces[i];
    const auto& shells = pieces_[i].shells;
    for (std::size_t k = 0; k + 1 < shells.count; ++k) {
      const T conductivity = 0.5 * (shell_conductivity(shells, piece.temperature[k]) +
                                    shell_conductivity(shells, piece.temperature[k + 1]));
      const T heat_flow = shells.links[k] * conductivity * piece.poured *
                          (piece.temperature[k + 1] - piece.temperature[k]);
      flows.rate[layout_.pieces[i].enthalpy + k] += heat_flow;
      flows.rate[layout_.pieces[i].enthalpy + k + 1] -= heat_flow;
    }
  }
}

/// Vapour leaves the surface of pieces; water from within follows it outwards with its heat.
template <class T>
void KettleModel<T>::evaporate_piece(std::size_t i, const T& flow, Flows& flows) const {
  const auto& piece = flows.scene.pieces[i];
  const auto& slots = layout_.pieces[i];
  const std::size_t outer = pieces_[i].shells.count - 1;
  for (std::size_t k = 0; k < outer; ++k) {
    const T follows = flow / static_cast<double>(pieces_[i].shells.count) *
                      shell_water_enthalpy(pieces_[i].shells, piece.temperature[k]);
    flows.rate[slots.enthalpy + k] -= follows;
    flows.rate[slots.enthalpy + outer] += follows;
  }
  flows.evaporate(slots.water, slots.enthalpy + outer, flow, piece.temperature[outer]);
}

/// Convection, radiation and evaporation from the free surface, shared between the liquid and
/// the pieces that look out of it.
template <class T>
void KettleModel<T>::leave_surface(const Inputs& inputs, Flows& flows) const {
  const auto& scene = flows.scene;
  const FreeSurface<T> surface{scene.product_temperature, scene.water_activity,
                               inputs.agitator_speed};
  const SurfaceLoss<T> loss = surface_loss(kettle_, surface, room_temperature());
  const T factor = coefficient(Coefficient::evaporation_factor);
  const T& area = scene.surface_area;
  const double sheet = inputs.cover == Cover::lid ? lid_share : 1.0;
  const T dry = area * sheet * (factor * loss.convection + loss.radiation);
  const T passing = inputs.cover == Cover::open  ? T(1.0)
                    : inputs.cover == Cover::lid ? coefficient(Coefficient::evaporation_lid_factor)
                                                 : T(0.0);
  // Only the watery share of the surface evaporates: fat covers the rest, and pieces take the
  // share of the surface that they take of the volume (Delesse's principle).
  constexpr double drop = 1e-9;  // [m3], so that a heap without any liquid dries as one with a drop
  const T liquid_share = (scene.liquid_volume + drop) /
                         (scene.liquid_volume + scene.swimming * scene.piece_volume + drop);
  const T vapour = area * passing * factor * watery_share(scene.pool) * liquid_share * loss.vapour;
  const T from_liquid = scene.immersion * flows.water_presence * vapour;
  flows.product_to_room(slot::liquid_enthalpy, scene.immersion * dry);
  flows.evaporate(slot::water, slot::liquid_enthalpy, from_liquid, scene.upper_temperature);
  flows.layering_heat +=
      (scene.immersion * dry + from_liquid * water::latent_heat(scene.upper_temperature)) /
      (1.0 - lower_share);
  for (std::size_t i = 0; i < pieces_.size(); ++i) {
    const auto& piece = scene.pieces[i];
    const auto& slots = layout_.pieces[i];
    const std::size_t outer = pieces_[i].shells.count - 1;
    const T share = (1.0 - scene.immersion) * piece.share;
    const T moist = moisture(piece);
    flows.product_to_room(slots.enthalpy + outer, share * dry);
    evaporate_piece(i, T(share * moist * vapour), flows);
  }
}

/// Liquid and wet surfaces of pieces hotter than the boiling point boil down to it.
///
///     dm/dt = -w m / ((w + m) t),   m = C dT / h_fg
///
/// C dT is the heat that the liquid holds above its boiling point, m what it could evaporate; where
/// there is less water w than that, in hot fat, it is the water that is gone after the time t.
template <class T>
void KettleModel<T>::boil_off(Flows& flows) const {
  const auto& scene = flows.scene;
  const T excess = ramp(T(scene.liquid_temperature - scene.boiling_point), boiling_onset);
  const T latent = water::latent_heat(scene.boiling_point);
  const T capacity = pool_heat_capacity(scene.pool, scene.liquid_temperature);
  const T water = scene.pool.water, driven = capacity * excess / latent;
  if (water > 0.0 && driven > 0.0) {
    flows.evaporate(slot::water, slot::liquid_enthalpy,
                    T(water * driven / ((water + driven) * boiling_time)),
                    scene.liquid_temperature);
  }
  for (std::size_t i = 0; i < pieces_.size(); ++i) {
    const auto& piece = scene.pieces[i];
    const std::size_t outer = pieces_[i].shells.count - 1;
    const T hot = ramp(T(piece.temperature[outer] - boiling_point_), boiling_onset);
    const T moist = moisture(piece);
    const T shell_capacity = piece.poured * pieces_[i].shells.freezing.unfrozen_specific_heat /
                             static_cast<double>(pieces_[i].shells.count);
    evaporate_piece(i, T(moist * shell_capacity * hot / (boiling_time * latent)), flows);
  }
}

/// Cooked pieces give up their free juice to the liquid, with the heat it holds.
template <class T>
void KettleModel<T>::release_juice(Flows& flows) const {
  for (std::size_t i = 0; i < pieces_.size(); ++i) {
    const auto& piece = flows.scene.pieces[i];
    const auto& slots = layout_.pieces[i];
    const T kept = pieces_[i].shells.water_share * (1.0 - pieces_[i].shells.free_juice);
    const T free = ramp(T(piece.water_per_mass - kept), last_moisture);
    const T cooked =
        smooth_step(T((piece.mean_temperature - juice_onset) / (juice_full - juice_onset)));
    const T flow = coefficient(Coefficient::juice_rate) * cooked * free * piece.poured;
    flows.rate[slots.water] -= flow;
    flows.rate[slot::water] += flow;
    for (std::size_t k = 0; k < pieces_[i].shells.count; ++k) {
      const T heat_flow = flow / static_cast<double>(pieces_[i].shells.count) *
                          shell_water_enthalpy(pieces_[i].shells, piece.temperature[k]);
      flows.rate[slots.enthalpy + k] -= heat_flow;
      flows.rate[slot::liquid_enthalpy] += heat_flow;
    }
  }
}

/// The work of the agitator ends as heat in what it stirs. Power numbers hold for product as deep
/// as the kettle is wide; blades that are less deep in it have less to push.
template <class T>
void KettleModel<T>::stir(const Inputs& inputs, Flows& flows) const {
  const auto& scene = flows.scene;
  const T depth = scene.level / kettle_.diameter;
  const T power = coefficient(Coefficient::agitator_power_factor) * scene.coverage *
                  saturating(depth) * agitator_power(kettle_, flows.fluid, inputs.agitator_speed);
  flows.rate[slot::stirring_energy] += power;
  flows.rate[slot::liquid_enthalpy] += scene.immersion * power;
  for (std::size_t i = 0; i < pieces_.size(); ++i) {
    const std::size_t outer = layout_.pieces[i].enthalpy + pieces_[i].shells.count - 1;
    flows.rate[outer] += (1.0 - scene.immersion) * scene.pieces[i].share * power;
  }
}

template <class T>
void KettleModel<T>::thicken(Flows& flows) const {
  for (std::size_t i = 0; i < layout_.thick.size(); ++i) {
    const auto& part = flows.scene.thick.parts[i];
    flows.rate[layout_.thick[i].thickened] +=
        part.mass * thickening_speed(*part.liquid, flows.scene.liquid_temperature, part.thickened);
  }
}

/// Adds a mass (or a mass per time) of an addition to a state (or to its rates).
template <class T>
void KettleModel<T>::pour_on(std::size_t addition, double stated, std::vector<T>& into) const {
  const Addition& what = additions_[addition];
  const T mass = stated * changes_[addition].mass_factor;
  into[slot::poured_mass] += mass;
  if (what.shape == Shape::none) {
    const LiquidPool<T> pool = kilogram_of<T>(what.food);
    const T enthalpy = pool_enthalpy(pool, poured_temperature(addition));
    into[slot::water] += mass * pool.water;
    into[slot::oil] += mass * pool.oil;
    into[slot::solids] += mass * pool.solids;
    into[slot::sugar] += mass * what.food.sugar;
    into[slot::salt] += mass * what.food.salt;
    for (const auto& thick : layout_.thick) {
      if (thick.addition == addition) into[thick.poured] += mass;
    }
    into[slot::liquid_enthalpy] += mass * enthalpy;
    into[slot::poured_energy] += mass * enthalpy;
    return;
  }
  for (std::size_t i = 0; i < pieces_.size(); ++i) {
    if (pieces_[i].addition == addition) pour_pieces(i, mass * pieces_[i].mass_share, into);
  }
}

template <class T>
void KettleModel<T>::pour_pieces(std::size_t i, const T& mass, std::vector<T>& into) const {
  const auto& shells = pieces_[i].shells;
  const auto& slots = layout_.pieces[i];
  const T enthalpy = shells.freezing.specific_enthalpy(poured_temperature(pieces_[i].addition));
  into[slots.poured] += mass;
  into[slots.water] += mass * shells.water_share;
  for (std::size_t k = 0; k < shells.count; ++k) {
    into[slots.enthalpy + k] += mass * enthalpy / static_cast<double>(shells.count);
  }
  into[slot::poured_energy] += mass * enthalpy;
}

template <class T>
void KettleModel<T>::pour(std::size_t addition, double mass, std::vector<T>& x) {
  const T wall_before = scene_at(x).wet_area;
  const T liquid_before = pool_heat_capacity(scene_.pool, scene_.liquid_temperature);
  pour_on(addition, mass, x);
  // Metal that comes under the product brings its own heat along.
  const T wall = scene_at(x).wet_area;
  x[slot::wall_wet] += (wall - wall_before) / wall * (x[slot::wall_dry] - x[slot::wall_wet]);
  // The heat that parts the layers is that of the liquid there was.
  x[slot::layering] *= liquid_before / pool_heat_capacity(scene_.pool, scene_.liquid_temperature);
}

/// Heat from below and losses above part the liquid into layers; turnover, stirring and bubbles mix
/// them, and what is poured shares in the heat that parts them.
/// Only the difference is a state: the books see one liquid.
template <class T>
void KettleModel<T>::mix_layers(const Inputs& inputs, const std::vector<T>& x, Flows& flows) const {
  const T depth = flows.scene.level + least_depth;
  const T superheat =
      ramp(T(flows.scene.lower_temperature - flows.scene.boiling_point), boiling_onset);
  const T rate = coefficient(Coefficient::liquid_turnover) / depth +
                 inputs.agitator_speed / coefficient(Coefficient::liquid_mixing_turns) +
                 flows.water_presence * superheat * bubble_mixing;
  const T capacity = pool_heat_capacity(flows.scene.pool, flows.scene.liquid_temperature);
  T poured(0.0);  // heat capacity per time [W/K]
  for (std::size_t i = 0; i < inputs.pour_rate.size(); ++i) {
    if (additions_[i].shape != Shape::none) continue;
    poured += inputs.pour_rate[i] * changes_[i].mass_factor *
              pool_heat_capacity(kilogram_of<T>(additions_[i].food), poured_temperature(i));
  }
  flows.rate[slot::layering] +=
      flows.layering_heat / capacity - (rate + poured / capacity) * x[slot::layering];
}

template <class T>
T KettleModel<T>::floor_sensor_temperature(const std::vector<T>& x) const {
  const T position = coefficient(Coefficient::floor_sensor_position);
  return position * x[slot::floor_lower] + (1.0 - position) * x[slot::floor_upper];
}

template <class T>
void KettleModel<T>::read_sensors(const std::vector<T>& x, Flows& flows) const {
  using std::exp;
  flows.rate[slot::floor_reading] +=
      (floor_sensor_temperature(x) + coefficient(Coefficient::floor_sensor_offset) -
       x[slot::floor_reading]) /
      coefficient(Coefficient::floor_sensor_lag);
  const T covered = 1.0 - exp(-flows.scene.level / coefficient(Coefficient::probe_height));
  const T felt = covered * flows.scene.product_temperature + (1.0 - covered) * x[slot::wall_dry];
  flows.rate[slot::probe_reading] +=
      (felt + coefficient(Coefficient::probe_offset) - x[slot::probe_reading]) /
      coefficient(Coefficient::probe_lag);
  flows.rate[slot::core_reading] +=
      (flows.scene.core_temperature + coefficient(Coefficient::probe_offset) -
       x[slot::core_reading]) /
      coefficient(Coefficient::probe_lag);
}

template class KettleModel<double>;
template class KettleModel<Dual8>;

}  // namespace kettlecast
