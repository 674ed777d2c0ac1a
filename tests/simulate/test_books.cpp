#include <cmath>

#include "batch.hpp"
#include "published.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

void check_books(const Forecast& forecast) {
  INFO("heater " << forecast.balance.heater_energy << " J, duration " << forecast.duration << " s");
  CHECK(std::fabs(forecast.balance.heat_residual) < 1e-6);
  CHECK(std::fabs(forecast.balance.mass_residual) < 1e-6);
  CHECK(forecast.balance.heater_energy > 0.0);
}

}  // namespace

TEST_CASE("heat and mass books of a stew close, on/off and PI") {
  for (auto control : {ControllerKind::on_off, ControllerKind::proportional_integral}) {
    const auto forecast = batch::run(batch::stew_kettle(control), batch::stew());
    check_books(forecast);
    double evaporated = 0.0, energy = 0.0;
    for (const auto& phase : forecast.phases) {
      evaporated += phase.evaporated;
      energy += phase.energy;
    }
    CHECK_THAT(forecast.product_mass, WithinAbs(2.0 + 8.0 + 40.0 + 20.0 - evaporated, 1e-4));
    CHECK_THAT(energy, WithinRel(forecast.balance.heater_energy, 1e-9));
  }
}

TEST_CASE("books close under every cover") {
  for (Cover cover : {Cover::open, Cover::lid, Cover::oil_film}) {
    auto phase = batch::hold(360.0, 300.0, {batch::liquid(batch::water(), 30.0, 290.0)});
    phase.cover = cover;
    check_books(batch::run(batch::stew_kettle(), {"water", {phase}}));
  }
}

TEST_CASE("books close when a little water boils dry in oil") {
  auto phase = batch::hold(
      430.0, 600.0,
      {batch::liquid(batch::oil(), 5.0, 293.15), batch::liquid(batch::water(), 0.3, 293.15)});
  phase.regulated = Regulated::floor;
  const auto forecast = batch::run(batch::stew_kettle(), {"dry", {phase}});
  check_books(forecast);
  // All of it is gone: what is left is oil.
  CHECK_THAT(forecast.product_mass, WithinAbs(5.0, 0.01));
  CHECK(batch::values_of(forecast.trace, "liquid.water").back() > -1e-6);
}

TEST_CASE("books close when pieces thaw, cook and give up juice") {
  auto phase = batch::hold(368.0, 1200.0,
                           {batch::liquid(batch::water(), 15.0, 290.0),
                            batch::pieces(batch::carrot(), 25.0, 248.15, 0.03)});
  check_books(batch::run(batch::stew_kettle(), {"thaw", {phase}}));
}

TEST_CASE("books close when something is poured all at once into a hot kettle") {
  // The level jumps: wall that was dry is wet from one instant to the next.
  const auto warm = batch::hold(345.0, 600.0, {batch::liquid(batch::water(), 20.0, 290.0)});
  const auto more = batch::hold(330.0, 10.0, {batch::liquid(batch::water(), 60.0, 290.0)});
  check_books(batch::run(batch::stew_kettle(), {"pour", {warm, more}}));
}
