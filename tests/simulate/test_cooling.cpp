// Jackets over whole batches: steam that heats as Kern's sums say, and cold liquid that cools.
#include <cmath>

#include "batch.hpp"
#include "kettlecast/base/constants.hpp"
#include "published.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

constexpr double pi = constants::pi;
constexpr double mass = 58.0;
/// Level of the water at 60 degC (983.2 kg/m3, IAPWS-IF97) and 2 cm of splashing [m].
const double wet_height = mass / 983.2 / (pi * 0.01) + 0.02;
const double area = pi * 0.2 * wet_height;

double degrees(double celsius) { return constants::ice_point + celsius; }

/// The column of water in a jacket that is just higher than the water, without a heated floor.
Kettle column(const Jacket& jacket, double room) {
  Kettle kettle = batch::column(room);
  kettle.floor_power = 0.0;
  kettle.agitator = AgitatorKind::anchor;
  kettle.jacket = jacket;
  kettle.jacket.height = 1.9;
  return kettle;
}

Phase filled(Phase phase, const Food& food, double temperature) {
  phase.additions = {batch::liquid(food, mass, temperature)};
  return phase;
}

/// A phase under a lid whose jacket cools.
Phase cool_for(double duration) {
  Phase phase = batch::heat_for(duration, 0.0);
  phase.jacket = JacketUse::cool;
  return phase;
}

double at_end(const Forecast& forecast, const char* name) {
  return batch::values_of(forecast.trace, name).back();
}

/// Heat capacity of product, floor and wetted wall [J/K]: Incropera, table A.1, for the metals.
double capacity(double specific_heat) {
  return mass * specific_heat + 7854.0 * 487.0 * 0.005 * pi * 0.01 + 7900.0 * 515.0 * 0.001 * area;
}

Jacket cold(double flow, double inlet, double glycol = 0.0) {
  Jacket jacket;
  jacket.cooling = {flow, inlet, glycol};
  return jacket;
}

Coefficients good_films() {
  return batch::without_losses()
      .with("wall.film_factor", 6.0)
      .with("jacket.film_factor", 6.0)
      .with("jacket.heat_capacity", 500.0);
}

}  // namespace

TEST_CASE("a steam jacket heats a thick batch in the time of Kern's isothermal medium") {
  // A paste of 3 Pa s at any temperature, so that U hardly changes: at 6 turns per second and
  // Re = 71 an anchor gives 0.69 Re^0.5 Pr^(1/3) (Penney & Atiemo-Obeng, 2004).
  Food paste = batch::water();
  paste.consistency.consistency = 3.0;
  Jacket jacket;
  jacket.kind = JacketKind::steam;
  jacket.power = 1e6;
  jacket.steam_pressure = 15.0 * 6894.757293;
  Phase heat = filled(batch::hold(degrees(80.0), 0.0), paste, degrees(20.0));
  heat.agitation.speed = 6.0;
  heat.cover = Cover::lid;
  Kettle kettle = column(jacket, degrees(50.0));
  kettle.controller.reached_within = 0.0;
  kettle.controller.settle_after_pour = 0.0;
  const auto forecast = batch::run(kettle, {"steam", {heat}}, batch::without_losses(),
                                   {degrees(20.0), degrees(20.0)});
  // Water at 50 degC (IAPWS): 988.0 kg/m3, 4.181 kJ/(kg K), 0.6406 W/(m K).
  const double reynolds = 988.0 * 6.0 * 0.19 * 0.19 / 3.0, prandtl = 3.0 * 4181.0 / 0.6406;
  const double inside = 0.69 * std::sqrt(reynolds) * std::cbrt(prandtl) * 0.6406 / 0.2;
  // Steel 1 mm, 14.9 W/(m K), and Kern's 8500 W/(m2 K) for any jacket of steam.
  const double overall = 1.0 / (1.0 / inside + 0.001 / 14.9 + 1.0 / 8500.0);
  const double kern =
      capacity(4181.0) / (overall * area) * std::log((120.955 - 20.0) / (120.955 - 80.0));
  // 4 %: a film of steam of 6000 to 12000 is 2.5 % of U, k^(2/3) of water is 3 % more at the end
  // than in the middle, and the supply throttles within 2 K of saturation, which is 0.5 %.
  check_relative(forecast.phases[0].time_to_reach.value(),
                 published(kern, "s", "Kern (1950), equation 18.5, isothermal heating medium"),
                 0.04);
}

TEST_CASE("a steam jacket comes to saturation and never above") {
  Jacket jacket;
  jacket.kind = JacketKind::steam;
  jacket.power = 2e6;
  jacket.steam_pressure = 15.0 * 6894.757293;
  for (double air : {0.0, 0.1}) {
    jacket.air_share = air;
    Phase boil = filled(batch::heat_for(1800.0, 1.0), batch::water(), degrees(90.0));
    boil.jacket = JacketUse::heat;
    boil.jacket_limit = degrees(200.0);
    const auto forecast = batch::run(column(jacket, degrees(50.0)), {"steam", {boil}},
                                     batch::without_losses(), {degrees(90.0), degrees(90.0)});
    // IAPWS-IF97 at 204.75 kPa, and by Dalton at nine tenths of it, 184.27 kPa.
    const double saturation = degrees(air == 0.0 ? 120.955 : 117.65);
    const auto temperature = batch::values_of(forecast.trace, "jacket.temperature");
    CHECK(*std::max_element(temperature.begin(), temperature.end()) <= saturation + 0.01);
    // It throttles within its last 2 K: 1 m2 at some 2 kW/(m2 K) and 20 K takes 2 % of 2 MW.
    CHECK(temperature.back() > saturation - 0.5);
  }
}

TEST_CASE("a cooling jacket brings the product down to its inlet temperature") {
  const auto forecast =
      batch::run(column(cold(1.0, degrees(4.0)), degrees(20.0)),
                 {"chill", {filled(cool_for(4 * 3600.0), batch::water(), degrees(70.0))}},
                 good_films(), {degrees(70.0), degrees(70.0)});
  // The lidded surface takes 0.25 W/K of the 16 K to the room at most, UA is hundreds of W/K.
  CHECK_THAT(at_end(forecast, "product.temperature"), WithinAbs(degrees(4.0), 0.05));
  const auto product = batch::values_of(forecast.trace, "product.temperature");
  CHECK(*std::min_element(product.begin(), product.end()) >= degrees(4.0) - 1e-6);
  CHECK(std::fabs(forecast.balance.heat_residual) < 1e-6);
  // All that the batch gave, 4.186 kJ/(kg K) (IAPWS-IF97, mean of 4 to 70 degC), went that way.
  CHECK_THAT(forecast.balance.cooling_energy, WithinRel(capacity(4186.0) * 66.0, 0.01));
}

TEST_CASE("a trickle of coolant takes no more than its own heat capacity") {
  // Stirred jacket: batch and coolant end at 1/(M c) / (1/UA + 1/(w c)), w c = 0.02 x 4190 W/K.
  const double flow_capacity = 0.02 * 4190.0;  // IAPWS-IF97, 10 degC: 4.195; 30 degC: 4.180
  const auto forecast =
      batch::run(column(cold(0.02, degrees(10.0)), degrees(40.0)),
                 {"trickle", {filled(cool_for(3600.0), batch::water(), degrees(70.0))}},
                 good_films(), {degrees(70.0), degrees(70.0)});
  const double rate =
      std::log(60.0 / (at_end(forecast, "product.temperature") - degrees(10.0))) / 3600.0;
  const double most = flow_capacity / capacity(4186.0);
  CHECK(rate < most * 1.002);
  // Films of 500 W/(m2 K) at least, times 6, on both sides: UA of 1700 W/K and more.
  CHECK(rate > most / (1.0 + flow_capacity / 1700.0) * 0.99);
}

TEST_CASE("the book of cooling is flow times heat capacity times the warming of the coolant") {
  Options fine;
  fine.output_interval = 2.0;
  const auto forecast =
      batch::run(column(cold(0.1, degrees(5.0), 0.0), degrees(30.0)),
                 {"chill", {filled(cool_for(1800.0), batch::water(), degrees(70.0))}},
                 batch::without_losses(), {degrees(70.0), degrees(70.0)}, fine);
  const auto time = batch::values_of(forecast.trace, "time");
  const auto jacket = batch::values_of(forecast.trace, "jacket.temperature");
  double warmed = 0.0;
  for (std::size_t i = 1; i < time.size(); ++i) {
    warmed += (0.5 * (jacket[i] + jacket[i - 1]) - degrees(5.0)) * (time[i] - time[i - 1]);
  }
  // 4.205 kJ/(kg K) at 5 degC to 4.18 at 30 degC (IAPWS-IF97).
  CHECK_THAT(forecast.balance.cooling_energy, WithinRel(0.1 * 4195.0 * warmed, 0.005));
}

TEST_CASE("a jacket cools no further than its limit") {
  Phase gentle = cool_for(3600.0);
  gentle.jacket_cool_limit = degrees(30.0);
  const auto forecast = batch::run(column(cold(1.0, degrees(4.0)), degrees(25.0)),
                                   {"gentle", {filled(gentle, batch::water(), degrees(70.0))}},
                                   good_films(), {degrees(70.0), degrees(70.0)});
  const auto jacket = batch::values_of(forecast.trace, "jacket.temperature");
  CHECK(*std::min_element(jacket.begin(), jacket.end()) >= degrees(30.0) - 1e-3);
  CHECK_THAT(at_end(forecast, "product.temperature"), WithinAbs(degrees(31.0), 1.0));
}

TEST_CASE("more glycol, less flow or warmer coolant is never faster") {
  const auto time = [](double flow, double inlet, double glycol) {
    Phase chill = filled(cool_for(1.0), batch::water(), degrees(70.0));
    chill.ends = {{EndKind::below, degrees(30.0), Regulated::probe}};
    const auto forecast = batch::run(column(cold(flow, inlet, glycol), degrees(25.0)),
                                     {"chill", {chill}}, {}, {degrees(70.0), degrees(70.0)});
    CHECK(forecast.phases[0].ended == EndReason::signal);
    return forecast.duration;
  };
  const double best = time(0.5, degrees(2.0), 0.0);
  CHECK(time(0.5, degrees(2.0), 0.4) > best);
  CHECK(time(0.1, degrees(2.0), 0.0) > best);
  CHECK(time(0.5, degrees(12.0), 0.0) > best);
}
