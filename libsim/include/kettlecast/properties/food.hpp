#pragma once

#include <string>

#include "kettlecast/base/record.hpp"
#include "kettlecast/properties/consistency.hpp"

namespace kettlecast {

/// Mass fractions of the components of a food [kg/kg]; they add up to 1.
struct Composition {
  double water = 1.0;         ///< [kg/kg]
  double protein = 0.0;       ///< [kg/kg]
  double fat = 0.0;           ///< [kg/kg]
  double carbohydrate = 0.0;  ///< digestible, fibre not included [kg/kg]
  double fibre = 0.0;         ///< [kg/kg]
  double ash = 0.0;           ///< [kg/kg]

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("water", &Composition::water);
    visit("protein", &Composition::protein);
    visit("fat", &Composition::fat);
    visit("carbohydrate", &Composition::carbohydrate);
    visit("fibre", &Composition::fibre);
    visit("ash", &Composition::ash);
  }
  bool operator==(const Composition& other) const { return equal_records(*this, other); }
};

/// What goes into the kettle: a name, a composition and where it starts to freeze.
struct Food {
  std::string name;
  Composition composition;
  double freezing_point = 273.15;  ///< initial freezing point [K]
  double juice_fraction = 0.0;     ///< share of its water that pieces give up when cooked [kg/kg]
  double sugar = 0.0;              ///< dissolved sugar, part of the carbohydrate [kg/kg]
  double salt = 0.0;               ///< dissolved sodium chloride, part of the ash [kg/kg]
  Consistency consistency;         ///< of a thick liquid
  std::string source;              ///< where the numbers come from

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("name", &Food::name);
    visit("composition", &Food::composition);
    visit("freezing_point", &Food::freezing_point);
    visit("juice_fraction", &Food::juice_fraction);
    visit("sugar", &Food::sugar);
    visit("salt", &Food::salt);
    visit("consistency", &Food::consistency);
    visit("source", &Food::source);
  }
  bool operator==(const Food& other) const { return equal_records(*this, other); }
};

/// Throws InvalidArgument unless the fractions lie in 0..1 and add up to 1 within 0.02, the
/// freezing point lies between 233.15 K and 273.16 K, and there is no more sugar than carbohydrate
/// and no more salt than ash.
void check(const Food& food);

}  // namespace kettlecast
