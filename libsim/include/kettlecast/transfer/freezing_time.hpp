#pragma once

#include "kettlecast/base/constants.hpp"
#include "kettlecast/properties/shape.hpp"

/// Times in which pieces freeze or thaw through. Heats are per volume.
namespace kettlecast {

/// A piece in a cold or warm fluid.
template <class T>
struct PieceInFluid {
  Shape shape;     ///< not `none`
  T size;          ///< thickness of a slab or diameter D [m]
  T film;          ///< h, with a package as of film_through_package [W/(m2 K)]
  T conductivity;  ///< k of the layer that grows: frozen to freeze, unfrozen to thaw [W/(m K)]
};

/// Weights of film and conduction in a time of freezing or thawing.
template <class T>
struct PhaseChangeFactors {
  T p;  ///< of the film [-]
  T r;  ///< of conduction [-]
};

/// Groups of a piece that freezes or thaws; Bi with the whole thickness or diameter.
template <class T>
struct PhaseChangeGroups {
  T plank;   ///< Pk, heat from start to freezing point over dH [-]
  T stefan;  ///< Ste, rho cp of the layer that grows times |Tf - Ta| over dH [-]
  T biot;    ///< Bi = h D / k [-]
};

/// Film coefficient seen through a package [W/(m2 K)].
///
///     1/h' = 1/h + x/k
///
/// Source: resistances in series.
/// Range:  package thin against the piece, no air gap.
///
/// @param film          h [W/(m2 K)]
/// @param thickness     x of the package [m]
/// @param conductivity  k of the package [W/(m K)]
template <class T>
T film_through_package(const T& film, const T& thickness, const T& conductivity) {
  return 1.0 / (1.0 / film + thickness / conductivity);
}

/// Time of a phase change by Plank's form [s].
///
///     t = dH / |Tf - Ta| (P D/h + R D^2/k)
///
/// Source: Plank (1913), in ASHRAE Handbook Refrigeration, Cooling and Freezing Times of Foods.
/// Range:  that of the factors.
///
/// @param piece       shape, size, film, conductivity
/// @param factors     P and R
/// @param heat        dH, latent heat or change of enthalpy [J/m3]
/// @param difference  |Tf - Ta|, freezing point to surroundings, > 0 [K]
template <class T>
T phase_change_time(const PieceInFluid<T>& piece, const PhaseChangeFactors<T>& factors,
                    const T& heat, const T& difference) {
  return heat / difference *
         (factors.p * piece.size / piece.film +
          factors.r * piece.size * piece.size / piece.conductivity);
}

/// Plank's factors: 1/2, 1/8 slab; 1/4, 1/16 long cylinder; 1/6, 1/24 sphere.
///
/// Source: Plank (1913), as in ASHRAE Refrigeration; exact for a piece at its freezing point with
///         no heat capacity.
/// Range:  latent heat alone: 20-40 % short where the piece starts warm or ends cold.
template <class T>
PhaseChangeFactors<T> plank_factors(Shape shape) {
  const double d = dimensions(shape);
  return {T(1.0 / (2.0 * d)), T(1.0 / (8.0 * d))};
}

/// Factors of Cleland & Earle for freezing to -10 degC at the centre.
///
///     slab:     P = 0.5072 + 0.2018 Pk + Ste (0.3224 Pk + 0.0105/Bi + 0.0681)
///               R = 0.1684 + Ste (0.2740 Pk - 0.0135)
///     cylinder: P = 0.3751 + 0.0999 Pk + Ste (0.4008 Pk + 0.0710/Bi - 0.5865)
///               R = 0.0133 + Ste (0.0415 Pk + 0.3957)
///     sphere:   P = 0.1084 + 0.0924 Pk + Ste (0.2310 Pk - 0.3114/Bi + 0.6739)
///               R = 0.0784 + Ste (0.0386 Pk - 0.1694)
///
/// dH from the freezing point to -10 degC.
/// Source: Cleland & Earle, J. Food Sci. 42 (1977) 1390 and 44 (1979) 958, in ASHRAE Refrigeration;
///         slab checked against a printed value, cylinder and sphere from memory.
/// Range:  0 <= Pk <= 0.55, 0.155 <= Ste <= 0.345, 0.5 <= Bi <= 22 (slab) or 4.5, 77 % water (from
///         memory). Accuracy stated: 3 % slab, 5 % cylinder and sphere; 10 % for other foods.
///         Against the heat equation up to 20 % long (cylinder, Bi 4.5) and 22 % short (sphere,
///         Bi 0.5).
template <class T>
PhaseChangeFactors<T> cleland_earle_factors(Shape shape, const PhaseChangeGroups<T>& groups) {
  const T &pk = groups.plank, &ste = groups.stefan, &bi = groups.biot;
  if (shape == Shape::slab) {
    return {0.5072 + 0.2018 * pk + ste * (0.3224 * pk + 0.0105 / bi + 0.0681),
            0.1684 + ste * (0.2740 * pk - 0.0135)};
  }
  if (shape == Shape::cylinder) {
    return {0.3751 + 0.0999 * pk + ste * (0.4008 * pk + 0.0710 / bi - 0.5865),
            0.0133 + ste * (0.0415 * pk + 0.3957)};
  }
  return {0.1084 + 0.0924 * pk + ste * (0.2310 * pk - 0.3114 / bi + 0.6739),
          0.0784 + ste * (0.0386 * pk - 0.1694)};
}

/// Factors for thawing to 0 degC at the centre.
///
///     P = (0.7754 + 2.2828 Ste Pk) / (2 d),   R = (0.4271 + 2.1220 Ste - 1.4847 Ste^2) / (8 d)
///
/// dH from -10 to 0 degC, d = 1 slab, 2 cylinder, 3 sphere.
/// Source: Cleland, Cleland, Earle & Byrne, Int. J. Refrig. 10 (1987) 32 (from memory).
/// Range:  0.6 <= Bi <= 57.3, 0.085 <= Ste <= 0.768, 0.065 <= Pk <= 0.272 (from memory). Accuracy
///         stated: about 10 %; against the heat equation 11 % short (sphere, Bi < 2) to 9 % long.
template <class T>
PhaseChangeFactors<T> thawing_factors(Shape shape, const PhaseChangeGroups<T>& groups) {
  const double d = dimensions(shape);
  const T& ste = groups.stefan;
  return {(0.7754 + 2.2828 * ste * groups.plank) / (2.0 * d),
          (0.4271 + ste * (2.1220 - 1.4847 * ste)) / (8.0 * d)};
}

/// Heats of a food for Pham's method.
template <class T>
struct FreezingHeats {
  T unfrozen;  ///< rho cp before freezing [J/(m3 K)]
  T frozen;    ///< rho cp after freezing [J/(m3 K)]
  T latent;    ///< rho L [J/m3]
};

/// Temperatures of a piece that is frozen.
template <class T>
struct FreezingSpan {
  T initial;       ///< Ti [K]
  T final_centre;  ///< Tc [K]
  T surroundings;  ///< Ta [K]
};

/// Mean freezing temperature of Pham's method [K].
///
///     Tfm = 1.8 + 0.263 Tc + 0.105 Ta   (degC)
///
/// Source: Pham, J. Food Technol. 21 (1986) 209 (from memory).
/// Range:  as pham_freezing_time.
template <class T>
T pham_mean_freezing_temperature(const FreezingSpan<T>& span) {
  constexpr double zero = constants::ice_point;
  return zero + 1.8 + 0.263 * (span.final_centre - zero) + 0.105 * (span.surroundings - zero);
}

/// Time in which a piece cools and freezes to a temperature of its centre, by Pham's method [s].
///
///     t = D / (2 d h) (dH1/dT1 + dH2/dT2) (1 + Bi/2),   Bi = h D / (2 k)
///     dH1 = Cu (Ti - Tfm),  dT1 = (Ti + Tfm)/2 - Ta,  dH2 = L + Cf (Tfm - Tc),  dT2 = Tfm - Ta
///
/// Source: Pham, J. Food Technol. 21 (1986) 209 (from memory).
/// Range:  Ti up to 40 degC, Ta -45 to -15 degC, 10 < h < 55 W/(m2 K), D up to 0.12 m, more than
///         55 % water. Accuracy stated: 5 to 10 %.
template <class T>
T pham_freezing_time(const PieceInFluid<T>& piece, const FreezingHeats<T>& heats,
                     const FreezingSpan<T>& span) {
  const T freezing = pham_mean_freezing_temperature(span);
  const T cooling = heats.unfrozen * (span.initial - freezing) /
                    (0.5 * (span.initial + freezing) - span.surroundings);
  const T solidifying = (heats.latent + heats.frozen * (freezing - span.final_centre)) /
                        (freezing - span.surroundings);
  return phase_change_time<T>(piece, plank_factors<T>(piece.shape), cooling + solidifying, T(1.0));
}

}  // namespace kettlecast
