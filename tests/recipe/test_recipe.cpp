#include <limits>

#include "kettlecast/base/errors.hpp"
#include "kettlecast/recipe/recipe.hpp"
#include "message.hpp"

using namespace kettlecast;

namespace {

Recipe heat_water() {
  Addition water;
  water.name = "water";
  water.mass = 40.0;
  Phase phase;
  phase.name = "heat";
  phase.regulated = Regulated::probe;
  phase.set_point = 353.15;
  phase.ends = {{EndKind::held, 60.0, Regulated::probe}};
  phase.additions = {water};
  return {"plain water", {phase}};
}

template <class Change>
Recipe changed(Change change) {
  Recipe recipe = heat_water();
  change(recipe.phases[0]);
  return recipe;
}

}  // namespace

TEST_CASE("a recipe that can be cooked passes") { CHECK_NOTHROW(check(heat_water())); }

TEST_CASE("a recipe without phases is refused") {
  CHECK_THROWS_AS(check(Recipe{"empty", {}}), InvalidArgument);
  CHECK_THROWS_WITH(check(Recipe{"empty", {}}), mentions("Recipe \"empty\"") && mentions("phases"));
}

TEST_CASE("a phase must have an end") {
  const auto recipe = changed([](Phase& phase) { phase.ends.clear(); });
  CHECK_THROWS_AS(check(recipe), InvalidArgument);
  CHECK_THROWS_WITH(check(recipe), mentions("phase \"heat\"") && mentions("never ends"));
}

TEST_CASE("a hold needs a set point") {
  const auto recipe = changed([](Phase& phase) { phase.regulated = Regulated::none; });
  CHECK_THROWS_WITH(check(recipe), mentions("needs a set point"));
}

TEST_CASE("a set point in degrees Celsius is refused with the allowed range in kelvin") {
  const auto recipe = changed([](Phase& phase) { phase.set_point = 95.0; });
  CHECK_THROWS_AS(check(recipe), InvalidArgument);
  CHECK_THROWS_WITH(check(recipe),
                    mentions("set_point must be between 223.15 and 573.15 K, got 95 K"));
}

TEST_CASE("masses and temperatures that cannot be are refused by addition and key") {
  const auto negative = changed([](Phase& phase) { phase.additions[0].mass = -2.0; });
  CHECK_THROWS_WITH(check(negative), mentions("addition \"water\"") && mentions("mass must be"));
  const auto missing = changed(
      [](Phase& phase) { phase.additions[0].mass = std::numeric_limits<double>::quiet_NaN(); });
  CHECK_THROWS_AS(check(missing), InvalidArgument);
  const auto celsius = changed([](Phase& phase) { phase.additions[0].temperature = 20.0; });
  CHECK_THROWS_WITH(check(celsius), mentions("temperature must be between"));
}

TEST_CASE("a liquid below its freezing point cannot be poured, frozen pieces can") {
  auto recipe = changed([](Phase& phase) { phase.additions[0].temperature = 255.15; });
  CHECK_THROWS_WITH(check(recipe), mentions("below its freezing point"));
  recipe.phases[0].additions[0].shape = Shape::sphere;
  CHECK_THROWS_WITH(check(recipe), mentions("piece_size must be between"));
  recipe.phases[0].additions[0].piece_size = 0.02;
  CHECK_NOTHROW(check(recipe));
}

TEST_CASE("a piece size without a shape is refused") {
  const auto recipe = changed([](Phase& phase) { phase.additions[0].piece_size = 0.01; });
  CHECK_THROWS_WITH(check(recipe), mentions("without a shape"));
}

TEST_CASE("a phase cannot end on time while something is still being poured") {
  const auto recipe = changed([](Phase& phase) {
    phase.additions[0].delay = 50.0;
    phase.additions[0].pour_time = 30.0;
    phase.ends = {{EndKind::elapsed, 60.0, Regulated::probe}};
  });
  CHECK(loaded_after(recipe.phases[0]) == 80.0);
  CHECK_THROWS_WITH(check(recipe), mentions("duration must be between 80"));
}

TEST_CASE("an end on a signal must name the signal and lie on its scale") {
  const auto none = changed([](Phase& phase) {
    phase.ends = {{EndKind::above, 350.0, Regulated::none}};
  });
  CHECK_THROWS_WITH(check(none), mentions("must name floor, probe, core or difference"));
  const auto celsius = changed([](Phase& phase) {
    phase.ends = {{EndKind::above, 80.0, Regulated::probe}};
  });
  CHECK_THROWS_WITH(check(celsius), mentions("end value must be between"));
  const auto difference = changed([](Phase& phase) {
    phase.ends = {{EndKind::above, 80.0, Regulated::difference}};
  });
  CHECK_NOTHROW(check(difference));
}

TEST_CASE("agitation that stands needs a time to turn") {
  const auto recipe = changed([](Phase& phase) { phase.agitation = {0.5, 0.0, 20.0}; });
  CHECK_THROWS_WITH(check(recipe), mentions("needs an on_time"));
}

TEST_CASE("a share of the heat above one is refused") {
  const auto recipe = changed([](Phase& phase) { phase.heat_limit = 1.2; });
  CHECK_THROWS_WITH(check(recipe), mentions("heat_limit must be between 0 and 1"));
}
