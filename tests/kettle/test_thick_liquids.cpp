// Thick liquids in the kettle: shear rate, dilution, boiling down, thickening for good.
#include <cmath>

#include "instant.hpp"
#include "kettlecast/kettle/films.hpp"
#include "kettlecast/network/liquid_pool.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

/// Puree of 10 % dry matter; K = 20 Pa s^0.5 at any temperature, B = 12.
Food puree() {
  Food food = batch::water();
  food.name = "puree";
  food.composition = {0.9, 0.0, 0.0, 0.1, 0.0, 0.0};
  food.consistency.consistency = 20.0;
  food.consistency.flow_index = 0.5;
  food.consistency.reference_solids = 0.1;
  food.consistency.solids_exponent = 12.0;
  return food;
}

/// Sauce like water that sets between 50 and 55 degC to 400 times its viscosity, at 0.01 1/s.
Food sauce() {
  Food food = batch::water();
  food.name = "sauce";
  food.consistency.thickens_from = 323.15;
  food.consistency.thickens_until = 328.15;
  food.consistency.thickening_factor = 400.0;
  food.consistency.thickening_rate = 0.01;
  return food;
}

Kettle stirred_by(AgitatorKind kind) {
  Kettle kettle = batch::stew_kettle();
  kettle.agitator = kind;
  return kettle;
}

/// Viscosity that the films of a kettle see, at a speed [Pa s].
double viscosity_of(Instant& now, double speed) {
  now.inputs.agitator_speed = speed;
  now.rates();
  const auto& scene = now.scene();
  return film_properties(scene.pool, scene.thick, scene.liquid_temperature).viscosity;
}

double thickened(Instant& now) { return now.scene().thick.parts.at(0).thickened; }

}  // namespace

TEST_CASE("the shear rate around an agitator is its constant times its speed") {
  const char handbook[] = "Metzner & Otto, AIChE J. 3 (1957) 3; constants: handbooks, from memory";
  const auto shear = [](AgitatorKind kind, double speed) {
    return agitator_shear_rate(stirred_by(kind), speed);
  };
  check_relative(shear(AgitatorKind::anchor, 0.5), published(12.5, "1/s", handbook), 1e-12);
  check_relative(shear(AgitatorKind::paddle, 0.5), published(5.5, "1/s", handbook), 1e-12);
  check_relative(shear(AgitatorKind::helical_ribbon, 0.5), published(15.0, "1/s", handbook), 1e-12);
  check_relative(shear(AgitatorKind::turbine, 0.5), published(4.75, "1/s", handbook), 1e-12);
  CHECK(shear(AgitatorKind::none, 0.5) == 0.0);
  CHECK(shear(AgitatorKind::scraped_anchor, 0.0) == 0.0);
}

TEST_CASE("a power-law liquid shows its viscosity at the shear rate of the agitator") {
  const auto at = [](AgitatorKind kind) {
    Instant now(stirred_by(kind), {batch::liquid(puree(), 40.0, 320.0)});
    return viscosity_of(now, 1.0);
  };
  const char source[] = "Metzner & Otto (1957), K 20 Pa s^0.5 at 1 turn per second";
  check_relative(at(AgitatorKind::turbine), published(6.488856845, "Pa s", source), 1e-4);
  check_relative(at(AgitatorKind::helical_ribbon), published(3.651483717, "Pa s", source), 1e-4);
}

TEST_CASE("water thins a thick liquid along the logarithm, whoever is poured first") {
  const auto with = [](std::vector<Addition> additions) {
    Instant now(stirred_by(AgitatorKind::anchor), std::move(additions), {293.15, 293.15});
    return viscosity_of(now, 1.0);
  };
  const auto thick = batch::liquid(puree(), 10.0, 293.15);
  const auto thin = batch::liquid(batch::water(), 10.0, 293.15);
  const double alone = with({thick}), water = 1.0016e-3;  // IAPWS R12-08, 20 degC [Pa s]
  CHECK_THAT(with({thick, thin}), WithinRel(std::sqrt(alone * water), 1e-3));
  CHECK_THAT(with({thin, thick}), WithinRel(with({thick, thin}), 1e-9));
}

TEST_CASE("a puree that boiled down is thicker by its solids") {
  Instant now(stirred_by(AgitatorKind::anchor), {batch::liquid(puree(), 40.0, 372.0)},
              {420.0, 372.0});
  const double before = viscosity_of(now, 1.0);
  now.inputs.floor_heat = 1.0;
  now.wait(900.0);
  const double left = 40.0 - now.state[slot::vapour_mass];
  REQUIRE(left < 38.0);
  // 4 kg of dry matter in what is left; K does not depend on temperature.
  CHECK_THAT(viscosity_of(now, 1.0) / before, WithinRel(std::exp(12.0 * (4.0 / left - 0.1)), 1e-6));
}

TEST_CASE("water that is stirred in and boiled off again leaves the puree as it was") {
  Instant now(stirred_by(AgitatorKind::anchor),
              {batch::liquid(puree(), 20.0, 372.0), batch::liquid(batch::water(), 2.0, 372.0)},
              {420.0, 372.0});
  Instant alone(stirred_by(AgitatorKind::anchor), {batch::liquid(puree(), 20.0, 372.0)});
  now.inputs.floor_heat = 1.0;
  while (now.state[slot::vapour_mass] < 2.0) now.wait(1.0);
  // 1 s of 15 kW boils off 7 g at most: 4e-4 of dry share 0.1, times 12.
  CHECK_THAT(viscosity_of(now, 1.0), WithinRel(viscosity_of(alone, 1.0), 1e-3));
}

TEST_CASE("water that boiled off before the puree came does not thicken it") {
  Instant now(stirred_by(AgitatorKind::anchor),
              {batch::liquid(batch::water(), 20.0, 372.0), batch::liquid(puree(), 1e-3, 372.0)},
              {420.0, 372.0});
  now.inputs.floor_heat = 1.0;
  while (now.state[slot::vapour_mass] < 5.0) now.wait(10.0);
  now.model.pour(1, 15.0, now.state);
  const double water = now.state[slot::water] - 0.9 * 15.0;
  Instant fresh(stirred_by(AgitatorKind::anchor),
                {batch::liquid(batch::water(), water, 372.0), batch::liquid(puree(), 15.0, 372.0)});
  now.state[slot::liquid_enthalpy] = fresh.state[slot::liquid_enthalpy];
  CHECK_THAT(viscosity_of(now, 1.0), WithinRel(viscosity_of(fresh, 1.0), 1e-3));
}

TEST_CASE("at a constant temperature a sauce thickens as 1 - exp(-r t)") {
  Kettle kettle = stirred_by(AgitatorKind::none);
  kettle.surroundings.temperature = 333.15;
  kettle.surroundings.relative_humidity = 1.0;
  Instant now(kettle, {batch::liquid(sauce(), 40.0, 333.15)}, {333.15, 333.15});
  double time = 0.0;
  for (double until : {30.0, 100.0, 300.0}) {
    now.wait(until - time);
    time = until;
    REQUIRE_THAT(now.scene().liquid_temperature, WithinAbs(333.15, 0.1));
    CHECK_THAT(thickened(now), WithinAbs(1.0 - std::exp(-0.01 * until), 1e-5));
  }
}

TEST_CASE("what has thickened stays thick when it cools, and cold sauce never thickens") {
  Kettle kettle = stirred_by(AgitatorKind::anchor);
  kettle.jacket.cooling = {2.0, 278.15, 0.0};
  Instant now(kettle, {batch::liquid(sauce(), 40.0, 293.15)}, {293.15, 293.15});
  const double raw = viscosity_of(now, 0.5);
  now.wait(600.0);
  CHECK(thickened(now) == 0.0);
  now.inputs.floor_heat = 1.0;
  while (now.scene().liquid_temperature < 345.0) now.wait(10.0);
  now.inputs.floor_heat = 0.0;
  now.inputs.cooling = 1.0;
  double last = thickened(now);
  CHECK(last > 0.5);
  while (now.scene().liquid_temperature > 293.15) {
    now.wait(60.0);
    CHECK(thickened(now) >= last - 1e-9);
    last = thickened(now);
  }
  // Evenly in the logarithm, 400 at the end; a little water has left since. At 20 degC as at first.
  CHECK_THAT(std::log(viscosity_of(now, 0.5) / raw), WithinRel(std::log(400.0) * last, 0.01));
}

TEST_CASE("heat and mass balance at every instant with thick liquids, thickening and boiling") {
  for (double temperature : {300.0, 326.0, 374.0}) {
    Instant now(
        stirred_by(AgitatorKind::helical_ribbon),
        {batch::liquid(puree(), 20.0, temperature), batch::liquid(sauce(), 10.0, temperature),
         batch::pieces(batch::carrot(), 5.0, 280.0, 0.02)},
        {temperature + 40.0, temperature});
    now.inputs.floor_heat = 1.0;
    now.inputs.agitator_speed = 0.7;
    now.inputs.pour_rate = {0.1, 0.05, 0.02};
    now.check_books();
  }
}
