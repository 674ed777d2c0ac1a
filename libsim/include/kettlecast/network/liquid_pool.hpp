#pragma once

#include "kettlecast/base/constants.hpp"
#include "kettlecast/network/thick_liquids.hpp"
#include "kettlecast/numerics/dual.hpp"
#include "kettlecast/properties/mixture.hpp"
#include "kettlecast/properties/oil.hpp"
#include "kettlecast/properties/solutes.hpp"
#include "kettlecast/properties/syrup.hpp"
#include "kettlecast/properties/water.hpp"
#include "kettlecast/transfer/fluid.hpp"

/// The liquid of a kettle as one well-mixed node: water, oil and dissolved or ground solids at
/// one temperature, described by masses and total enthalpy. Enthalpies are zero at 273.15 K.
namespace kettlecast {

/// Specific heat of dissolved or ground solids [J/(kg K)] and their density [kg/m3]: values of
/// carbohydrate at 50 degC. Source: Choi and Okos (1986), see properties/composition.hpp.
inline constexpr double solids_specific_heat = 1630.0;
inline constexpr double solids_density = 1583.0;

/// Densities [kg/m3] used for volumes and levels, at 60 degC (Source: water.hpp, oil.hpp). One
/// value each keeps the level an exact sum of masses; the change from 20 to 100 degC is 4 %.
inline constexpr double level_density_water = 983.2;
inline constexpr double level_density_oil = 896.0;

/// A temperature held inside the range in which the fits of film properties mean something [K]:
/// a dried-out kettle gets hotter than any liquid, and only has to stay finite.
template <class T>
T within_fits(const T& temperature) {
  constexpr double coldest = 253.15, hottest = 473.15;
  if (temperature < coldest) return T(coldest);
  return temperature > hottest ? T(hottest) : temperature;
}

/// Sugar beyond which syrup is taken to be no thicker [kg/kg]: the end of its viscosity data, from
/// which the fit rises without a limit.
inline constexpr double thickest_syrup = 0.85;

/// Contents of the liquid node.
template <class T>
struct LiquidPool {
  T water, oil, solids;  ///< [kg]
  T enthalpy;            ///< of liquid and co-moving metal [J]
  T metal_capacity;      ///< heat capacity of metal that moves with it [J/K]
  T sugar{}, salt{};     ///< dissolved, part of the solids [kg]
};

/// Volume of the liquid [m3], at level densities.
template <class T>
T pool_volume(const LiquidPool<T>& pool) {
  return pool.water / level_density_water + pool.oil / level_density_oil +
         pool.solids / solids_density;
}

/// Enthalpy of liquid water in a pool [J/kg]. Beyond the range of its fit, where only drops fall
/// into hot fat, the specific heat keeps its last value: the fit bends down and one enthalpy would
/// have several temperatures.
template <class T>
T pool_water_enthalpy(const T& temperature) {
  const T at = within_fits(temperature);
  return water::specific_enthalpy(at) + water::specific_heat(at) * (temperature - at);
}

/// Heat capacity of the liquid with its metal at a temperature [J/K].
template <class T>
T pool_heat_capacity(const LiquidPool<T>& pool, const T& temperature) {
  return pool.water * water::specific_heat(within_fits(temperature)) +
         pool.oil * oil::specific_heat(temperature) + pool.solids * solids_specific_heat +
         pool.metal_capacity;
}

/// Enthalpy of the liquid with its metal at a temperature [J]; zero at 273.15 K.
template <class T>
T pool_enthalpy(const LiquidPool<T>& pool, const T& temperature) {
  return pool.water * pool_water_enthalpy(temperature) +
         pool.oil * oil::specific_enthalpy(temperature) +
         (pool.solids * solids_specific_heat + pool.metal_capacity) *
             (temperature - constants::ice_point);
}

/// Temperature of the liquid [K]: the root of pool_enthalpy(T) = enthalpy.
///
/// Newton from constant specific heats, which are within 5 %; two steps leave less than 1e-9 K
/// between 0 and 200 degC.
template <class T>
T pool_temperature(const LiquidPool<T>& pool) {
  const T rough = pool.water * 4190.0 + pool.oil * 2050.0 + pool.solids * solids_specific_heat +
                  pool.metal_capacity;
  T temperature = constants::ice_point + pool.enthalpy / rough;
  for (int step = 0; step < 3; ++step) {
    temperature -=
        (pool_enthalpy(pool, temperature) - pool.enthalpy) / pool_heat_capacity(pool, temperature);
  }
  return temperature;
}

/// The root for plain numbers, and its slopes by the theorem of implicit functions.
template <std::size_t N>
Dual<N> pool_temperature(const LiquidPool<Dual<N>>& pool) {
  const LiquidPool<double> values{pool.water.value, pool.oil.value, pool.solids.value,
                                  pool.enthalpy.value, pool.metal_capacity.value};
  const double root = pool_temperature(values);
  Dual<N> temperature =
      (pool.enthalpy - pool_enthalpy(pool, Dual<N>(root))) / pool_heat_capacity(values, root);
  temperature.value = root;
  return temperature;
}

/// Volume share of water and what is dissolved in it in the liquid [-]; 1 for an empty pool.
template <class T>
T watery_share(const LiquidPool<T>& pool) {
  const T watery = pool.water / level_density_water + pool.solids / solids_density + 1e-12;
  return watery / (watery + pool.oil / level_density_oil);
}

/// Water activity of the liquid [-]; 1 without sugar and salt.
template <class T>
T pool_water_activity(const LiquidPool<T>& pool) {
  if (pool.sugar <= 0.0 && pool.salt <= 0.0) return T(1.0);
  return solutes::water_activity(pool.water, pool.sugar, pool.salt);
}

/// Mass share of sugar in water and sugar [-]; 0 for an empty pool.
template <class T>
T syrup_share(const LiquidPool<T>& pool) {
  return pool.sugar / (pool.water + pool.sugar + 1e-12);
}

/// Viscosity of the watery part of the liquid without thick liquids [Pa s]: water, or syrup.
template <class T>
T thin_viscosity(const LiquidPool<T>& pool, const T& temperature) {
  if (!(pool.sugar > 0.0)) return water::viscosity(temperature);
  const T share = syrup_share(pool);
  // Water and syrup are fits of their own; the ratio of syrups keeps that without sugar exact.
  return water::viscosity(temperature) *
         (sugar::viscosity(share < thickest_syrup ? share : T(thickest_syrup), temperature) /
          sugar::viscosity(T(0.0), temperature));
}

/// Viscosity of the watery part of the liquid, without free oil and pieces [Pa s].
template <class T>
T watery_viscosity(const LiquidPool<T>& pool, const ThickLiquids<T>& thick, const T& temperature) {
  const T at = within_fits(temperature);
  const T mass = pool.water + pool.solids + thick_fat(thick);
  return stirred_viscosity(thick, thin_viscosity(pool, at), mass, at);
}

/// Viscosity of the liquid without pieces at a temperature [Pa s].
template <class T>
T liquid_viscosity(const LiquidPool<T>& pool, const ThickLiquids<T>& thick, const T& temperature) {
  const T watery = watery_viscosity(pool, thick, temperature);
  const T free_oil = pool.oil - thick_fat(thick);
  if (!(free_oil > 0.0)) return watery;
  LiquidPool<T> parted = pool;
  parted.oil = free_oil;
  return mixed_viscosity(watery, oil::viscosity(within_fits(temperature)),
                         T(1.0 - watery_share(parted)));
}

/// Film properties of the liquid at a temperature, without pieces.
///
/// Conductivity and expansivity mix by volume, specific heat by mass, viscosity by the logarithm.
/// Sugar lowers the conductivity as in syrup; other solids are left out.
/// Source: mixture.hpp, syrup.hpp, thick_liquids.hpp. Range: 0 to 160 degC with water, to 200 degC
/// for oil alone.
///
/// @param pool                contents of the liquid
/// @param thick               thick liquids among them
/// @param liquid_temperature  [K]
template <class T>
Fluid<T> film_properties(const LiquidPool<T>& pool, const ThickLiquids<T>& thick,
                         const T& liquid_temperature) {
  const T temperature = within_fits(liquid_temperature);
  const T share = watery_share(pool);
  const T rest = 1.0 - share;
  const T sweet = syrup_share(pool);
  const T watery = sugar::density(sweet, temperature);
  const T density = share * watery + rest * oil::density(temperature);
  const T water_mass = share * watery / density;
  const T heat = sweet * solids_specific_heat + (1.0 - sweet) * water::specific_heat(temperature);
  const T conductivity =
      water::conductivity(temperature) *
      (sugar::conductivity(sweet, temperature) / sugar::conductivity(T(0.0), temperature));
  return {density, water_mass * heat + (1.0 - water_mass) * oil::specific_heat(temperature),
          share * conductivity + rest * oil::conductivity(temperature),
          liquid_viscosity(pool, thick, temperature),
          share * water::expansivity(temperature) + rest * oil::expansivity(temperature)};
}

/// The same without thick liquids.
template <class T>
Fluid<T> film_properties(const LiquidPool<T>& pool, const T& liquid_temperature) {
  return film_properties(pool, ThickLiquids<T>{}, liquid_temperature);
}

}  // namespace kettlecast
