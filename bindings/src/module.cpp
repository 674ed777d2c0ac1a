#include "bind.hpp"

PYBIND11_MODULE(_core, module) {
  using namespace kettlecast::python;
  module.doc() = "Compiled part of kettlecast; use the package, not this module.";
  module.attr("__version__") = KETTLECAST_VERSION;
  bind_errors(module);
  bind_consistency(module);
  bind_vessel(module);
  bind_recipe(module);
  bind_kettle(module);
  bind_properties(module);
  bind_batch(module);
  bind_solutions(module);
  bind_exposure(module);
  bind_control(module);
  bind_agitation(module);
  bind_jacket(module);
  bind_phase_change(module);
  bind_surface_losses(module);
  bind_states(module);
  bind_conduction(module);
  bind_freezing(module);
  bind_coefficients(module);
  bind_forecast(module);
  bind_replay(module);
  bind_sensitivity(module);
  bind_fit(module);
}
