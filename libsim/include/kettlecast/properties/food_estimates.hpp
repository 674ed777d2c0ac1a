#pragma once

#include <cmath>

#include "kettlecast/properties/freezing.hpp"

/// Other estimates of freezing foods than the one that the model uses (freezing.hpp), for comparing
/// and for working like the tables. Temperatures in K.
///
/// All stand in ASHRAE Handbook Refrigeration, chapter Thermal Properties of Foods. Its Table 3 was
/// computed with fibre counted twice, once within the total carbohydrate: its specific heats are up
/// to 2.3 % (above freezing) and 3.6 % (below) higher than those of the same food here.
namespace kettlecast {

/// Latent heat of fusion of ice in the equations and tables of the handbook [J/kg].
inline constexpr double handbook_fusion_heat = 333.6e3;

/// Latent heat of all water of a food, as tables state it [J/kg].
///
///     L = 334 kJ/kg x_w,   x_w mass fraction of water as given
///
/// Source: last column of Table 3 of the chapter, which it reproduces to 0.6 kJ/kg. More than a
/// food
///         gives up down to -40 degC, because bound water stays liquid.
inline double latent_heat(const Composition& composition) { return 334e3 * composition.water; }

/// Specific heat of unfrozen food without regard to temperature [J/(kg K)].
///
///     c = 4187 x_w + 1549 x_p + 1675 x_f + 1424 x_c + 837 x_a,   x_c with fibre
///
/// Source: Heldman & Singh, Food Process Engineering (1981) (from memory). Nearer to the averages
///         over 0-100 degC of older tables than Choi & Okos, who are 4 % above them for lean meat.
/// Range:  unfrozen food; for fat 12 % below butter in the tables.
inline double heldman_singh_specific_heat(const Composition& composition) {
  const Composition& x = composition;
  const double sum = 4187.0 * x.water + 1549.0 * x.protein + 1675.0 * x.fat +
                     1424.0 * (x.carbohydrate + x.fibre) + 837.0 * x.ash;
  return sum / (x.water + dry_fraction(x));
}

/// Mass of ice per mass of food from its water alone [kg/kg].
///
///     x_ice = 1.105 x_w / (1 + 0.7138 / ln(t_f - t + 1)),   t in degC, zero above t_f
///
/// Source: Tchigeov (1979), in the chapter.
/// Range:  -45 <= t <= t_f, -2 <= t_f <= -0.4 degC.
template <class T>
T tchigeov_ice_fraction(const Food& food, const T& temperature) {
  using std::log;
  if (temperature >= food.freezing_point) return T(0.0);
  const Composition& all = food.composition;
  const double water = all.water / (all.water + dry_fraction(all));
  const T depth = log(food.freezing_point - temperature + 1.0);
  return 1.105 * water * depth / (depth + 0.7138);
}

/// Specific heat and enthalpy of a food, steep below its freezing point and flat above.
///
///     t <  t_f:  c = a + b / t^2,   h = (t - t_r) (a + b / (t_r t)),   t_r = -40 degC
///     t >= t_f:  c = c_u,           h = h(t_f) + c_u (t - t_f)
///
/// The enthalpy is the integral of the specific heat, zero at t_r.
struct FreezingCurve {
  double unfrozen;        ///< c_u [J/(kg K)]
  double frozen;          ///< a, with all solutes in ice [J/(kg K)]
  double depression;      ///< b, heat of fusion times freezing point depression [J K/kg]
  double freezing_point;  ///< below 273.15 K, so that b / t^2 stays finite [K]

  /// Apparent specific heat [J/(kg K)].
  template <class T>
  T specific_heat(const T& temperature) const {
    if (temperature >= freezing_point) return T(unfrozen);
    const T t = temperature - constants::ice_point;
    return frozen + depression / (t * t);
  }

  /// Specific enthalpy, zero at -40 degC [J/kg].
  template <class T>
  T specific_enthalpy(const T& temperature) const {
    if (temperature < freezing_point) return below(temperature);
    return below(freezing_point) + unfrozen * (temperature - freezing_point);
  }

 private:
  template <class T>
  T below(const T& temperature) const {
    const double reference = -40.0;  // [degC]
    const T t = temperature - constants::ice_point;
    return (t - reference) * (frozen + depression / (reference * t));
  }
};

/// Chen's curve, from solids, water and freezing point alone.
///
///     c_u = 4.19 - 2.30 x_s - 0.628 x_s^3,   a = 1.55 + 1.26 x_s   [kJ/(kg K)],   b = -x_f L t_f
///
/// Source: Chen, J. Food Sci. 50 (1985) 1158 and 1163, in the chapter, with the molar mass of the
///         solutes from the freezing point.
/// Range:  -40 to 40 degC; best for enthalpies in Fricke & Becker, HVAC&R Res. 7 (2001) 311.
///
/// @param solids           everything but water x_s [kg/kg]
/// @param freezable_water  x_f, water less 0.4 times the protein [kg/kg]
/// @param freezing_point   t_f, below 273.15 K [K]
inline FreezingCurve chen_curve(double solids, double freezable_water, double freezing_point) {
  return {4190.0 - 2300.0 * solids - 628.0 * solids * solids * solids, 1550.0 + 1260.0 * solids,
          freezable_water * handbook_fusion_heat * (constants::ice_point - freezing_point),
          freezing_point};
}

/// Chen's curve of a food.
inline FreezingCurve chen_curve(const Food& food) {
  const FreezingFood model(food);
  const double dry = dry_fraction(food.composition);
  return chen_curve(dry / (food.composition.water + dry), model.freezable_water,
                    model.freezing_point);
}

/// Schwartzberg's curve, from the unfrozen specific heat and the freezing point depression.
///
///     a = c_u - (x_f + 0.8 e) D,   b = -x_f L t_f,   e = b M_w / (R T_0^2)
///
/// c_u unfrozen specific heat at t_f, D specific heat of water less that of ice at 0 degC, e moles
/// of solute times the molar mass of water, from the freezing point.
///
/// Source: Schwartzberg, J. Food Sci. 41 (1976) 152, in the chapter (from memory).
/// Range:  -40 to 0 degC; best for apparent specific heats in Fricke & Becker (2001).
inline FreezingCurve schwartzberg_curve(const Food& food) {
  const FreezingFood model(food);
  const double ice_point = constants::ice_point;
  const double depression =
      model.freezable_water * handbook_fusion_heat * (ice_point - model.freezing_point);
  const double solutes =
      depression * constants::water_molar_mass / (constants::molar_gas * ice_point * ice_point);
  const double difference =
      component::water.specific_heat(ice_point) - component::ice.specific_heat(ice_point);
  const double unfrozen = specific_heat(food.composition, model.freezing_point);
  return {unfrozen, unfrozen - (model.freezable_water + 0.8 * solutes) * difference, depression,
          model.freezing_point};
}

}  // namespace kettlecast
