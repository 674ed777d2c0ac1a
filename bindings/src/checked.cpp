#include "checked.hpp"

#include "kettlecast/base/errors.hpp"

namespace kettlecast::python {
namespace {

/// What an argument may be, whatever the function: what makes physical sense.
struct Allowed {
  const char* key;
  double lower, upper;
  const char* unit;
};

constexpr Allowed allowed[] = {
    {"density", 1e-6, 1e5, "kg/m3"},
    {"vapour_density", 0.0, 1e5, "kg/m3"},
    {"specific_heat", 1.0, 1e6, "J/(kg K)"},
    {"conductivity", 1e-6, 1e4, "W/(m K)"},
    {"viscosity", 1e-9, 1e6, "Pa s"},
    {"latent_heat", 1.0, 1e8, "J/kg"},
    {"surface_tension", 1e-6, 10.0, "N/m"},
    {"expansivity", -1.0, 1.0, "1/K"},
    {"excess", -1e4, 1e4, "K"},
    {"subcooling", -1e4, 1e4, "K"},
    {"difference", -1e4, 1e4, "K"},
    {"heat_flow", 0.0, 1e12, "W"},
    {"share", 0.0, 1.0, "-"},
    {"rayleigh", -1e20, 1e20, "-"},
    {"prandtl", 1e-6, 1e12, "-"},
    {"reynolds", 1e-9, 1e12, "-"},
    {"parameter", 1e-12, 1e12, "-"},
    {"length", 1e-6, 1e3, "m"},
    {"height", 1e-6, 1e3, "m"},
    {"diameter", 1e-6, 1e3, "m"},
    {"distance", 1e-9, 1e3, "m"},
    {"inclination", 1e-3, 1.5707963267949, "rad"},
    {"pressure", 100.0, 1e7, "Pa"},
    {"temperature", 1.0, 1e4, "K"},
    {"surface", 0.0, 1e4, "K"},
    {"surroundings", 0.0, 1e4, "K"},
    {"emissivity", 0.0, 1.0, "-"},
    {"inner", 1e-6, 1.0, "-"},
    {"outer", 1e-6, 1.0, "-"},
    {"first", 1e-6, 1.0, "-"},
    {"second", 1e-6, 1.0, "-"},
    {"shield", 1e-6, 1.0, "-"},
    {"area_ratio", 0.0, 1.0, "-"},
    {"air_fraction", 0.0, 0.99, "-"},
    {"air_mass_fraction", 0.0, 0.9, "-"},
    {"air_speed", 0.0, 100.0, "m/s"},
    {"activity", 0.0, 10.0, "-"},
    {"lewis", 1e-6, 1e6, "-"},
    {"surface_constant", 1e-6, 1.0, "-"},
    {"heat_flux", 0.0, 1e12, "W/m2"},
    {"film_coefficient", 1e-9, 1e12, "W/(m2 K)"},
    {"heat_capacity", 1e-6, 1e12, "J/(m3 K)"},
    {"thermal_diffusivity", 1e-12, 1e3, "m2/s"},
    {"vapour_diffusivity", 1e-12, 1e3, "m2/s"},
    {"feed_heat", 0.0, 1e8, "J/kg"},
};

}  // namespace

void require_sense(const std::string& where, const std::string& key, double value) {
  for (const Allowed& one : allowed)
    if (key == one.key) return require_between(where, key, value, one.lower, one.upper, one.unit);
  require_between(where, key, value, -1e30, 1e30, "-");
}

}  // namespace kettlecast::python
