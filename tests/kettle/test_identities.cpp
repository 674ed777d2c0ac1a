// What holds for every kettle: films and flows without jumps, more heat never slower.
#include <cmath>

#include "instant.hpp"
#include "kettlecast/base/constants.hpp"
#include "kettlecast/kettle/films.hpp"
#include "kettlecast/network/liquid_pool.hpp"
#include "sweep.hpp"

using namespace kettlecast;

namespace {

constexpr AgitatorKind agitators[] = {AgitatorKind::none,           AgitatorKind::anchor,
                                      AgitatorKind::scraped_anchor, AgitatorKind::paddle,
                                      AgitatorKind::helical_ribbon, AgitatorKind::turbine};
constexpr FloorShape floors[] = {FloorShape::flat, FloorShape::dished, FloorShape::hemispherical};

Kettle of(AgitatorKind agitator, FloorShape floor = FloorShape::flat) {
  Kettle kettle = batch::stew_kettle();
  kettle.agitator = agitator;
  kettle.agitator_diameter = agitator == AgitatorKind::none ? 0.0 : 0.5;
  kettle.floor_shape = floor;
  return kettle;
}

/// Water, syrup and oil at two temperatures.
std::vector<Fluid<double>> fluids() {
  const LiquidPool<double> water{1.0, 0.0, 0.0, 0.0, 0.0};
  const LiquidPool<double> syrup{0.3, 0.0, 0.7, 0.0, 0.0, 0.7};
  const LiquidPool<double> oil{0.0, 1.0, 0.0, 0.0, 0.0};
  return {film_properties(water, 280.0), film_properties(water, 360.0),
          film_properties(syrup, 330.0), film_properties(oil, 300.0), film_properties(oil, 420.0)};
}

/// Runs `look` with the floor film and the wall film of every agitator in every fluid.
template <class Look>
void each_film(Look look) {
  for (AgitatorKind agitator : agitators) {
    const Kettle kettle = of(agitator);
    for (const auto& fluid : fluids()) {
      INFO("agitator " << static_cast<int>(agitator) << ", viscosity " << fluid.viscosity);
      look(agitator, [&](double speed, double difference) {
        return floor_film_coefficient(kettle, fluid, {speed, difference, 1.0});
      });
      look(agitator, [&](double speed, double difference) {
        return wall_film_coefficient(kettle, fluid, {speed, difference, 1.0});
      });
    }
  }
}

/// Heat from the floor into liquid of a mass [W], the floor being 20 K hotter.
double floor_heat(const Kettle& kettle, double mass) {
  Instant now(kettle, {batch::liquid(batch::water(), mass, 330.0)}, {330.0, 330.0});
  const double before = now.rates()[slot::floor_upper];
  now.state[slot::floor_upper] = 350.0;
  return before - now.rates()[slot::floor_upper];
}

}  // namespace

TEST_CASE("films never jump with speed, and faster is never worse") {
  each_film([](AgitatorKind agitator, auto film) {
    const auto at = [&](double speed) { return film(speed, 15.0); };
    sweep::positive(0.0, 3.0, at);
    sweep::without_jump(0.0, 3.0, 0.1, at);
    if (agitator == AgitatorKind::none) {
      CHECK(at(3.0) == at(0.0));
    } else {
      sweep::rising(0.003, 3.0, at);
    }
  });
}

TEST_CASE("films never jump with the difference that drives them, whichever its sign") {
  each_film([](AgitatorKind, auto film) {
    for (double speed : {0.0, 0.2, 2.0}) {
      const auto at = [&](double difference) { return film(speed, difference); };
      sweep::positive(-60.0, 60.0, at);
      // A step of 0.06 K at 0.1 K, where h goes with the fourth root: 15 % at most.
      sweep::without_jump(-60.0, 60.0, 0.15, at);
      CHECK_THAT(at(-30.0), Catch::Matchers::WithinRel(at(30.0), 1e-12));
    }
  });
}

TEST_CASE("scrapers help, and never beyond what penetration theory allows") {
  for (const auto& fluid : fluids()) {
    for (double speed : {0.05, 0.5, 2.0}) {
      const double plain =
          wall_film_coefficient(of(AgitatorKind::anchor), fluid, {speed, 15.0, 1.0});
      const double film =
          wall_film_coefficient(of(AgitatorKind::scraped_anchor), fluid, {speed, 15.0, 1.0});
      // Kool (1958), Latinen (1959), a clean sweep by two blades: 2 sqrt(k rho cp N n / pi).
      const double ideal = 2.0 * std::sqrt(fluid.conductivity * fluid.density *
                                           fluid.specific_heat * speed * 2.0 / constants::pi);
      CHECK(film > plain);
      CHECK(film < std::cbrt(std::pow(plain, 3) + std::pow(ideal, 3)));
    }
  }
}

TEST_CASE("films join where the agitator hardly turns") {
  each_film([](AgitatorKind, auto film) {
    CHECK_THAT(film(1e-9, 15.0), Catch::Matchers::WithinRel(film(0.0, 15.0), 0.01));
  });
}

TEST_CASE("heat from the floor never jumps with the filling, in any floor shape, tilted or not") {
  for (FloorShape floor : floors) {
    for (double tilt : {0.0, 0.3}) {
      Kettle kettle = of(AgitatorKind::paddle, floor);
      kettle.tilt = tilt;
      INFO("floor " << static_cast<int>(floor) << ", tilt " << tilt);
      const double whole = floor_heat(kettle, 60.0);
      double last = floor_heat(kettle, 1e-3), largest = 0.0;
      for (double mass = 0.05; mass <= 60.0; mass += 0.05) {
        const double now = floor_heat(kettle, mass);
        largest = std::fmax(largest, std::fabs(now - last) / whole);
        last = now;
      }
      // 50 g on half a square metre or less: a twentieth of all heat at most.
      CHECK(largest < 0.05);
    }
  }
}

TEST_CASE("a heap with a drop of water dries as one without") {
  const auto vapour = [](double water) {
    Instant now(batch::stew_kettle(),
                {batch::pieces(batch::carrot(), 20.0, 330.0, 0.02),
                 batch::liquid(batch::water(), 1e-4, 330.0)},
                {330.0, 330.0});
    now.state[slot::water] = water;
    return now.rates()[slot::vapour_mass];
  };
  REQUIRE(vapour(0.0) > 0.0);
  CHECK_THAT(vapour(1e-4), Catch::Matchers::WithinRel(vapour(0.0), 0.01));
}

TEST_CASE("more power is never slower, whatever stirs and whatever the floor") {
  for (AgitatorKind agitator : agitators) {
    for (FloorShape floor : floors) {
      double last = 1e9;
      for (double power : {6e3, 12e3, 24e3}) {
        Kettle kettle = of(agitator, floor);
        kettle.floor_power = power;
        const auto forecast = batch::run(
            kettle,
            {"heat", {batch::hold(340.0, 0.0, {batch::liquid(batch::water(), 20.0, 290.0)})}});
        const double time = forecast.phases[0].time_to_reach.value();
        INFO("agitator " << static_cast<int>(agitator) << ", floor " << static_cast<int>(floor));
        CHECK(time < last);
        // Nor faster than all the power allows: 20 kg x 4.18 kJ/(kg K) x 48 K (IAPWS-IF97).
        CHECK(time > 20.0 * 4180.0 * 48.0 / (0.85 * power + 6e3));
        last = time;
      }
    }
  }
}

TEST_CASE("heat out of the floor is heat into liquid and room, with every agitator and floor") {
  for (AgitatorKind agitator : agitators) {
    for (FloorShape floor : floors) {
      for (double speed : {0.0, 1.0}) {
        Instant now(of(agitator, floor), {batch::liquid(batch::water(), 30.0, 330.0)},
                    {330.0, 330.0});
        now.inputs.agitator_speed = speed;
        const auto before = now.rates();
        now.state[slot::floor_upper] = 365.0;
        const auto after = now.rates();
        // Half of 15 mm of carbon steel, 7854 kg/m3 x 487 J/(kg K) (Incropera, table A.1); what the
        // upper half gives, the lower half, the liquid and, where it is bare, the room get.
        const double per_area = 7854.0 * 487.0 * 0.0075;
        const double area = floor_total_area(vessel_shape(now.model.kettle()));
        const double lower =
            per_area * area * (after[slot::floor_lower] - before[slot::floor_lower]);
        const double upper =
            per_area * area * (after[slot::floor_upper] - before[slot::floor_upper]);
        const double liquid = after[slot::liquid_enthalpy] - before[slot::liquid_enthalpy];
        const double room = after[slot::lost_energy] - before[slot::lost_energy];
        INFO("agitator " << static_cast<int>(agitator) << ", floor " << static_cast<int>(floor));
        CHECK(liquid > 0.0);
        CHECK_THAT(lower + liquid + room, Catch::Matchers::WithinRel(-upper, 1e-9));
      }
    }
  }
}
