#include <utility>

#include "kettlecast/properties/syrup.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;

namespace {
constexpr double celsius(double t) { return t + 273.15; }
}  // namespace

TEST_CASE("density of syrup") {
  const auto thousandfold = [](double w) {
    return 1e3 * sugar::relative_density(w, celsius(20.0));
  };
  check_absolute(thousandfold(0.10),
                 published(1039.98, "1e-3", "Asadi, Beet-Sugar Handbook (2007), Table A.1"), 0.03);
  check_absolute(thousandfold(0.20),
                 published(1082.87, "1e-3", "Asadi, Beet-Sugar Handbook (2007), Table A.1"), 0.1);
  for (double t : {0.0, 25.0, 50.0, 75.0, 100.0, 150.0}) {
    sweep::rising(0.0, 1.0, [&](double w) { return sugar::density(w, celsius(t)); });
    CHECK(sugar::density(0.0, celsius(t)) == water::density(celsius(t)));
  }
  for (double w : {0.2, 0.5, 0.85}) {
    sweep::falling(celsius(0.0), celsius(120.0), [&](double t) { return sugar::density(w, t); });
  }
}

TEST_CASE("tables of saturated density print the relative density at 17.5 degC") {
  const std::pair<double, double> mohos[] = {
      {0, 1314.0},  {5, 1319.2},  {10, 1323.5}, {15, 1328.0}, {20, 1332.7}, {35, 1348.0},
      {40, 1353.5}, {50, 1365.1}, {60, 1377.5}, {70, 1390.8}, {80, 1404.9}, {100, 1435.9}};
  for (const auto& [t, density] : mohos) {
    check_absolute(
        1e3 * sugar::relative_density(sugar::saturation(celsius(t)), celsius(17.5)),
        published(density, "1e-3", "Mohos (2010), Table A2.2, without the misprint at 25 degC"),
        1.0);
  }
  // What stands in the kettle weighs less.
  CHECK(sugar::saturated_density(celsius(100.0)) < 1390.0);
  sweep::rising(celsius(0.0), celsius(100.0), sugar::saturated_density<double>);
}

TEST_CASE("degrees Baume of syrup") {
  const std::pair<double, double> mohos[] = {{10, 5.57},  {15, 8.34},  {60, 32.49},
                                             {65, 35.04}, {80, 42.47}, {85, 44.86}};
  for (const auto& [brix, degrees] : mohos) {
    check_absolute(sugar::baume(brix / 100.0),
                   published(degrees, "degBe", "Mohos (2010), Table A2.1"), 0.1);
  }
  for (double w : {0.05, 0.5, 0.9}) {
    CHECK_THAT(sugar::sugar_of_baume(sugar::baume(w)), Catch::Matchers::WithinAbs(w, 1e-9));
  }
  CHECK_THAT(sugar::baume(0.0), Catch::Matchers::WithinAbs(0.0, 1e-12));
  sweep::rising(0.0, 1.0, sugar::baume<double>);
}

TEST_CASE("viscosity of syrup") {
  struct Point {
    double brix, celsius, value;
  };
  const Point points[] = {{20, 20, 1.945}, {30, 20, 3.187}, {50, 20, 15.43}, {60, 20, 58.49},
                          {65, 20, 147.2}, {70, 20, 481.6}, {60, 40, 21.3},  {60, 80, 5.42}};
  for (const Point& point : points) {
    check_relative(1e3 * sugar::viscosity(point.brix / 100.0, celsius(point.celsius)),
                   published(point.value, "mPa s", "ICUMSA, CRC Handbook (from memory)"), 0.05);
  }
  check_relative(1e3 * sugar::viscosity(0.6, celsius(20.0)),
                 published(59.74206788, "mPa s", "Genotelle (1978), computed by hand"), 1e-8);
  for (double w : {0.0, 0.4, 0.75, 0.9}) {
    const auto of_temperature = [&](double t) { return sugar::viscosity(w, t); };
    sweep::falling(celsius(0.0), celsius(200.0), of_temperature);
    sweep::positive(celsius(0.0), celsius(200.0), of_temperature);
  }
  for (double t : {0.0, 60.0, 100.0, 150.0}) {
    sweep::rising(0.0, 0.9, [&](double w) { return sugar::viscosity(w, celsius(t)); });
  }
  check_relative(sugar::viscosity(0.0, celsius(20.0)),
                 published(1.0016e-3, "Pa s", "IAPWS R12-08, water at 20 degC"), 0.05);
}

TEST_CASE("specific heat of syrup and of sugar") {
  // 4.1868 (1 - (0.6 - 0.0018 t) w), an older equation.
  check_relative(1e-3 * sugar::specific_heat(0.6, celsius(20.0)),
                 published(2.770, "kJ/(kg K)", "Lyle (1957), 60 % (from memory)"), 0.01);
  check_relative(1e-3 * sugar::specific_heat(0.6, celsius(80.0)),
                 published(3.041, "kJ/(kg K)", "Lyle (1957), 60 % (from memory)"), 0.01);
  check_relative(1e-3 * sugar::specific_heat(0.3, celsius(60.0)),
                 published(3.569, "kJ/(kg K)", "Lyle (1957), 30 % (from memory)"), 0.01);
  check_absolute(1e-3 * sugar::solid_specific_heat(celsius(20.0)),
                 published(1.22170824, "kJ/(kg K)", "Mohos (2010), appendix 2"), 1e-3);
  check_absolute(1e-3 * sugar::solid_specific_heat(celsius(80.0)),
                 published(1.48045248, "kJ/(kg K)", "Mohos (2010), appendix 2"), 1e-3);
  check_relative(sugar::specific_heat(0.0, celsius(50.0)),
                 published(4180.0, "J/(kg K)", "IAPWS-IF97, water at 50 degC"), 2e-3);
  sweep::falling(0.0, 1.0, [](double w) { return sugar::specific_heat(w, celsius(150.0)); });
  sweep::positive(0.0, 1.0, [](double w) { return sugar::specific_heat(w, celsius(0.0)); });
  sweep::rising(celsius(0.0), celsius(100.0), sugar::solid_specific_heat<double>);
}

TEST_CASE("conductivity of syrup") {
  check_relative(sugar::conductivity(0.0, celsius(20.0)),
                 published(0.598, "W/(m K)", "IAPWS R15-11, water at 20 degC"), 0.01);
  check_relative(sugar::conductivity(0.0, celsius(80.0)),
                 published(0.667, "W/(m K)", "IAPWS R15-11, water at 80 degC"), 0.01);
  sweep::falling(0.0, 1.0, [](double w) { return sugar::conductivity(w, celsius(60.0)); });
  sweep::positive(0.0, 1.0, [](double w) { return sugar::conductivity(w, celsius(150.0)); });
  sweep::rising(celsius(0.0), celsius(149.0), [](double t) { return sugar::conductivity(0.6, t); });
}
