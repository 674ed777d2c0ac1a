#pragma once

/// Shape of an agitator, as handbooks tell them apart.
///
/// Source: names of Paul, Atiemo-Obeng & Kresta, Handbook of Industrial Mixing (2004).
/// Range:  one agitator on a centred shaft.
namespace kettlecast {

/// Shape of an agitator; correlations print their constants by it.
enum class Impeller {
  anchor,
  paddle,           ///< two flat blades
  helical_ribbon,   ///< one or two ribbons near the wall
  disc_turbine,     ///< six flat blades on a disc
  flat_turbine,     ///< four flat blades
  pitched_turbine,  ///< four blades at 45 degrees
  hydrofoil,        ///< three narrow profiled blades
  propeller         ///< three blades, pitch as long as the diameter
};

/// Name of a shape, for messages.
inline const char* name_of(Impeller impeller) {
  switch (impeller) {
    case Impeller::anchor:
      return "anchor";
    case Impeller::paddle:
      return "paddle";
    case Impeller::helical_ribbon:
      return "helical_ribbon";
    case Impeller::disc_turbine:
      return "disc_turbine";
    case Impeller::flat_turbine:
      return "flat_turbine";
    case Impeller::pitched_turbine:
      return "pitched_turbine";
    case Impeller::hydrofoil:
      return "hydrofoil";
    default:
      return "propeller";
  }
}

}  // namespace kettlecast
