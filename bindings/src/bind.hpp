#pragma once

#include <pybind11/pybind11.h>

/// One function per subject; module.cpp calls them in this order, errors first.
namespace kettlecast::python {

void bind_errors(pybind11::module_& module);
void bind_recipe(pybind11::module_& module);
void bind_kettle(pybind11::module_& module);
void bind_properties(pybind11::module_& module);
void bind_conduction(pybind11::module_& module);
void bind_freezing(pybind11::module_& module);
void bind_coefficients(pybind11::module_& module);
void bind_forecast(pybind11::module_& module);
void bind_replay(pybind11::module_& module);
void bind_fit(pybind11::module_& module);

}  // namespace kettlecast::python
