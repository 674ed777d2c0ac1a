#pragma once

#include <array>
#include <vector>

#include "kettlecast/kettle/films.hpp"
#include "kettlecast/kettle/model.hpp"
#include "kettlecast/network/liquid_pool.hpp"
#include "kettlecast/properties/metal.hpp"
#include "kettlecast/transfer/fluid.hpp"

/// Shared by the sources of the kettle model; not public.
namespace kettlecast {

/// Rates being added up during one evaluation, with what several steps share.
template <class T>
struct KettleModel<T>::Flows {
  std::vector<T>& rate;
  const Scene<T>& scene;
  Fluid<T> fluid;                ///< the liquid, thickened by its pieces
  T bulk_viscosity;              ///< of the liquid without pieces [Pa s]
  T water_presence;              ///< 1: enough water to evaporate freely, 0: none [-]
  T layering_heat = T(0.0);      ///< heat that parts the liquid into layers [W]
  std::array<T, 6> node_heat{};  ///< into elements .. dry wall [W], by slot

  /// What drives the film at a surface of the given temperature [K].
  Stirring<T> stirring(const Inputs& inputs, const T& surface) const {
    return {inputs.agitator_speed, surface - scene.lower_temperature,
            bulk_viscosity / liquid_viscosity(scene.pool, scene.thick, surface)};
  }
  void between(std::size_t from, std::size_t to, const T& heat_flow) {
    node_heat[from] -= heat_flow;
    node_heat[to] += heat_flow;
  }
  void to_room(std::size_t from, const T& heat_flow) {
    node_heat[from] -= heat_flow;
    rate[slot::lost_energy] += heat_flow;
  }
  void to_liquid(std::size_t from, const T& heat_flow) {
    node_heat[from] -= heat_flow;
    rate[slot::liquid_enthalpy] += heat_flow;
  }
  /// From an enthalpy slot of the product to the room.
  void product_to_room(std::size_t enthalpy, const T& heat_flow) {
    rate[enthalpy] -= heat_flow;
    rate[slot::lost_energy] += heat_flow;
  }
  /// Vapour leaves a mass and an enthalpy slot of the product.
  void evaporate(std::size_t mass, std::size_t enthalpy, const T& flow, const T& temperature) {
    const T heat_flow = flow * (pool_water_enthalpy(temperature) +
                                water::latent_heat(within_fits(temperature)));
    rate[mass] -= flow;
    rate[enthalpy] -= heat_flow;
    rate[slot::vapour_mass] += flow;
    rate[slot::vapour_energy] += heat_flow;
  }
};

inline const Metal& metal(MetalKind kind) {
  switch (kind) {
    case MetalKind::stainless_steel:
      return stainless_steel;
    case MetalKind::carbon_steel:
      return carbon_steel;
    default:
      return aluminium;
  }
}

}  // namespace kettlecast
