#include <vector>

#include "kettlecast/properties/freezing.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;

namespace {

Food food_of(const char* name, const Composition& composition, double freezing_point) {
  Food food;
  food.name = name;
  food.composition = composition;
  food.freezing_point = freezing_point;
  return food;
}

const Food carrot = food_of("carrot", {0.8779, 0.0103, 0.0019, 0.0714, 0.030, 0.0087}, 271.75);
const Food cabbage = food_of("cabbage", {0.9215, 0.0144, 0.0027, 0.0313, 0.023, 0.0071}, 272.25);
const Food beef = food_of("lean beef", {0.745, 0.21, 0.035, 0.0, 0.0, 0.01}, 272.15);
const Food oil = food_of("oil", {0.0, 0.0, 1.0, 0.0, 0.0, 0.0}, 260.0);
const Food plain_water = food_of("water", {}, 273.15);
const std::vector<Food> foods = {carrot, cabbage, beef, oil, plain_water};

double total_latent_heat(const Food& food) {
  return fusion_heat * FreezingFood(food).freezable_water;
}

}  // namespace

TEST_CASE("water gives up the latent and sensible heat of ice") {
  const FreezingFood water(plain_water);
  const double given_up = water.specific_enthalpy(273.15) - water.specific_enthalpy(253.15);
  // The specific heat of ice is held at its value at -20 degC: up to 0.6 % of the whole.
  check_relative(given_up / 1e3,
                 published(374.0, "kJ/kg", "IAPWS R10-06, ice at -20 degC (from memory)"), 6e-3);
}

TEST_CASE("frozen vegetables have the specific and latent heat of the tables") {
  const double tolerance = 0.04;
  check_relative(
      FreezingFood(carrot).frozen_specific_heat / 1e3,
      published(1.88, "kJ/(kg K)", "Earle, Unit Operations in Food Processing, Appendix 7"),
      tolerance);
  check_relative(
      FreezingFood(cabbage).frozen_specific_heat / 1e3,
      published(1.97, "kJ/(kg K)", "Earle, Unit Operations in Food Processing, Appendix 7"),
      tolerance);
  check_relative(total_latent_heat(carrot) / 1e3,
                 published(293.0, "kJ/kg", "Earle, Unit Operations in Food Processing, Appendix 7"),
                 0.01);
  check_relative(total_latent_heat(cabbage) / 1e3,
                 published(306.0, "kJ/kg", "Earle, Unit Operations in Food Processing, Appendix 7"),
                 0.01);
}

TEST_CASE("thawed vegetables have the specific heat of the tables") {
  check_relative(
      FreezingFood(carrot).unfrozen_specific_heat / 1e3,
      published(3.92, "kJ/(kg K)", "ASHRAE Refrigeration, Thermal Properties of Foods, Table 3"),
      0.025);
  check_relative(
      FreezingFood(cabbage).unfrozen_specific_heat / 1e3,
      published(4.02, "kJ/(kg K)", "ASHRAE Refrigeration, Thermal Properties of Foods, Table 3"),
      0.025);
}

TEST_CASE("ice fraction is zero at the freezing point and bounded by the freezable water") {
  for (const Food& food : foods) {
    const FreezingFood model(food);
    CHECK(model.ice_fraction(model.freezing_point) == 0.0);
    CHECK(model.ice_fraction(300.0) == 0.0);
    for (double t = 233.15; t < model.freezing_point; t += 0.1) {
      CHECK(model.ice_fraction(t) >= 0.0);
      CHECK(model.ice_fraction(t) <= model.freezable_water);
    }
  }
  // Miles et al.: (0.745 - 0.4 * 0.21) (1 - 1/10) = 0.5949 at ten times the freezing point.
  CHECK_THAT(FreezingFood(beef).ice_fraction(263.15), Catch::Matchers::WithinRel(0.5949, 1e-9));
}

TEST_CASE("temperature inverts enthalpy") {
  for (const Food& food : foods) {
    INFO(food.name);
    const FreezingFood model(food);
    double largest = 0.0;
    for (double t = 233.15; t < 400.0; t += 0.0137)
      largest = std::fmax(largest, std::fabs(model.temperature(model.specific_enthalpy(t)) - t));
    CHECK(largest < 1e-9);
  }
}

TEST_CASE("slope of the enthalpy is the apparent specific heat") {
  for (const Food& food : foods) {
    INFO(food.name);
    const FreezingFood model(food);
    const auto enthalpy = [&](double t) { return model.specific_enthalpy(t); };
    for (double t : {-30.0, -18.0, -8.0, -5.0}) {
      if (273.15 + t > model.freezing_point - 0.1) continue;
      CHECK_THAT(sweep::slope(273.15 + t, 1e-3, enthalpy),
                 Catch::Matchers::WithinRel(model.specific_heat(273.15 + t), 1e-6));
    }
    CHECK_THAT(sweep::slope(320.0, 1e-2, enthalpy),
               Catch::Matchers::WithinRel(model.specific_heat(320.0), 1e-8));
  }
}

TEST_CASE("enthalpy is continuous, rises, and is zero at 0 degC for unfrozen food") {
  for (const Food& food : foods) {
    INFO(food.name);
    const FreezingFood model(food);
    sweep::rising(233.15, 400.0, [&](double t) { return model.specific_enthalpy(t); });
    const double step = 1e-9;  // [K]
    const double jump = model.specific_enthalpy(model.freezing_point) -
                        model.specific_enthalpy(model.freezing_point - step);
    // Largest slope is that of plain water, L / 0.01 K.
    CHECK_THAT(jump, Catch::Matchers::WithinAbs(0.0, step * fusion_heat / 0.01 * 1.01 + 1e-6));
    CHECK_THAT(model.specific_enthalpy(273.15), Catch::Matchers::WithinAbs(0.0, 1e-9));
    const double low = model.specific_enthalpy(233.15);
    sweep::rising(low, 4e5, [&](double h) { return model.temperature(h); });
  }
}
