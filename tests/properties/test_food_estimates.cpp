#include <vector>

#include "kettlecast/properties/food_estimates.hpp"
#include "kettlecast/properties/frozen_food.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;

namespace {

constexpr double ice_point = 273.15;
constexpr double none = 1.0;  // where the table leaves the freezing point out

/// Row of the handbook table: per cent by mass, degC, kJ/(kg K), kJ/kg.
struct Row {
  const char* name;
  double water, protein, fat, total_carbohydrate, fibre, ash, freezing_point;
  double above, below, latent;
};

// Source: ASHRAE Handbook Refrigeration, Thermal Properties of Foods, Table 3, vegetables.
const Row rows[] = {
    {"artichokes globe", 84.94, 3.27, 0.15, 10.51, 5.4, 1.13, -1.2, 3.9, 2.02, 284},
    {"artichokes jerusalem", 78.01, 2, 0.01, 17.44, 1.6, 2.54, -2.5, 3.63, 2.25, 261},
    {"asparagus", 92.4, 2.28, 0.2, 4.54, 2.1, 0.57, -0.6, 4.03, 1.79, 309},
    {"beans snap", 90.27, 1.82, 0.12, 7.14, 3.4, 0.66, -0.7, 3.99, 1.85, 302},
    {"beans lima", 70.24, 6.84, 0.86, 20.16, 4.9, 1.89, -0.6, 3.52, 2.07, 235},
    {"beets", 87.58, 1.61, 0.17, 9.56, 2.8, 1.08, -1.1, 3.91, 1.94, 293},
    {"broccoli", 90.69, 2.98, 0.35, 5.24, 3, 0.92, -0.6, 4.01, 1.82, 303},
    {"brussels sprouts", 86, 3.38, 0.3, 8.96, 3.8, 1.37, -0.8, 3.9, 1.91, 287},
    {"cabbage", 92.15, 1.44, 0.27, 5.43, 2.3, 0.71, -0.9, 4.02, 1.85, 308},
    {"carrots", 87.79, 1.03, 0.19, 10.14, 3, 0.87, -1.4, 3.92, 2, 293},
    {"cauliflower", 91.91, 1.98, 0.21, 5.2, 2.5, 0.71, -0.8, 4.02, 1.84, 307},
    {"celeriac", 88, 1.5, 0.3, 9.2, 1.8, 1, -0.9, 3.9, 1.89, 294},
    {"celery", 94.64, 0.75, 0.14, 3.65, 1.7, 0.82, -0.5, 4.07, 1.74, 316},
    {"collards", 90.55, 1.57, 0.22, 7.11, 3.6, 0.55, -0.8, 4.01, 1.86, 302},
    {"corn sweet yellow", 75.96, 3.22, 1.18, 19.02, 2.7, 0.62, -0.6, 3.62, 1.98, 254},
    {"cucumbers", 96.01, 0.69, 0.13, 2.76, 0.8, 0.41, -0.5, 4.09, 1.71, 321},
    {"eggplant", 92.03, 1.02, 0.18, 6.07, 2.5, 0.71, -0.8, 4.02, 1.83, 307},
    {"endive", 93.79, 1.25, 0.2, 3.35, 3.1, 1.41, -0.1, 4.07, 1.69, 313},
    {"garlic", 58.58, 6.36, 0.5, 33.07, 2.1, 1.5, -0.8, 3.17, 2.19, 196},
    {"ginger root", 81.67, 1.74, 0.73, 15.09, 2, 0.77, none, 3.75, 1.94, 273},
    {"horseradish", 78.66, 9.4, 1.4, 8.28, 2, 2.26, -1.8, 3.7, 2.12, 263},
    {"kale", 84.46, 3.3, 0.7, 10.01, 2, 1.53, -0.5, 3.82, 1.86, 282},
    {"kohlrabi", 91, 1.7, 0.1, 6.2, 3.6, 1, -1, 4.02, 1.9, 304},
    {"leeks", 83, 1.5, 0.3, 14.15, 1.8, 1.05, -0.7, 3.77, 1.91, 277},
    {"lettuce iceberg", 95.89, 1.01, 0.19, 2.09, 1.4, 0.48, -0.2, 4.09, 1.65, 320}};

/// Fibre counted once, as everywhere in the library.
Composition once(const Row& row) {
  return {row.water / 100, row.protein / 100,
          row.fat / 100,   (row.total_carbohydrate - row.fibre) / 100,
          row.fibre / 100, row.ash / 100};
}

/// Fibre within the carbohydrate and again on its own, as the table was computed.
Composition twice(const Row& row) {
  Composition composition = once(row);
  composition.carbohydrate = row.total_carbohydrate / 100;
  return composition;
}

Food food_of(const Composition& composition, double celsius) {
  Food food;
  food.composition = composition;
  food.freezing_point = ice_point + celsius;
  return food;
}

const Food carrot = food_of(once(rows[9]), -1.4);
const Food cabbage = food_of(once(rows[8]), -0.9);
const Food pork = food_of({0.7263, 0.1955, 0.0714, 0.0, 0.0, 0.0102}, -2.2);
const Food oil = food_of({0.0, 0.0, 1.0, 0.0, 0.0, 0.0}, -39.0);
const Food plain_water = food_of({}, 0.0);
const std::vector<Food> foods = {carrot, cabbage, pork, oil, plain_water};

}  // namespace

TEST_CASE("the table of the handbook is reproduced, fibre counted twice as it does") {
  for (const Row& row : rows) {
    INFO(row.name);
    const Composition composition = twice(row);
    const double whole = composition.water + dry_fraction(composition);  // more than 1
    check_absolute(whole * specific_heat(composition, ice_point + 20.0) / 1e3,
                   published(row.above, "kJ/(kg K)", "ASHRAE Refrigeration, Foods, Table 3"),
                   0.006);
    check_absolute(latent_heat(once(row)) / 1e3,
                   published(row.latent, "kJ/kg", "ASHRAE Refrigeration, Foods, Table 3"), 0.6);
    if (row.freezing_point == none) continue;
    const double bound = 0.4 * composition.protein;
    const FreezingCurve chen = chen_curve(dry_fraction(composition), composition.water - bound,
                                          ice_point + row.freezing_point);
    check_absolute(chen.specific_heat(ice_point - 40.0) / 1e3,
                   published(row.below, "kJ/(kg K)", "ASHRAE Refrigeration, Foods, Table 3"),
                   0.006);
  }
}

TEST_CASE("the table of the handbook is met with fibre counted once") {
  for (const Row& row : rows) {
    if (row.freezing_point == none) continue;
    INFO(row.name);
    const FreezingCurve chen = chen_curve(food_of(once(row), row.freezing_point));
    check_relative(chen.specific_heat(ice_point - 40.0) / 1e3,
                   published(row.below, "kJ/(kg K)", "ASHRAE Refrigeration, Foods, Table 3"), 0.04);
  }
}

TEST_CASE("average specific heats of the tables by Heldman and Singh") {
  const char source[] = "Geankoplis, Transport Processes, Table A.4-1, average over 0-100 degC";
  const Composition beef{0.72, 0.216, 0.052, 0.0, 0.0, 0.012};
  const Composition milk{0.875, 0.0315, 0.0345, 0.0515, 0.0, 0.0075};
  const Composition potato{0.75, 0.0207, 0.001, 0.2034, 0.016, 0.0089};
  check_relative(heldman_singh_specific_heat(beef) / 1e3, published(3.43, "kJ/(kg K)", source),
                 0.03);
  check_relative(heldman_singh_specific_heat(milk) / 1e3, published(3.85, "kJ/(kg K)", source),
                 0.02);
  check_relative(heldman_singh_specific_heat(potato) / 1e3, published(3.52, "kJ/(kg K)", source),
                 0.02);
}

TEST_CASE("ice in a beef carcass by Tchigeov") {
  const Food beef = food_of({0.5821, 0.1748, 0.2359, 0.0, 0.0, 0.0072}, -1.7);
  const double ice = tchigeov_ice_fraction(beef, ice_point - 20.0);
  const char source[] = "ASHRAE Refrigeration, Foods, Example 1 (from memory)";
  check_absolute(ice, published(0.52, "kg/kg", source), 0.005);
  check_absolute(150.0 * ice, published(78.0, "kg", source), 0.5);
  check_absolute(150.0 * (0.5821 - ice), published(9.6, "kg", source), 0.3);
}

TEST_CASE("Tchigeov's ice starts at the freezing point and grows as it gets colder") {
  for (const Food& food : foods) {
    CHECK(tchigeov_ice_fraction(food, food.freezing_point) == 0.0);
    if (food.composition.water == 0.0) continue;
    sweep::falling(ice_point - 45.0, food.freezing_point,
                   [&](double t) { return tchigeov_ice_fraction(food, t); });
    CHECK(tchigeov_ice_fraction(food, ice_point - 45.0) <= food.composition.water);
  }
}

TEST_CASE("enthalpies of the estimates are the integrals of their specific heats") {
  for (const Food& food : foods)
    for (const FreezingCurve& curve : {chen_curve(food), schwartzberg_curve(food)}) {
      const auto enthalpy = [&](double t) { return curve.specific_enthalpy(t); };
      CHECK_THAT(enthalpy(ice_point - 40.0), Catch::Matchers::WithinAbs(0.0, 1e-6));
      sweep::rising(ice_point - 40.0, ice_point + 40.0, enthalpy);
      sweep::positive(ice_point - 40.0, ice_point + 40.0,
                      [&](double t) { return curve.specific_heat(t); });
      for (double t : {-35.0, -20.0, -10.0, -5.0, 5.0, 30.0})
        CHECK_THAT(sweep::slope(ice_point + t, 1e-3, enthalpy),
                   Catch::Matchers::WithinRel(curve.specific_heat(ice_point + t), 1e-5));
    }
}

TEST_CASE("heat to thaw a vegetable does not depend on the estimate") {
  // From -40 to 10 degC; the methods scatter by some per cent in Fricke & Becker (2001).
  for (const Food& food : {carrot, cabbage, pork}) {
    const auto rise = [](const auto& model) {
      return model.specific_enthalpy(283.15) - model.specific_enthalpy(233.15);
    };
    const double ours = rise(FreezingFood(food));
    CHECK_THAT(rise(chen_curve(food)), Catch::Matchers::WithinRel(ours, 0.08));
    CHECK_THAT(rise(schwartzberg_curve(food)), Catch::Matchers::WithinRel(ours, 0.08));
  }
}

TEST_CASE("frozen food mixes by the volumes of its components") {
  const double t = ice_point - 40.0, ice = 0.6;
  const Composition& all = pork.composition;
  const double sum = all.water + dry_fraction(all);
  double volume = 0.0, parallel = 0.0, series = 0.0;
  const auto add = [&](double mass, const Component& part) {
    volume += mass / part.density(t);
    parallel += mass / part.density(t) * part.conductivity(t);
    series += mass / part.density(t) / part.conductivity(t);
  };
  add(all.water / sum - ice, component::supercooled_water);
  add(ice, component::ice);
  visit_dry(all, [&](double fraction, const Component& part) { add(fraction / sum, part); });
  CHECK_THAT(frozen_density(all, t, ice), Catch::Matchers::WithinRel(1.0 / volume, 1e-12));
  CHECK_THAT(frozen_conductivity(all, t, ice),
             Catch::Matchers::WithinRel(parallel / volume, 1e-12));
  CHECK_THAT(frozen_series_conductivity(all, t, ice),
             Catch::Matchers::WithinRel(volume / series, 1e-12));
}

TEST_CASE("freezing makes food lighter and a better conductor, within the bounds of mixing") {
  for (const Food& food : {carrot, cabbage, pork, plain_water}) {
    const FreezingFood model(food);
    for (double t = ice_point - 40.0; t < model.freezing_point; t += 0.5) {
      const Composition& all = food.composition;
      const double ice = model.ice_fraction(t);
      const double along = frozen_conductivity(all, t, ice);
      const double across = frozen_series_conductivity(all, t, ice);
      CHECK(across <= along * (1.0 + 1e-12));
      CHECK(across > 0.9 * series_conductivity(all, t));
      CHECK(along <= component::ice.conductivity(t));
      CHECK(frozen_density(all, t, ice) <= density(all, t));
    }
  }
}
