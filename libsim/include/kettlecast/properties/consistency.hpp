#pragma once

#include <cmath>
#include <string>

#include "kettlecast/base/record.hpp"
#include "kettlecast/numerics/smooth.hpp"
#include "kettlecast/properties/arrhenius.hpp"
#include "kettlecast/properties/water.hpp"

/// Viscosity of thick liquids: sauces, purees, porridge, and what thickens while it cooks.
namespace kettlecast {

/// How thick a liquid is, and how it thickens. The default is like water.
struct Consistency {
  double consistency = 0.0;               ///< K of the power law; 0: like water [Pa s^n]
  double flow_index = 1.0;                ///< n of the power law [-]
  double reference_temperature = 293.15;  ///< at which K holds [K]
  double activation_energy = 0.0;         ///< of its fall with temperature [J/mol]
  double reference_solids = 0.0;          ///< dry share at which K holds [kg/kg]
  double solids_exponent = 0.0;           ///< rise of ln K per dry share [-]
  double thickens_from = 333.15;          ///< below it nothing thickens [K]
  double thickens_until = 343.15;         ///< from it on it thickens at full rate [K]
  double thickening_factor = 1.0;         ///< K is so many times higher when fully thickened [-]
  double thickening_rate = 0.0;  ///< share of the rest that thickens per time, at full rate [1/s]
  std::string source;            ///< where the numbers come from

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("consistency", &Consistency::consistency);
    visit("flow_index", &Consistency::flow_index);
    visit("reference_temperature", &Consistency::reference_temperature);
    visit("activation_energy", &Consistency::activation_energy);
    visit("reference_solids", &Consistency::reference_solids);
    visit("solids_exponent", &Consistency::solids_exponent);
    visit("thickens_from", &Consistency::thickens_from);
    visit("thickens_until", &Consistency::thickens_until);
    visit("thickening_factor", &Consistency::thickening_factor);
    visit("thickening_rate", &Consistency::thickening_rate);
    visit("source", &Consistency::source);
  }
  bool operator==(const Consistency& other) const { return equal_records(*this, other); }
};

/// Throws InvalidArgument, naming the key and the allowed range, if no liquid is like this.
void check(const Consistency& consistency);

/// Shear rate below which a liquid no longer gets thicker [1/s]. Common practice, no source: it
/// keeps the viscosity finite at rest, where a yield stress would hold the liquid anyway.
inline constexpr double least_shear_rate = 0.1;

/// Viscosity that a liquid shows at a shear rate [Pa s].
///
///     mu = K exp(E/R_g (1/T - 1/T_r)) exp(B (w - w_r)) F^x g^(n-1),   g^2 = shear^2 + 0.1^2
///
/// With K = 0 the viscosity of water stands for K, its temperature and g; else mu blends into that
/// of water, below which it does not fall: (mu^4 + mu_w^4)^(1/4).
///
/// Source: Ostwald-de Waele power law with Arrhenius' term and an exponential in the solids, as in
///         Harper & El Sahrigi, J. Food Sci. 30 (1965) 470, and Steffe, Rheological Methods in Food
///         Process Engineering (1996), section 2.8 (from memory). F^x between raw and thickened:
///         ours, logarithms as in mixed_viscosity.
/// Range:  that of the data behind the record; no yield stress, n does not change while it
///         thickens. 253 to 473 K.
///
/// @param liquid       K, n, E, T_r, B, w_r, F
/// @param temperature  T [K]
/// @param shear_rate   >= 0 [1/s]
/// @param thickened    share x that has thickened, 0 to 1 [-]
/// @param dry_share    mass share of dry matter w [kg/kg]
template <class T>
T apparent_viscosity(const Consistency& liquid, const T& temperature, const T& shear_rate,
                     const T& thickened, const T& dry_share) {
  using std::exp;
  using std::log;
  T exponent = liquid.solids_exponent * (dry_share - liquid.reference_solids) +
               std::log(liquid.thickening_factor) * thickened;
  if (liquid.consistency == 0.0) return water::viscosity(temperature) * exp(exponent);
  exponent +=
      arrhenius_exponent(liquid.activation_energy, liquid.reference_temperature, temperature);
  const T square = shear_rate * shear_rate + least_shear_rate * least_shear_rate;
  const T lawful =
      liquid.consistency * exp(exponent + 0.5 * (liquid.flow_index - 1.0) * log(square));
  // A power law falls without an end; no watery liquid gets thinner than its water.
  return blend(lawful, water::viscosity(temperature), 4.0);
}

/// Growth of the thickened share [1/s]; it never falls, also not in the cold.
///
///     dx/dt = r s((T - T_from) / (T_until - T_from)) (1 - x)
///
/// Source: first order, as starch and egg proteins are commonly described (Lund, Crit. Rev. Food
///         Sci. Nutr. 20 (1984) 249, from memory); s rises smoothly from 0 to 1: ours.
/// Range:  0 <= x <= 1.
///
/// @param liquid       r, T_from, T_until
/// @param temperature  T [K]
/// @param thickened    share x that has thickened [-]
template <class T>
T thickening_speed(const Consistency& liquid, const T& temperature, const T& thickened) {
  const double width = liquid.thickens_until - liquid.thickens_from;
  const T heat = smooth_step(T((temperature - liquid.thickens_from) / width));
  return liquid.thickening_rate * heat * (1.0 - thickened);
}

}  // namespace kettlecast
