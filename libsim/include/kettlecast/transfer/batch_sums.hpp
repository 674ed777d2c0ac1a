#pragma once

/// Heat that a batch takes, what boils off, what steam it costs, and what a cold addition does.
namespace kettlecast {

/// Heat to change the temperature of a mass [J]; negative for cooling.
///
///     Q = m cp (T - T_0)
///
/// Source: definition of the mean specific heat. Range: no change of phase.
///
/// @param mass           m [kg]
/// @param specific_heat  cp, mean over the range [J/(kg K)]
/// @param start          T_0 [K]
/// @param target         T [K]
template <class T>
T sensible_heat(const T& mass, const T& specific_heat, const T& start, const T& target) {
  return mass * specific_heat * (target - start);
}

/// Heat to boil off a share of a mass [J].
///
///     Q = m x h_fg
///
/// Source: definition of the latent heat. Range: 0 <= x <= 1.
///
/// @param mass         m [kg]
/// @param share        x [-]
/// @param latent_heat  h_fg [J/kg]
template <class T>
T boil_off_heat(const T& mass, const T& share, const T& latent_heat) {
  return mass * share * latent_heat;
}

/// Mass that a heat boils off, or steam that has to condense to give it [kg]; of a heat flow [W] in
/// kg/s.
///
///     m = Q / h_fg
///
/// Source: definition of the latent heat. Range: condensate leaves at saturation; h_fg > 0.
///
/// @param heat         Q [J], or heat flow [W]
/// @param latent_heat  h_fg [J/kg]
template <class T>
T mass_of_vapour(const T& heat, const T& latent_heat) {
  return heat / latent_heat;
}

/// Temperature of two parts after mixing without losses [K].
///
///     T = (C_1 T_1 + C_2 T_2) / (C_1 + C_2)
///
/// Source: heat balance. Range: no change of phase; constant specific heats.
///
/// @param capacity         C_1 of the batch, sum of m cp [J/K]
/// @param temperature      T_1 [K]
/// @param added_capacity   C_2 of the addition [J/K]
/// @param added_temperature  T_2 [K]
template <class T>
T mixing_temperature(const T& capacity, const T& temperature, const T& added_capacity,
                     const T& added_temperature) {
  return temperature +
         added_capacity / (capacity + added_capacity) * (added_temperature - temperature);
}

/// Rate at which a lumped body follows its surroundings [1/s]; its time constant is 1 over it.
///
///     b = h (A/V) / (rho cp)
///
/// Source: Incropera & DeWitt, section 5.1. Range: Biot number below 0.1, or a stirred content.
///
/// @param film_coefficient   h [W/(m2 K)]
/// @param surface_per_volume A/V; of slabs, cylinders, spheres see piece_film.hpp [1/m]
/// @param density            rho [kg/m3]
/// @param specific_heat      cp [J/(kg K)]
template <class T>
T lumped_rate(const T& film_coefficient, const T& surface_per_volume, const T& density,
              const T& specific_heat) {
  return film_coefficient * surface_per_volume / (density * specific_heat);
}

/// Jacketed surface per volume of a full hemispherical kettle [1/m].
///
///     A/V = 2 pi r^2 / (2/3 pi r^3) = 3 / r
///
/// Source: geometry; the free surface does not count. Range: r > 0.
///
/// @param radius  r [m]
template <class T>
T hemisphere_surface_per_volume(const T& radius) {
  return 3.0 / radius;
}

}  // namespace kettlecast
