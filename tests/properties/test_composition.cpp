#include "kettlecast/properties/composition.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;

namespace {

constexpr double celsius(double t) { return t + 273.15; }

struct ComponentRow {
  const Component& part;
  double celsius, specific_heat, conductivity, density;
};

/// Mass fractions of whole milk.
const Composition milk{0.8813, 0.0315, 0.0325, 0.048, 0.0, 0.0067};
/// Lean pork shoulder; adds up to 1.0034 on purpose, the library scales it.
const Composition pork{0.7263, 0.1955, 0.0714, 0.0, 0.0, 0.0102};

struct Vegetable {
  const char* name;
  Composition composition;
  double published_specific_heat;  ///< of the table, fibre counted twice [kJ/(kg K)]
  double specific_heat;            ///< at 20 degC, fibre counted once [kJ/(kg K)]
};

const Vegetable vegetables[] = {
    {"carrot", {0.8779, 0.0103, 0.0019, 0.0714, 0.030, 0.0087}, 3.92, 3.870821198},
    {"celery", {0.9464, 0.0075, 0.0014, 0.0195, 0.017, 0.0082}, 4.07, 4.042911903},
    {"garlic", {0.5858, 0.0636, 0.0050, 0.3097, 0.021, 0.0150}, 3.17, 3.133431148},
    {"leek", {0.8300, 0.0150, 0.0030, 0.1235, 0.018, 0.0105}, 3.77, 3.744603883},
    {"cabbage", {0.9215, 0.0144, 0.0027, 0.0313, 0.023, 0.0071}, 4.02, 3.984303368},
    {"sweet corn", {0.7596, 0.0322, 0.0118, 0.1632, 0.027, 0.0062}, 3.62, 3.578247219}};

}  // namespace

TEST_CASE("components follow the equations of Choi and Okos") {
  const ComponentRow rows[] = {
      {component::water, 20, 4.17657196, 0.60365856, 995.739918},
      {component::protein, 20, 2.03185284, 0.20163888, 1319.532},
      {component::carbohydrate, 20, 1.58567404, 0.22742552, 1592.8908},
      {component::fibre, 20, 1.88065164, 0.20703668, 1304.1822},
      {component::water, 90, 4.21235435, 0.67541584, 967.028011},
      {component::protein, 90, 2.10636651, 0.26441782, 1283.244},
      {component::carbohydrate, 90, 1.67731181, 0.29119328, 1571.1586},
      {component::fibre, 90, 1.97298171, 0.27011977, 1278.5699},
      {component::supercooled_water, -20, 4.585888, 0.53315856, 995.614162},
      {component::ice, -20, 1.940762, 2.385194, 919.5042},
      {component::fat, 20, 2.01174568, 0.175118204, 917.2386},
      {component::fat, 100, 2.083522, 0.1513311, 883.833},
      {component::fat, 150, 2.097177, 0.135310475, 862.9545}};
  for (const ComponentRow& row : rows) {
    const double t = celsius(row.celsius);
    check_relative(
        row.part.specific_heat(t) / 1e3,
        published(row.specific_heat, "kJ/(kg K)", "Choi & Okos (1986), computed by hand"), 1e-4);
    check_relative(row.part.conductivity(t),
                   published(row.conductivity, "W/(m K)", "Choi & Okos (1986), computed by hand"),
                   1e-4);
    check_relative(row.part.density(t),
                   published(row.density, "kg/m3", "Choi & Okos (1986), computed by hand"), 1e-5);
  }
}

TEST_CASE("whole milk and lean pork follow the mixing rules") {
  const double tolerance = 5e-4;
  const double t = celsius(30.0);
  check_relative(specific_heat(milk, t) / 1e3,
                 published(3.897159665, "kJ/(kg K)", "Choi & Okos (1986), mixed by mass"),
                 tolerance);
  check_relative(density(milk, t),
                 published(1021.197152, "kg/m3", "Choi & Okos (1986), volumes added"), tolerance);
  check_relative(conductivity(milk, t),
                 published(0.5794188976, "W/(m K)", "Choi & Okos (1986), parallel by volume"),
                 tolerance);
  const double room = celsius(20.0);
  check_relative(specific_heat(pork, room) / 1e3,
                 published(3.57367457, "kJ/(kg K)", "Choi & Okos (1986), mixed by mass"),
                 tolerance);
  check_relative(density(pork, room),
                 published(1045.61536, "kg/m3", "Choi & Okos (1986), volumes added"), tolerance);
  check_relative(conductivity(pork, room),
                 published(0.5057414183, "W/(m K)", "Choi & Okos (1986), parallel by volume"),
                 tolerance);
  check_relative(series_conductivity(pork, room),
                 published(0.3999395039, "W/(m K)", "Choi & Okos (1986), in series by volume"),
                 tolerance);
}

TEST_CASE("specific heat of vegetables") {
  for (const Vegetable& food : vegetables) {
    INFO(food.name);
    const double computed = specific_heat(food.composition, celsius(20.0)) / 1e3;
    check_relative(computed,
                   published(food.published_specific_heat, "kJ/(kg K)",
                             "ASHRAE Refrigeration, Thermal Properties of Foods, Table 3"),
                   0.025);
    check_absolute(computed,
                   published(food.specific_heat, "kJ/(kg K)",
                             "Choi & Okos (1986) with the composition of ASHRAE Table 3"),
                   1e-3);
  }
}

TEST_CASE("mean specific heat over 0 to 100 degC") {
  check_relative(
      specific_heat(milk, celsius(50.0)) / 1e3,
      published(3.85, "kJ/(kg K)", "Geankoplis, Transport Processes, Table A.4-1, whole milk"),
      0.02);
}

TEST_CASE("dry matter and water make up the food") {
  for (double t = 275.0; t < 420.0; t += 10.0) {
    const double water = milk.water;
    CHECK_THAT(
        water * component::water.specific_heat(t) + (1.0 - water) * dry_specific_heat(milk, t),
        Catch::Matchers::WithinRel(specific_heat(milk, t), 1e-12));
    CHECK_THAT(water / component::water.density(t) + (1.0 - water) / dry_density(milk, t),
               Catch::Matchers::WithinRel(1.0 / density(milk, t), 1e-12));
  }
}

TEST_CASE("dry matter of pure water stays finite") {
  const Composition water;
  CHECK(dry_fraction(water) == 0.0);
  CHECK(dry_density(water, 300.0) == component::water.density(300.0));
  CHECK(dry_specific_heat(water, 300.0) == component::water.specific_heat(300.0));
}

TEST_CASE("properties of food are positive and without jumps, also across 0 degC") {
  for (const Vegetable& food : vegetables) {
    const Composition& all = food.composition;
    sweep::positive(233.15, 473.15, [&](double t) { return specific_heat(all, t); });
    sweep::positive(233.15, 473.15, [&](double t) { return density(all, t); });
    sweep::positive(233.15, 473.15, [&](double t) { return conductivity(all, t); });
    sweep::falling(276.0, 473.15, [&](double t) { return density(all, t); });
    sweep::without_jump(233.15, 423.15, 1e-3, [&](double t) { return specific_heat(all, t); });
  }
}
