#include "kettlecast/properties/food.hpp"

#include <string>

#include "kettlecast/base/errors.hpp"

namespace kettlecast {

void check(const Food& food) {
  const std::string where = "Food \"" + food.name + "\"";
  double sum = 0.0;
  Composition::describe([&](const char* key, auto member) {
    const double fraction = food.composition.*member;
    require_between(where, key, fraction, 0.0, 1.0, "kg/kg");
    sum += fraction;
  });
  require_between(where, "sum of the mass fractions", sum, 0.98, 1.02, "kg/kg");
  require_between(where, "freezing_point", food.freezing_point, 233.15, 273.16, "K");
  require_between(where, "juice_fraction", food.juice_fraction, 0.0, 1.0, "kg/kg");
  require_between(where, "sugar (part of the carbohydrate)", food.sugar, 0.0,
                  food.composition.carbohydrate, "kg/kg");
  require_between(where, "salt (part of the ash)", food.salt, 0.0, food.composition.ash, "kg/kg");
  check(food.consistency);
}

}  // namespace kettlecast
