#pragma once

#include <pybind11/pybind11.h>

/// One function per subject; module.cpp calls them in this order, errors first.
namespace kettlecast::python {

void bind_errors(pybind11::module_& module);
void bind_recipe(pybind11::module_& module);
void bind_kettle(pybind11::module_& module);
void bind_properties(pybind11::module_& module);
void bind_vessel(pybind11::module_& module);
void bind_consistency(pybind11::module_& module);
void bind_batch(pybind11::module_& module);
void bind_solutions(pybind11::module_& module);
void bind_exposure(pybind11::module_& module);
void bind_control(pybind11::module_& module);
void bind_agitation(pybind11::module_& module);
void bind_jacket(pybind11::module_& module);
void bind_phase_change(pybind11::module_& module);
void bind_surface_losses(pybind11::module_& module);
void bind_states(pybind11::module_& module);
void bind_conduction(pybind11::module_& module);
void bind_freezing(pybind11::module_& module);
void bind_coefficients(pybind11::module_& module);
void bind_forecast(pybind11::module_& module);
void bind_replay(pybind11::module_& module);
void bind_sensitivity(pybind11::module_& module);
void bind_fit(pybind11::module_& module);

/// The submodules that the subjects share.
inline pybind11::module_ properties_of(pybind11::module_& module) {
  return module.def_submodule("properties", "Material properties in SI units.");
}
inline pybind11::module_ transfer_of(pybind11::module_& module) {
  return module.def_submodule("transfer", "Heat transfer correlations in SI units.");
}

/// Part of bind_batch, of the submodule it is given.
void bind_two_node(pybind11::module_& module);

}  // namespace kettlecast::python
