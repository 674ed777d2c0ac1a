#pragma once

namespace kettlecast {

/// Thermal properties of a metal, taken as constant over 300-500 K.
///
/// Source: Incropera & DeWitt, Fundamentals of Heat and Mass Transfer, Table A.1: density at 300 K,
///         the rest at 400 K. The aluminium row was read; the two steels are from memory and agree
///         with data sheets of AISI 304 (500 J/(kg K) over 0-100 degC, 16.2 W/(m K) at 100 degC).
/// Range:  300-500 K; specific heat moves by up to 10 %, conductivity by up to 12 % over it.
struct Metal {
  double density;        ///< [kg/m3]
  double specific_heat;  ///< [J/(kg K)]
  double conductivity;   ///< [W/(m K)]
};

/// AISI 304.
inline constexpr Metal stainless_steel{7900.0, 515.0, 16.6};
/// Plain carbon steel.
inline constexpr Metal carbon_steel{7854.0, 487.0, 56.7};
/// Pure aluminium; casting alloys conduct a quarter less.
inline constexpr Metal aluminium{2702.0, 949.0, 240.0};

}  // namespace kettlecast
