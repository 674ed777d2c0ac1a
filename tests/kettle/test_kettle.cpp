#include <limits>

#include "batch.hpp"
#include "kettlecast/base/errors.hpp"
#include "kettlecast/kettle/kettle.hpp"
#include "message.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinRel;

namespace {

template <class Change>
Kettle changed(Change change) {
  Kettle kettle = batch::stew_kettle();
  change(kettle);
  return kettle;
}

}  // namespace

TEST_CASE("a kettle that can exist passes") { CHECK_NOTHROW(check(batch::stew_kettle())); }

TEST_CASE("the usable volume is that of the cylinder unless a working volume is given") {
  Kettle kettle = batch::stew_kettle();
  CHECK_THAT(usable_volume(kettle), WithinRel(3.14159265358979 * 0.4 * 0.4 * 0.45, 1e-12));
  kettle.working_volume = 0.15;
  CHECK(usable_volume(kettle) == 0.15);
}

TEST_CASE("a kettle that cannot exist is refused by name, key and range") {
  const auto refused = [](const Kettle& kettle, const char* key) {
    CHECK_THROWS_AS(check(kettle), InvalidArgument);
    CHECK_THROWS_WITH(check(kettle), mentions("Kettle \"stew\"") && mentions(key));
  };
  refused(changed([](Kettle& k) { k.diameter = 0.0; }), "diameter must be between");
  refused(changed([](Kettle& k) { k.diameter = std::numeric_limits<double>::quiet_NaN(); }),
          "diameter");
  refused(changed([](Kettle& k) { k.height = -1.0; }), "height must be between");
  refused(changed([](Kettle& k) { k.floor_power = -1.0; }), "floor_power must be between");
  refused(changed([](Kettle& k) { k.jacket.height = 0.5; }),
          "jacket: height must be between 0 and 0.45");
  refused(changed([](Kettle& k) { k.jacket.height = 0.0; }), "needs a height above 0 m");
  refused(changed([](Kettle& k) { k.working_volume = 0.3; }), "working_volume must be between");
  refused(changed([](Kettle& k) { k.agitator_diameter = 0.9; }), "agitator_diameter must be");
  refused(changed([](Kettle& k) { k.controller.dead_band = 0.0; }), "dead_band must be between");
}

TEST_CASE("a jacket that cannot be is refused by what it lacks") {
  const auto refused = [](JacketKind kind, double power, double height, const char* key) {
    Kettle kettle = batch::stew_kettle();
    kettle.jacket = {};
    kettle.jacket.kind = kind;
    kettle.jacket.power = power;
    kettle.jacket.height = height;
    kettle.jacket.heating.flow = 0.1;
    CHECK_THROWS_WITH(check(kettle), mentions("jacket") && mentions(key));
  };
  refused(JacketKind::steam, 0.0, 0.2, "steam needs the power");
  refused(JacketKind::liquid, 1e3, 0.2, "not by power");
  refused(JacketKind::electric, 1e3, 0.0, "under_floor");
  Kettle thick = batch::stew_kettle();
  thick.jacket.cooling.glycol = 0.7;
  CHECK_THROWS_WITH(check(thick), mentions("cooling: glycol must be between"));
  thick.jacket.height = 0.0;
  thick.jacket.under_floor = true;
  thick.jacket.cooling.glycol = 0.0;
  CHECK_NOTHROW(check(thick));
}

TEST_CASE("a kettle without floor elements is heated by its jacket") {
  CHECK_FALSE(heats_by_jacket(batch::stew_kettle()));
  CHECK(heats_by_jacket(changed([](Kettle& k) { k.floor_power = 0.0; })));
  CHECK_FALSE(heats_by_jacket(changed([](Kettle& k) {
    k.floor_power = 0.0;
    k.jacket.power = 0.0;
  })));
}

TEST_CASE("a room that cannot be is refused") {
  Surroundings room;
  room.relative_humidity = 55.0;
  CHECK_THROWS_WITH(check(room), mentions("relative_humidity must be between 0 and 1"));
  room = {};
  room.temperature = 23.0;
  CHECK_THROWS_AS(check(room), InvalidArgument);
}
