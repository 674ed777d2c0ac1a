#pragma once

#include <array>
#include <string>
#include <vector>

#include "kettlecast/base/errors.hpp"
#include "kettlecast/transfer/boiling.hpp"

namespace kettlecast {

/// Constants of Rohsenow's equation for one pair of liquid and surface.
struct BoilingPair {
  const char* name;          ///< "liquid on surface"
  BoilingSurface constants;  ///< C_sf and s [-]
  const char* source;
};

/// Constants of Rohsenow's equation.
///
/// Source: each line its own; lines without a worked example are from memory. C_sf spreads as much
///         within one metal (0.0068 to 0.0147 for copper) as between metals: a factor of 10 in the
///         flux.
/// Range:  clean surfaces and pure liquids. Sources disagree on s for water: 1.0 in Rohsenow's
///         later work and most books, 1.7 in his paper of 1952 and in Janna, 1.26 in one fit; from
///         1.0 to 1.7 the flux of water at 1 atm falls by a factor of 3.3. C_sf belongs to its s.
inline constexpr std::array<BoilingPair, 18> boiling_pairs{{
    {"water on stainless steel, mechanically polished",
     {0.0132, 1.0},
     "Kreith, Manglik & Bohn, 7th ed., example 10.1"},
    {"water on stainless steel, mechanically polished, exponent 1.7",
     {0.0132, 1.7},
     "Janna, Engineering Heat Transfer, example 10.3"},
    {"water on stainless steel, chemically etched", {0.0133, 1.0}, "Incropera, table 10.1"},
    {"water on stainless steel, ground and polished", {0.0080, 1.0}, "Incropera, table 10.1"},
    {"water on stainless steel, fluoropolymer coated",
     {0.0058, 1.0},
     "Kreith, Manglik & Bohn, 7th ed., example 10.1"},
    {"water on copper, polished", {0.0128, 1.0}, "Incropera, table 10.1"},
    {"water on copper, scored", {0.0068, 1.0}, "Incropera, table 10.1"},
    {"water on copper, paraffin treated", {0.0147, 1.0}, "Vachon, Nix & Tanger (1968)"},
    {"water on brass", {0.0060, 1.0}, "Incropera, table 10.1"},
    {"water on nickel", {0.0060, 1.0}, "Incropera, table 10.1"},
    {"water on platinum", {0.0130, 1.0}, "Incropera, table 10.1"},
    {"water on aluminium, oxidised", {0.011, 1.26}, "Cao (2009), as tested in the package ht"},
    {"n-pentane on copper, polished", {0.0154, 1.7}, "Incropera, table 10.1"},
    {"n-pentane on copper, lapped", {0.0049, 1.7}, "Incropera, table 10.1"},
    {"benzene on chromium", {0.0101, 1.7}, "Incropera, table 10.1"},
    {"ethanol on chromium", {0.0027, 1.7}, "Incropera, table 10.1"},
    {"isopropanol on copper", {0.00225, 1.7}, "Rohsenow & Choi (1961)"},
    {"n-butanol on copper", {0.00305, 1.7}, "Rohsenow & Choi (1961)"},
}};

/// Names of all pairs, in the order of the table.
inline std::vector<std::string> boiling_pair_names() {
  std::vector<std::string> names;
  for (const BoilingPair& pair : boiling_pairs) names.emplace_back(pair.name);
  return names;
}

/// Constants of one pair; throws UnknownName with the nearest names.
///
/// Source: boiling_pairs.
/// Range:  as there.
inline const BoilingPair& boiling_pair(const std::string& name) {
  for (const BoilingPair& pair : boiling_pairs)
    if (name == pair.name) return pair;
  throw UnknownName("boiling surfaces", name, boiling_pair_names());
}

}  // namespace kettlecast
