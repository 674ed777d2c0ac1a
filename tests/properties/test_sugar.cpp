#include <utility>

#include "kettlecast/properties/sugar.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;

namespace {

constexpr double atmosphere = constants::atmosphere;
constexpr double celsius(double t) { return t + 273.15; }
double boiling_celsius(double sugar) {
  return sugar::boiling_temperature(sugar, atmosphere) - 273.15;
}
/// Rise after a point over the rise before it; 1 where there is no kink.
double bend(double at, double step) {
  const double before = boiling_celsius(at) - boiling_celsius(at - step);
  return (boiling_celsius(at + step) - boiling_celsius(at)) / before;
}

}  // namespace

TEST_CASE("syrup boils where Brown measured it") {
  // Below 40 % his table does not go to zero with the sugar and is left out.
  const std::pair<double, double> brown[] = {
      {40, 101.5}, {44, 101.7}, {50, 102.0}, {56, 102.4}, {60, 103.0}, {64, 104.0},
      {66, 104.8}, {70, 106.5}, {72, 107.4}, {74, 108.4}, {76, 109.4}, {78, 110.6},
      {80, 112.0}, {82, 113.9}, {84, 116.3}, {86, 119.3}, {88, 123.1}, {90, 127.8}};
  for (const auto& [brix, boiling] : brown) {
    // Sources of his time and of ours lie this far apart.
    const double apart = brix <= 60 ? 0.5 : brix <= 86 ? 1.3 : 5.0;
    check_absolute(boiling_celsius(brix / 100.0),
                   published(boiling, "degC", "H. T. Brown (1912), sucrose at 101.325 kPa"), apart);
  }
}

TEST_CASE("a little sugar raises the boiling point in a line") {
  check_absolute(sugar::boiling_elevation(0.02, atmosphere),
                 published(0.0303, "K", "Norrish (1966) with IAPWS-IF97, 2 %"), 0.02);
  check_absolute(sugar::boiling_elevation(0.20, atmosphere),
                 published(0.397, "K", "Norrish (1966) with IAPWS-IF97, 20 %"), 0.05);
  CHECK(sugar::boiling_elevation(0.0, atmosphere) == 0.0);
  const double molality = 1e-3;  // [mol/kg]
  const double dissolved = molality * sugar::molar_mass;
  check_relative(
      sugar::boiling_elevation(dissolved / (1.0 + dissolved), atmosphere) / molality,
      published(0.513, "K kg/mol", "ebullioscopic constant of water, CRC Handbook (from memory)"),
      2e-3);
}

TEST_CASE("dense syrup boils at the stages of candy") {
  // Sugar that a temperature of the stage tells, within 2 % of what is printed for it.
  const auto matches = [](const Published& percent, double low, double high) {
    INFO("[" << percent.unit << "] " << percent.source);
    CHECK(100.0 * sugar::boiling_concentration(celsius(high), atmosphere) > percent.value - 2.0);
    CHECK(100.0 * sugar::boiling_concentration(celsius(low), atmosphere) < percent.value + 2.0);
  };
  matches(published(85.0, "% sugar", "soft ball, table of sugar stages"), 113.0, 116.0);
  matches(published(87.0, "% sugar", "firm ball, table of sugar stages"), 118.0, 121.0);
  matches(published(92.0, "% sugar", "hard ball, table of sugar stages"), 121.0, 130.0);
  matches(published(95.0, "% sugar", "soft crack, table of sugar stages"), 132.0, 143.0);
  matches(published(99.0, "% sugar", "hard crack, table of sugar stages"), 149.0, 154.0);
  constexpr Published caramel =
      published(0.99, "kg/kg", "McGee, On Food and Cooking: above 165 degC more than 99 % sugar");
  CHECK(sugar::boiling_concentration(celsius(165.0), atmosphere) > caramel.value);
  check_absolute(sugar::boiling_concentration(celsius(125.0), atmosphere),
                 published(0.90, "kg/kg", "McGee, On Food and Cooking: boils at 125 degC"), 0.01);
}

TEST_CASE("boiling point and activity of syrup are smooth, finite and bend one way") {
  for (double pressure : {5e3, 6e4, 101325.0, 2e5}) {
    const auto boiling = [&](double w) { return sugar::boiling_temperature(w, pressure); };
    sweep::rising(0.0, 0.999, boiling);
    sweep::without_jump(0.0, 0.999, 0.04, boiling);
    CHECK(boiling(1.0) < 600.0);
    CHECK(boiling(1.0) > boiling(0.999));
  }
  sweep::falling(0.0, 1.0, [](double w) { return sugar::water_activity(w); });
  sweep::positive(0.0, 1.0, [](double w) { return sugar::water_activity(w); });
  sweep::falling(0.0, 50.0, [](double s) { return sugar::water_activity(1.0, s); });
  CHECK(sugar::water_activity(0.0) == 1.0);
  CHECK(sugar::water_activity(0.0, 0.0) == 1.0);
  CHECK(sugar::water_activity(0.0, 1.0) < 1e-9);
  // Joins of the two activity models: no kink.
  CHECK_THAT(bend(0.80, 1e-4), Catch::Matchers::WithinAbs(1.0, 0.01));
  CHECK_THAT(bend(0.95, 1e-4), Catch::Matchers::WithinAbs(1.0, 0.01));
}

TEST_CASE("sugar is found again from the boiling point") {
  for (double w : {0.01, 0.3, 0.7, 0.88, 0.99}) {
    const double found = sugar::boiling_concentration(sugar::boiling_temperature(w, 8e4), 8e4);
    CHECK_THAT(found, Catch::Matchers::WithinAbs(w, 1e-9));
  }
  CHECK(sugar::boiling_concentration(celsius(20.0), atmosphere) < 1e-9);
}

TEST_CASE("saturation of sugar") {
  const std::pair<double, double> mohos[] = {{0, 64.18},  {10, 65.58}, {20, 67.09}, {30, 68.70},
                                             {40, 70.42}, {50, 72.25}, {60, 74.18}, {70, 76.22},
                                             {80, 78.36}, {100, 82.97}};
  for (const auto& [t, percent] : mohos) {
    check_absolute(100.0 * sugar::saturation(celsius(t)),
                   published(percent, "% sugar", "Mohos (2010), Table A2.3"), 0.01);
  }
  // 415.7 g per 100 g of water in Table A2.2; A2.3 prints 80.84 %, which does not fit.
  check_absolute(100.0 * sugar::saturation(celsius(90.0)),
                 published(80.61, "% sugar", "Mohos (2010), Table A2.2"), 0.01);
  sweep::rising(celsius(0.0), celsius(100.0), sugar::saturation<double>);
  check_absolute(sugar::water_activity(sugar::saturation(celsius(25.0))),
                 published(0.85, "-", "saturated sucrose at 25 degC (from memory)"), 0.01);
}
