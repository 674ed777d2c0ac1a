#pragma once

#include "kettlecast/base/constants.hpp"
#include "kettlecast/properties/water.hpp"

/// Saturated steam of a jacket, by the pressure that its gauge shows. Pressures in Pa.
///
/// Up to 180 degC, 9.0 bar of gauge pressure at sea level. Saturation is IAPWS-IF97 itself. The
/// fits of water.hpp were made for 0-160 degC; used to 180 degC they are off from IAPWS-IF97 by at
/// most 1.3e-5 (latent heat), 1.0e-4 (density of steam), and, for the film of condensate, 3.8e-4
/// (density), 0.42 % (specific heat), 0.78 % (conductivity) and 0.10 % (viscosity). A film is
/// colder than its steam, so these are the worst cases of a jacket at 9 bar.
namespace kettlecast::steam {

/// Temperature at which steam condenses in a jacket [K].
///
///     T = T_sat(p_gauge + p_ambient)
///
/// Source: IAPWS R7-97(2012), equation 31.
/// Range:  gauge plus ambient pressure 612 Pa to 22 MPa; a gauge reads what is above the ambient
///         pressure, so the same reading is 3.6 K colder at 2000 m than at the sea for 1 bar.
///
/// @param gauge    pressure above the ambient one, negative for a vacuum [Pa]
/// @param ambient  pressure of the room [Pa]
template <class T>
T temperature(const T& gauge, double ambient) {
  return water::saturation_temperature(T(gauge + ambient));
}

/// Latent heat of steam in a jacket [J/kg].
///
/// Source: water.hpp, fit to IAPWS-IF97, largest relative error 1.3e-5.
/// Range:  0-180 degC.
template <class T>
T latent_heat(const T& gauge, double ambient) {
  return water::latent_heat(temperature(gauge, ambient));
}

/// Density of steam in a jacket [kg/m3].
///
/// Source: water.hpp, fit to IAPWS-IF97, largest relative error 1.0e-4.
/// Range:  0-180 degC.
template <class T>
T density(const T& gauge, double ambient) {
  return water::vapour_density(temperature(gauge, ambient));
}

/// Temperature at which steam begins to condense out of a mixture with air [K].
///
///     T = T_sat((1 - y) p)
///
/// Source: Dalton's law of partial pressures with IAPWS R7-97(2012), equation 31.
/// Range:  (1 - y) p from 612 Pa; ideal mixture, below 1 MPa.
/// @note Caution: this is the dew point of the bulk. At the film air gathers and the steam is
///       colder still; transfer/steam_jacket.hpp has a factor for that.
///
/// @param pressure      absolute, of the mixture p [Pa]
/// @param air_fraction  mole (volume) fraction of air y, 0..1 [-]
template <class T>
T temperature_with_air(const T& pressure, const T& air_fraction) {
  return water::saturation_temperature(T((1.0 - air_fraction) * pressure));
}

/// Mass fraction of air in steam [-] from its mole fraction.
///
///     w = y M_a / (y M_a + (1 - y) M_w)
///
/// Source: definition; M_a = 28.9644 g/mol, US Standard Atmosphere 1976.
/// Range:  0..1.
template <class T>
T air_mass_fraction(const T& air_fraction) {
  constexpr double air = constants::molar_gas / constants::dry_air_gas;  // M_a [kg/mol]
  return air_fraction * air /
         (air_fraction * air + (1.0 - air_fraction) * constants::water_molar_mass);
}

}  // namespace kettlecast::steam
