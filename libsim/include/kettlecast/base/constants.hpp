#pragma once

/// Physical constants in SI units, each with its source.
namespace kettlecast::constants {

inline constexpr double pi = 3.14159265358979323846;
/// Natural logarithm of ten.
inline constexpr double ln10 = 2.302585092994045684;
/// 0 degC on the thermodynamic scale [K]. Source: SI brochure, 9th edition (2019), 2.3.1.
inline constexpr double ice_point = 273.15;
/// Standard gravity [m/s2]. Source: 3rd CGPM (1901).
inline constexpr double gravity = 9.80665;
/// Standard atmosphere [Pa]. Source: 10th CGPM (1954).
inline constexpr double atmosphere = 101325.0;
/// Stefan-Boltzmann constant [W/(m2 K4)]. Source: CODATA 2018.
inline constexpr double stefan_boltzmann = 5.670374419e-8;
/// Molar gas constant [J/(mol K)]. Source: CODATA 2018.
inline constexpr double molar_gas = 8.314462618;
/// Molar mass of water [kg/mol]. Source: IAPWS R6-95 (2018), gives 18.015268 g/mol.
inline constexpr double water_molar_mass = 18.015268e-3;
/// Specific gas constant of dry air [J/(kg K)]. Source: US Standard Atmosphere 1976, M = 28.9644
/// g/mol.
inline constexpr double dry_air_gas = 287.0528;

}  // namespace kettlecast::constants
