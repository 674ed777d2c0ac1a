// Whole runs against closed forms. A slender column of water, whose free surface is small against
// its wall, stands in for a body without losses; each test bounds what remains.
#include <cmath>

#include "batch.hpp"
#include "published.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

constexpr double mass = 58.0;
constexpr double floor_area = 3.14159265358979 * 0.01;

/// Heat capacity of the floor: plain carbon steel, Incropera and DeWitt, table A.1 (7854 kg/m3,
/// 487 J/(kg K)); 5 mm. Elements: 0.005 J/(K W) of 5 kW.
constexpr double floor_capacity = 7854.0 * 487.0 * 0.005 * floor_area + 25.0;
/// Heat capacity of the wall, AISI 304 (7900 kg/m3, 515 J/(kg K)), 1 mm thick and `height` high.
double wall_capacity(double height) {
  return 7900.0 * 515.0 * 0.001 * 3.14159265358979 * 0.2 * height;
}

/// Wetted height: the level at 60 degC (983.2 kg/m3, IAPWS-IF97) and 2 cm of splashing.
const double wet = mass / 983.2 / floor_area + 0.02;

Phase filled(Phase phase, double temperature) {
  phase.additions = {batch::liquid(batch::water(), mass, temperature)};
  return phase;
}

double last(const Forecast& forecast, const char* name) {
  return batch::values_of(forecast.trace, name).back();
}

double degrees(double celsius) { return 273.15 + celsius; }

}  // namespace

TEST_CASE("water without losses takes up exactly the heat given") {
  // From 40 degC with 60 degC around: the room gives and takes next to nothing.
  const double rise = 1e3 * (251.154 - 167.541) * mass;  // IAPWS-IF97, saturated liquid [J]
  const double metal = (floor_capacity + wall_capacity(wet)) * 20.0;
  const double duration = (rise + metal) / 5e3;
  const Recipe recipe{
      "heat and soak",
      {filled(batch::heat_for(duration, 1.0), degrees(40.0)), batch::heat_for(600.0, 0.0)}};
  const auto forecast = batch::run(batch::column(degrees(60.0)), recipe, batch::without_losses(),
                                   {degrees(40.0), degrees(40.0)});
  REQUIRE(std::fabs(forecast.balance.lost_energy) < 1e-3 * rise);
  // 1e-3 of 20 K: the heat exchanged with the room after all.
  CHECK_THAT(last(forecast, "product.temperature"), WithinAbs(degrees(60.0), 0.02));
  CHECK_THAT(forecast.balance.heater_energy, WithinRel(5e3 * duration, 1e-9));
}

TEST_CASE("twenty more pounds of cold water need their own heat and no more") {
  const double cold = 20.0 * 0.45359237;
  const double needed = 1e3 * cold * (251.154 - 21.019);  // 5 -> 60 degC, IAPWS-IF97 [J]
  Phase add = batch::heat_for(needed / 5e3, 1.0);
  add.additions = {batch::liquid(batch::water(), cold, degrees(5.0))};
  Kettle kettle = batch::column(degrees(60.0));
  kettle.height = 2.4;
  const Recipe recipe{
      "more",
      {filled(batch::heat_for(60.0, 0.0), degrees(60.0)), add, batch::heat_for(600.0, 0.0)}};
  const auto forecast =
      batch::run(kettle, recipe, batch::without_losses(), {degrees(60.0), degrees(60.0)});
  REQUIRE(std::fabs(forecast.balance.lost_energy) < 2e-3 * needed);
  // 2e-3 of the 7 K by which the cold water sets the batch back.
  CHECK_THAT(last(forecast, "product.temperature"), WithinAbs(degrees(60.0), 0.02));
}

TEST_CASE("a boiling kettle loses water at the rate of its net heat") {
  Phase boil = filled(batch::heat_for(900.0, 1.0), degrees(99.9));
  Phase steady = batch::heat_for(600.0, 1.0);
  const auto forecast = batch::run(batch::column(degrees(60.0)), {"boil", {boil, steady}},
                                   batch::without_losses(), {degrees(99.9), degrees(99.9)});
  // 5 kW over 2256.54 kJ/kg (IAPWS-IF97 at 1 atm). The lidded surface radiates at most
  // 0.5 x 5.67e-8 (373.15^4 - 333.15^4) x 0.0314 m2 = 6.3 W and conducts half that: 0.2 %.
  check_relative(forecast.phases[1].evaporated,
                 published(600.0 * 5e3 / 2256.54e3, "kg", "heat over latent heat, IAPWS-IF97"),
                 2.5e-3);
  CHECK_THAT(last(forecast, "liquid.temperature"), WithinAbs(373.12, 1.5));
}

TEST_CASE("a kettle that only its wall cools follows an exponential") {
  // Inner over outer film is 3000 / 20 at least: UA is that of the outside within 0.7 %. Under an
  // oil film nothing evaporates or condenses; the surface radiates 0.96 x 4 sigma T^3 x A =
  // 0.26 W/K of 24 W/K.
  const double room = degrees(30.0);
  const auto coefficients =
      batch::without_losses().with("wall.loss", 20.0).with("wall.film_factor", 6.0);
  Recipe cool{"cool",
              {filled(batch::heat_for(60.0, 0.0), degrees(70.0)), batch::heat_for(3600.0, 0.0)}};
  for (auto& phase : cool.phases) phase.cover = Cover::oil_film;
  const auto forecast =
      batch::run(batch::column(room), cool, coefficients, {degrees(70.0), degrees(70.0)});
  const double conductance = 20.0 * 3.14159265358979 * 0.2 * wet + 0.26;
  // 4186 J/(kg K): IAPWS-IF97, mean of 58 to 70 degC.
  const double capacity = mass * 4186.0 + floor_capacity + wall_capacity(wet);
  const auto time = batch::values_of(forecast.trace, "time");
  const auto product = batch::values_of(forecast.trace, "product.temperature");
  std::size_t begin = 0;
  while (time[begin] < 60.0) ++begin;
  const double slope =
      std::log((product.back() - room) / (product[begin] - room)) / (time.back() - time[begin]);
  CHECK_THAT(slope, WithinRel(-conductance / capacity, 0.015));
  // Straight on a logarithmic scale: halfway in time, halfway in the logarithm.
  const std::size_t middle = (begin + product.size() - 1) / 2;
  const double half =
      std::log((product[middle] - room) / (product[begin] - room)) / (time[middle] - time[begin]);
  CHECK_THAT(half, WithinRel(slope, 0.01));
}

TEST_CASE("the probe lags a steady rise by its time constant") {
  // First-order lag on a ramp: the reading trails by rate x lag, exactly.
  const auto coefficients = batch::without_losses().with("probe.lag", 30.0);
  const auto forecast = batch::run(batch::column(degrees(60.0)),
                                   {"ramp", {filled(batch::heat_for(600.0, 1.0), degrees(40.0))}},
                                   coefficients, {degrees(40.0), degrees(40.0)});
  const auto product = batch::values_of(forecast.trace, "product.temperature");
  const auto time = batch::values_of(forecast.trace, "time");
  const std::size_t n = time.size() - 1;
  const double rate = (product[n] - product[n - 20]) / (time[n] - time[n - 20]);
  CHECK_THAT(product[n] - last(forecast, "probe.reading"), WithinRel(30.0 * rate, 1e-3));
}
