// The work of the agitator: power numbers, energy book, and how much the product warms.
#include <cmath>

#include "instant.hpp"
#include "kettlecast/kettle/films.hpp"
#include "published.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

/// Lossless column of 58 kg of water in a room as warm as itself.
constexpr double mass = 58.0;

Kettle column(AgitatorKind kind, double room = 330.15) {
  Kettle kettle = batch::column(room);
  kettle.agitator = kind;
  return kettle;
}

Coefficients lossless() { return batch::without_losses().with("agitator.power_factor", 1.0); }

Instant stirred(AgitatorKind kind, double speed, const Coefficients& coefficients = lossless()) {
  Instant now(column(kind), {batch::liquid(batch::water(), mass, 330.15)}, {330.15, 330.15},
              coefficients);
  now.inputs.agitator_speed = speed;
  now.inputs.cover = Cover::lid;
  return now;
}

/// rho N^3 d^5 of water at 57 degC, 984.7 kg/m3 (IAPWS-IF97), d = 0.19 m [W].
double scale(double speed) { return 984.7 * std::pow(speed, 3) * std::pow(0.19, 5); }

double power(AgitatorKind kind, double speed) {
  return stirred(kind, speed).rates()[slot::stirring_energy];
}

}  // namespace

TEST_CASE("the power number of an agitator in water is that of handbooks") {
  const char source[] = "McCabe, Smith & Harriott, table of K_T, from memory";
  // Re = 7e5: turbulent. An anchor still pays 300 / Re, 0.1 % of its 0.35.
  check_relative(power(AgitatorKind::paddle, 10.0) / scale(10.0), published(1.7, "-", source),
                 2e-3);
  check_relative(power(AgitatorKind::turbine, 10.0) / scale(10.0), published(1.27, "-", source),
                 2e-3);
  check_relative(power(AgitatorKind::anchor, 10.0) / scale(10.0), published(0.35, "-", source),
                 4e-3);
}

TEST_CASE("turbulent power goes with the cube of the speed, none at rest") {
  for (auto kind : {AgitatorKind::paddle, AgitatorKind::turbine}) {
    CHECK_THAT(power(kind, 8.0) / power(kind, 4.0), WithinRel(8.0, 1e-3));
  }
  CHECK(power(AgitatorKind::paddle, 0.0) == 0.0);
  CHECK(power(AgitatorKind::none, 5.0) == 0.0);
}

TEST_CASE("in a paste power goes with viscosity and the square of the speed") {
  Food paste = batch::water();
  paste.name = "paste";
  paste.consistency.consistency = 500.0;  // Newtonian
  const auto at = [&](double speed) {
    Instant now(column(AgitatorKind::anchor), {batch::liquid(paste, mass, 330.15)},
                {330.15, 330.15}, lossless());
    now.inputs.agitator_speed = speed;
    return now.rates()[slot::stirring_energy];
  };
  // K_p mu N^2 d^3, K_p 300 (McCabe, from memory). Re = 0.07 at 1 1/s: 0.35 Re / 300 on top.
  CHECK_THAT(at(1.0), WithinRel(300.0 * 500.0 * std::pow(0.19, 3), 1e-3));
  CHECK_THAT(at(1.0) / at(0.5), WithinRel(4.0, 1e-3));
}

TEST_CASE("an adiabatic kettle warms by the work of its paddle over its heat capacity") {
  auto now = stirred(AgitatorKind::paddle, 10.0);
  const double watts = 1.7 * scale(10.0);
  const double duration = 3600.0;
  now.wait(duration);
  // Energy book is P t; 0.3 %: the density falls by that while it warms by 6 K.
  CHECK_THAT(now.state[slot::stirring_energy], WithinRel(watts * duration, 4e-3));
  // 4184 J/(kg K) (IAPWS-IF97, 60 degC); floor 7854 x 487 x 5 mm, wall 7900 x 515 x 1 mm
  // (Incropera, table A.1) warm with it. A lidded surface of 0.03 m2 radiates 0.1 W/K: 0.4 W of 415
  // W.
  const double pi = 3.14159265358979;
  const double level = mass / 983.2 / (pi * 0.01);
  const double capacity = mass * 4184.0 + 7854.0 * 487.0 * 0.005 * pi * 0.01 +
                          7900.0 * 515.0 * 0.001 * pi * 0.2 * (level + 0.02);
  CHECK_THAT(now.scene().liquid_temperature - 330.15, WithinRel(watts * duration / capacity, 6e-3));
}

TEST_CASE("the power factor scales the work and nothing else is given") {
  auto plain = stirred(AgitatorKind::paddle, 6.0);
  auto half = stirred(AgitatorKind::paddle, 6.0, lossless().with("agitator.power_factor", 0.5));
  CHECK_THAT(half.rates()[slot::stirring_energy],
             WithinRel(0.5 * plain.rates()[slot::stirring_energy], 1e-12));
  CHECK(plain.rates()[slot::heater_energy] == 0.0);
}

TEST_CASE("blades that are less deep in the product have less to push") {
  const auto at = [](double water) {
    Instant now(column(AgitatorKind::paddle), {batch::liquid(batch::water(), water, 330.15)},
                {330.15, 330.15}, lossless());
    now.inputs.agitator_speed = 10.0;
    return now.rates()[slot::stirring_energy];
  };
  double last = 0.0;
  for (double water : {0.01, 0.1, 1.0, 3.0, 6.0, 20.0}) {
    CHECK(at(water) > last);
    last = at(water);
  }
  // A depth of one diameter or more stops mattering: less than a fifth is missing at one.
  CHECK_THAT(at(50.0), WithinRel(at(20.0), 0.01));
}

TEST_CASE("the work ends in the liquid, or in the pieces of a dry heap") {
  // Two kettles that differ in the work alone: what is stirred takes up the difference.
  Kettle kettle = batch::stew_kettle();
  kettle.agitator = AgitatorKind::paddle;
  for (bool heap : {false, true}) {
    const auto food = heap ? batch::pieces(batch::carrot(), 20.0, 300.0, 0.02)
                           : batch::liquid(batch::water(), 20.0, 300.0);
    const auto rates_and_taken = [&](double factor) {
      Instant now(kettle, {food}, {300.0, 300.0},
                  Coefficients().with("agitator.power_factor", factor));
      now.inputs.agitator_speed = 1.0;
      const auto rates = now.rates();
      double pieces = 0.0;
      for (std::size_t i = slot::fixed_count; i < rates.size(); ++i) {
        if (now.model.layout().names[i].find("enthalpy") != std::string::npos) pieces += rates[i];
      }
      return std::pair{rates[slot::stirring_energy], heap ? pieces : rates[slot::liquid_enthalpy]};
    };
    const auto [work, taken] = rates_and_taken(1.0);
    const auto [half, less] = rates_and_taken(0.5);
    REQUIRE(work > 1.0);
    CHECK_THAT(taken - less, WithinRel(work - half, 1e-6));
  }
}

TEST_CASE("heat and mass balance at every instant while an agitator works hard") {
  for (auto kind : {AgitatorKind::anchor, AgitatorKind::scraped_anchor, AgitatorKind::paddle,
                    AgitatorKind::helical_ribbon, AgitatorKind::turbine}) {
    for (double water : {0.05, 5.0, 60.0}) {
      Kettle kettle = batch::stew_kettle();
      kettle.agitator = kind;
      Instant now(kettle,
                  {batch::liquid(batch::water(), water, 330.0),
                   batch::pieces(batch::carrot(), 8.0, 290.0, 0.02)},
                  {350.0, 330.0});
      now.inputs.agitator_speed = 3.0;
      now.inputs.pour_rate = {0.1, 0.1};
      INFO("kind " << static_cast<int>(kind) << ", water " << water << " kg");
      REQUIRE(now.rates()[slot::stirring_energy] > 1.0);
      now.check_books();
    }
  }
}
