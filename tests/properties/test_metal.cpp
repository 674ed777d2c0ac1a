#include "kettlecast/properties/metal.hpp"
#include "published.hpp"

using namespace kettlecast;

TEST_CASE("stainless steel agrees with data sheets") {
  check_relative(stainless_steel.conductivity,
                 published(16.2, "W/(m K)", "data sheet of AISI 304, 100 degC"), 0.03);
  check_relative(stainless_steel.specific_heat,
                 published(500.0, "J/(kg K)", "data sheet of AISI 304, 0-100 degC"), 0.035);
  check_relative(stainless_steel.density, published(8000.0, "kg/m3", "data sheet of AISI 304"),
                 0.015);
}

TEST_CASE("metals keep their order") {
  CHECK(aluminium.conductivity > carbon_steel.conductivity);
  CHECK(carbon_steel.conductivity > stainless_steel.conductivity);
  CHECK(aluminium.density < carbon_steel.density);
}
