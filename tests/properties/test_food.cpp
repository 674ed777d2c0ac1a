#include <limits>
#include <string>

#include "catch.hpp"
#include "kettlecast/base/errors.hpp"
#include "kettlecast/properties/food.hpp"

using namespace kettlecast;

namespace {
Food carrot() {
  Food food;
  food.name = "carrot";
  food.composition = {0.8779, 0.0103, 0.0019, 0.0714, 0.03, 0.0087};
  food.freezing_point = 271.75;
  return food;
}

std::string message_of(const Food& food) {
  try {
    check(food);
  } catch (const InvalidArgument& error) {
    return error.what();
  }
  return "";
}
}  // namespace

TEST_CASE("a food that can exist passes") {
  CHECK_NOTHROW(check(carrot()));
  CHECK_NOTHROW(check(Food{}));
}

TEST_CASE("a food that cannot exist is refused by name, key and range") {
  Food food = carrot();
  food.composition.protein = -0.1;
  CHECK(message_of(food) ==
        "Food \"carrot\": protein must be between 0 and 1 kg/kg, got -0.1 kg/kg");
  food = carrot();
  food.composition.water = 0.7;
  CHECK(message_of(food).find("sum of the mass fractions must be between 0.98 and 1.02") !=
        std::string::npos);
  food = carrot();
  food.freezing_point = -1.4;
  CHECK(message_of(food).find("freezing_point must be between 233.15 and 273.16 K") !=
        std::string::npos);
  food = carrot();
  food.composition.fat = std::numeric_limits<double>::quiet_NaN();
  CHECK(message_of(food).find("fat must be between 0 and 1") != std::string::npos);
  food = carrot();
  food.juice_fraction = 1.5;
  CHECK(message_of(food).find("juice_fraction must be between 0 and 1") != std::string::npos);
}
