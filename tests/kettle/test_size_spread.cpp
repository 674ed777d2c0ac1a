// Pieces of spread sizes: three classes of one addition, and what their cores do.
#include <cmath>

#include "instant.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

constexpr double size = 0.025;

Addition carrots(double spread, double mass = 10.0, double temperature = 280.0) {
  Addition addition = batch::pieces(batch::carrot(), mass, temperature, size);
  addition.size_spread = spread;
  return addition;
}

std::vector<PieceClass> classes(double spread) {
  return make_piece_classes(batch::stew_kettle(), {carrots(spread)});
}

/// Carrots poured into hot or cold water that is held there by its mass.
Instant poured(double spread, double water_temperature, double piece_temperature) {
  Instant now(batch::stew_kettle(),
              {batch::liquid(batch::water(), 120.0, water_temperature),
               carrots(spread, 1.0, piece_temperature)},
              {water_temperature, water_temperature});
  now.inputs.agitator_speed = 0.5;
  now.inputs.cover = Cover::lid;
  return now;
}

std::vector<double> cores(Instant& now) {
  std::vector<double> found;
  for (const auto& piece : now.scene().pieces) found.push_back(piece.core_temperature);
  return found;
}

}  // namespace

TEST_CASE("classes are named by their size and share out the mass of their addition") {
  const auto three = classes(0.3);
  REQUIRE(three.size() == 3);
  CHECK(three[0].name == "carrot.small");
  CHECK(three[1].name == "carrot.middle");
  CHECK(three[2].name == "carrot.large");
  double mass = 0.0, mean = 0.0, area = 0.0;
  for (const auto& one : three) {
    CHECK(one.addition == 0);
    mass += one.mass_share;
    mean += one.mass_share * one.shells.size;
    area += one.mass_share * one.shells.area;
  }
  CHECK_THAT(mass, WithinRel(1.0, 1e-12));
  CHECK_THAT(mean, WithinRel(size, 1e-9));
  // Mean of 1/size of a lognormal spread: (1 + s^2) / mean (Aitchison & Brown, 1957).
  CHECK_THAT(area, WithinRel((1.0 + 0.09) * classes(0.0)[0].shells.area, 1e-9));
}

TEST_CASE("pouring spread sizes conserves mass, water and heat") {
  Instant spread(batch::stew_kettle(), {carrots(0.4)});
  Instant plain(batch::stew_kettle(), {carrots(0.0)});
  double mass = 0.0, water = 0.0;
  for (const auto& slots : spread.model.layout().pieces) {
    mass += spread.state[slots.poured];
    water += spread.state[slots.water];
  }
  CHECK_THAT(mass, WithinRel(10.0, 1e-12));
  CHECK_THAT(water, WithinRel(8.78, 1e-12));
  CHECK_THAT(spread.model.product_mass(spread.state), WithinRel(10.0, 1e-12));
  CHECK_THAT(spread.state[slot::poured_energy], WithinRel(plain.state[slot::poured_energy], 1e-12));
  CHECK_THAT(spread.model.level(spread.state), WithinRel(plain.model.level(plain.state), 1e-9));
}

TEST_CASE("a spread too small to matter is the plain addition to the last bit") {
  const auto run = [](double spread) {
    auto pieces = carrots(spread);
    return batch::run(
        batch::stew_kettle(),
        {"one size",
         {batch::hold(350.0, 60.0, {batch::liquid(batch::water(), 30.0, 290.0), pieces})}});
  };
  const auto plain = run(0.0), narrow = run(5e-5);
  CHECK(plain.phases == narrow.phases);
  CHECK(plain.trace.values == narrow.trace.values);
  CHECK(plain.trace.names == narrow.trace.names);
}

TEST_CASE("a narrow spread does as one size") {
  auto narrow = poured(0.01, 360.0, 280.0), plain = poured(0.0, 360.0, 280.0);
  for (int minute = 0; minute < 5; ++minute) {
    narrow.wait(60.0);
    plain.wait(60.0);
    // Times go with the square of the size: 1.7 % of size either way is 3.5 % of the time, and
    // cores move by 0.2 K/s at most, so 5 K over five minutes; their mean by second order only.
    const auto three = cores(narrow);
    const double mean = three[0] / 6.0 + three[1] * 2.0 / 3.0 + three[2] / 6.0;
    CHECK_THAT(mean, WithinAbs(cores(plain)[0], 0.05));
    CHECK_THAT(three[0], WithinAbs(three[2], 5.0));
  }
}

TEST_CASE("small pieces warm and cool before large ones") {
  for (double water : {360.0, 278.0}) {
    const double fresh = water > 300.0 ? 280.0 : 360.0;
    auto spread = poured(0.3, water, fresh), plain = poured(0.0, water, fresh);
    spread.wait(120.0);
    plain.wait(120.0);
    const auto three = cores(spread);
    const double way = water > fresh ? 1.0 : -1.0;
    CHECK(way * (three[0] - three[1]) > 0.1);
    CHECK(way * (three[1] - three[2]) > 0.1);
    // The core of the mean size lies between the smallest and the largest.
    CHECK(way * (three[0] - cores(plain)[0]) > 0.0);
    CHECK(way * (cores(plain)[0] - three[2]) > 0.0);
  }
}

TEST_CASE("the coldest core is that of the largest pieces while heating, of the smallest cooling") {
  auto warming = poured(0.3, 360.0, 280.0);
  warming.wait(120.0);
  CHECK_THAT(warming.scene().core_temperature, WithinAbs(cores(warming)[2], 1e-12));
  auto cooling = poured(0.3, 278.0, 360.0);
  cooling.wait(120.0);
  CHECK_THAT(cooling.scene().core_temperature, WithinAbs(cores(cooling)[0], 1e-12));
}

TEST_CASE("the wider the spread the later the last core is done") {
  double last = 0.0;
  for (double spread : {0.0, 0.1, 0.2, 0.4}) {
    auto now = poured(spread, 360.0, 280.0);
    double time = 0.0;
    while (now.scene().core_temperature < 345.0) {
      now.wait(2.0);
      time += 2.0;
    }
    CHECK(time > last);
    last = time;
  }
}

TEST_CASE("all classes end at the temperature of the water they lie in") {
  auto now = poured(0.4, 330.0, 280.0);
  now.model.pour(0, 10.0, now.state);
  now.wait(3600.0);
  for (double core : cores(now)) CHECK_THAT(core, WithinAbs(now.scene().liquid_temperature, 1.0));
}

TEST_CASE("heat and mass balance at every instant with spread sizes, fresh, frozen and cooked") {
  for (double temperature : {250.0, 280.0, 368.0}) {
    for (double water : {0.1, 5.0, 40.0}) {
      for (double spread : {0.1, 0.5}) {
        Instant now(
            batch::stew_kettle(),
            {batch::liquid(batch::water(), water, 350.0), carrots(spread, 12.0, temperature)},
            {390.0, 340.0});
        now.inputs.floor_heat = 1.0;
        now.inputs.agitator_speed = 0.5;
        now.inputs.pour_rate = {0.1, 0.05};
        INFO("pieces " << temperature << " K, water " << water << " kg, spread " << spread);
        now.check_books();
      }
    }
  }
}
