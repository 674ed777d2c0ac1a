#include <cmath>
#include <set>

#include "kettlecast/transfer/boiling_surfaces.hpp"
#include "published.hpp"

using namespace kettlecast;

TEST_CASE("constants of surfaces are those of the worked examples") {
  const auto& polished = boiling_pair("water on stainless steel, mechanically polished").constants;
  check_relative(polished.constant, published(0.0132, "-", "Kreith, 7th ed., example 10.1"), 0.0);
  CHECK(polished.prandtl_exponent == 1.0);
  const auto& janna =
      boiling_pair("water on stainless steel, mechanically polished, exponent 1.7").constants;
  check_relative(janna.prandtl_exponent, published(1.7, "-", "Janna, example 10.3"), 0.0);
  check_relative(boiling_pair("water on stainless steel, fluoropolymer coated").constants.constant,
                 published(0.0058, "-", "Kreith, 7th ed., example 10.1"), 0.0);
}

TEST_CASE("a coated pan boils as Kreith says") {
  const BoilingLiquid<double> water{962.0, 0.60, 4211.0, 2.25e6, 0.0588, 2.77e-4, 1.75};
  const auto& coated = boiling_pair("water on stainless steel, fluoropolymer coated").constants;
  check_relative(rohsenow_heat_flux(water, 6.0, coated),
                 published(349736.3083, "W/m2", "Kreith, example 10.1, 29669 (0.0132/0.0058)^3"),
                 0.04);
}

TEST_CASE("the default surface is the first pair") {
  CHECK(boiling_pairs[0].constants.constant == BoilingSurface{}.constant);
  CHECK(boiling_pairs[0].constants.prandtl_exponent == BoilingSurface{}.prandtl_exponent);
}

TEST_CASE("every pair has a name of its own, sound constants and a source") {
  std::set<std::string> names;
  for (const BoilingPair& pair : boiling_pairs) {
    names.insert(pair.name);
    CHECK(pair.constants.constant > 0.002);
    CHECK(pair.constants.constant < 0.016);
    CHECK(pair.constants.prandtl_exponent >= 1.0);
    CHECK(pair.constants.prandtl_exponent <= 1.7);
    CHECK(std::string(pair.source).size() > 8);
  }
  CHECK(names.size() == boiling_pairs.size());
}

TEST_CASE("an unknown surface is told with the nearest names") {
  CHECK_THROWS_AS(boiling_pair("water on glass"), UnknownName);
}
