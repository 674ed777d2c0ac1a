#include <cmath>
#include <limits>

#include "instant.hpp"
#include "kettlecast/base/errors.hpp"
#include "kettlecast/kettle/films.hpp"
#include "kettlecast/network/liquid_pool.hpp"
#include "message.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

using Model = KettleModel<double>;

/// A model with water, oil and pieces in it, each at its own temperature.
Instant filled(double water, double temperature, double piece_temperature) {
  return {batch::stew_kettle(),
          {batch::liquid(batch::water(), water, temperature),
           batch::liquid(batch::oil(), 1.0, temperature),
           batch::pieces(batch::carrot(), 10.0, piece_temperature, 0.02)},
          {temperature + 40.0, temperature - 10.0}};
}

Inputs busy(Cover cover) {
  Inputs inputs;
  inputs.floor_heat = 0.8;
  inputs.jacket_heat = 1.0;
  inputs.agitator_speed = 0.4;
  inputs.cover = cover;
  inputs.pour_rate = {0.05, 0.0, 0.02};
  return inputs;
}

}  // namespace

TEST_CASE("heat and mass balance at every instant, wet, dry, frozen, boiling and covered") {
  struct Case {
    double water, temperature, piece_temperature;
  };
  for (const Case& at :
       {Case{40.0, 300.0, 280.0}, Case{40.0, 360.0, 255.15}, Case{1.0, 330.0, 300.0},
        Case{0.1, 420.0, 390.0}, Case{30.0, 374.5, 374.0}}) {
    for (Cover cover : {Cover::open, Cover::lid, Cover::oil_film}) {
      auto kettle = filled(at.water, at.temperature, at.piece_temperature);
      kettle.inputs = busy(cover);
      INFO("water " << at.water << " kg, " << at.temperature << " K");
      kettle.check_books();
    }
  }
}

TEST_CASE("nothing happens in a kettle at the temperature of a saturated room") {
  Kettle kettle = batch::stew_kettle();
  kettle.surroundings.relative_humidity = 1.0;
  const double room = kettle.surroundings.temperature;
  const std::vector<Addition> additions{batch::liquid(batch::water(), 40.0, room),
                                        batch::pieces(batch::carrot(), 10.0, room, 0.02)};
  Model model(kettle, Coefficients().values(), additions);
  auto x = model.initial_state({room, room});
  for (std::size_t i = 0; i < additions.size(); ++i) model.pour(i, additions[i].mass, x);
  Inputs inputs;
  inputs.pour_rate = {0.0, 0.0};
  std::vector<double> rates;
  model.rates(inputs, x, rates);
  for (std::size_t node = slot::elements; node <= slot::wall_dry; ++node) {
    INFO(model.layout().names[node]);
    CHECK_THAT(rates[node], WithinAbs(0.0, 1e-9));
  }
  // One watt would be far below what any probe could show.
  CHECK_THAT(rates[slot::liquid_enthalpy], WithinAbs(0.0, 1.0));
}

TEST_CASE("heat flows from hot to cold") {
  auto kettle = filled(40.0, 330.0, 280.0);
  const auto rates = kettle.rates();
  CHECK(rates[slot::floor_upper] < 0.0);  // 40 K above the liquid
  CHECK(rates[slot::wall_wet] > 0.0);     // 10 K below
  for (const auto& slots : kettle.model.layout().pieces) {
    CHECK(rates[slots.enthalpy + kettle.model.pieces()[0].shells.count - 1] > 0.0);
  }
  CHECK(rates[slot::heater_energy] == 0.0);
}

TEST_CASE("all rates are finite from an empty kettle to a full one") {
  for (double water : {1e-4, 0.01, 1.0, 30.0, 150.0}) {
    for (double temperature : {274.0, 320.0, 372.0, 380.0}) {
      auto kettle = filled(water, temperature, 260.0);
      kettle.inputs = busy(Cover::open);
      int bad = 0;
      for (double rate : kettle.rates()) bad += !std::isfinite(rate);
      CHECK(bad == 0);
    }
  }
  Model empty(batch::stew_kettle(), Coefficients().values(), {});
  const auto x = empty.initial_state({});
  std::vector<double> rates;
  empty.rates({}, x, rates);
  for (double rate : rates) CHECK(std::isfinite(rate));
}

TEST_CASE("the level is the volume over the floor area") {
  const std::vector<Addition> additions{batch::liquid(batch::water(), 50.0, 333.15)};
  Model model(batch::stew_kettle(), Coefficients().values(), additions);
  auto x = model.initial_state({});
  model.pour(0, 50.0, x);
  // 50 kg at the 983.2 kg/m3 of water at 60 degC (IAPWS-IF97) on pi/4 0.8^2 m2.
  CHECK_THAT(model.level(x), WithinRel(50.0 / 983.2 / (3.14159265358979 * 0.16), 1e-9));
  CHECK_THAT(model.product_mass(x), WithinAbs(50.0, 1e-12));
}

TEST_CASE("an overfull kettle is refused with what is given and allowed") {
  const std::vector<Addition> additions{batch::liquid(batch::water(), 300.0, 293.15)};
  const auto make = [&] { Model(batch::stew_kettle(), Coefficients().values(), additions); };
  CHECK_THROWS_AS(make(), InvalidArgument);
  // 300 kg at 998.2 kg/m3 (IAPWS-IF97, 20 degC) are 301 L; the cylinder holds 226 L.
  CHECK_THROWS_WITH(make(), mentions("fill 301 L") && mentions("at most 226 L"));
}

TEST_CASE("a start that cannot be is refused") {
  Model model(batch::stew_kettle(), Coefficients().values(), {});
  CHECK_THROWS_AS(model.initial_state({20.0, 295.15}), InvalidArgument);
  CHECK_THROWS_WITH(model.initial_state({295.15, std::numeric_limits<double>::infinity()}),
                    mentions("Start: wall must be between"));
}

TEST_CASE("the floor boils above saturation only and below the critical flux") {
  CHECK(boiling_heat_flux(-5.0, 373.12, 2.8e-4) == 0.0);
  CHECK(boiling_heat_flux(0.0, 373.12, 2.8e-4) == 0.0);
  double last = 0.0;
  for (double excess = 0.5; excess <= 60.0; excess += 0.5) {
    const double flux = boiling_heat_flux(excess, 373.12, water::viscosity(373.12));
    CHECK(flux >= last);
    last = flux;
  }
  // Critical flux of water at 1 atm on a large plate: 1.26 MW/m2 (Incropera, example 10.1).
  CHECK(last < 1.27e6);
  CHECK(last > 0.5e6);
}

TEST_CASE("films grow with speed and go over into natural convection at rest") {
  const Kettle kettle = batch::stew_kettle();
  const LiquidPool<double> pool{50.0, 0.0, 0.0, 0.0, 0.0};
  const auto fluid = film_properties(pool, 333.15);
  double last_floor = 0.0, last_wall = 0.0, last_piece = 0.0;
  for (double speed = 0.0; speed < 2.0; speed += 0.02) {
    const double floor = floor_film_coefficient(kettle, fluid, {speed, 10.0, 1.0});
    const double wall = wall_film_coefficient(kettle, fluid, {speed, 10.0, 1.0});
    const double piece = piece_film_coefficient(kettle, fluid, {speed, 1.0, 0.01, 10.0}, 0.02);
    CHECK(floor >= last_floor);
    CHECK(wall >= last_wall);
    CHECK(piece >= last_piece);
    last_floor = floor;
    last_wall = wall;
    last_piece = piece;
  }
  // At rest natural convection of water at 10 K: some hundred W/(m2 K) (Incropera, table 1.1).
  CHECK(floor_film_coefficient(kettle, fluid, {0.0, 10.0, 1.0}) > 100.0);
  CHECK(floor_film_coefficient(kettle, fluid, {0.0, 10.0, 1.0}) < 1000.0);
}

TEST_CASE("in a heap heat passes the film of liquid that coats the pieces") {
  const Kettle kettle = batch::stew_kettle();
  const LiquidPool<double> pool{0.0, 2.5, 0.0, 0.0, 0.0};
  const auto fluid = film_properties(pool, 353.15);
  // Conduction through half a film of 1.4 mm, speed without effect: 2 k / e by hand.
  const double coating = 1.4e-3;
  const double by_hand = 2.0 * fluid.conductivity / coating;
  for (double speed : {0.0, 0.5}) {
    const double film = piece_film_coefficient(kettle, fluid, {speed, 0.0, coating, 50.0}, 0.008);
    CHECK_THAT(film, Catch::Matchers::WithinRel(by_hand, 0.08));
  }
}

TEST_CASE("vapour under a lid heats a colder wall only") {
  const Kettle kettle = batch::stew_kettle();
  CHECK(condensation_flux(kettle, FreeSurface<double>{360.0, 1.0, 0.0}, 365.0) == 0.0);
  CHECK(condensation_flux(kettle, FreeSurface<double>{360.0, 1.0, 0.0}, 360.0) == 0.0);
  // Without vapour 6 W/(m2 K) are left; hot vapour carries many times that.
  CHECK(condensation_flux(kettle, FreeSurface<double>{275.15, 1.0, 0.0}, 273.65) < 3.0 * 6.0 * 1.5);
  CHECK(condensation_flux(kettle, FreeSurface<double>{365.0, 1.0, 0.0}, 355.0) > 10.0 * 6.0 * 10.0);
}

TEST_CASE("films stay finite in ice-cold water, which shrinks when it warms") {
  const Kettle kettle = batch::stew_kettle();
  const LiquidPool<double> pool{50.0, 0.0, 0.0, 0.0, 0.0};
  for (double temperature = 268.15; temperature < 280.0; temperature += 0.5) {
    const auto fluid = film_properties(pool, temperature);
    CHECK(piece_film_coefficient(kettle, fluid, {0.0, 1.0, 0.01, 10.0}, 0.02) > 0.0);
    CHECK(floor_film_coefficient(kettle, fluid, {0.0, 10.0, 1.0}) > 0.0);
    CHECK(wall_film_coefficient(kettle, fluid, {0.0, 10.0, 1.0}) > 0.0);
  }
}
