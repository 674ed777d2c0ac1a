#include "bind.hpp"

PYBIND11_MODULE(_core, module) {
  using namespace kettlecast::python;
  module.doc() = "Compiled part of kettlecast; use the package, not this module.";
  bind_errors(module);
  bind_recipe(module);
  bind_kettle(module);
  bind_properties(module);
  bind_conduction(module);
  bind_freezing(module);
  bind_coefficients(module);
  bind_forecast(module);
  bind_replay(module);
  bind_fit(module);
}
