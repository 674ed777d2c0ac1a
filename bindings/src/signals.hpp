#pragma once

#include <pybind11/pybind11.h>

namespace kettlecast::python {

/// Lets Ctrl-C stop a long run; called on the main thread without the GIL.
inline void poll_signals() {
  pybind11::gil_scoped_acquire acquire;
  if (PyErr_CheckSignals() != 0) throw pybind11::error_already_set();
}

}  // namespace kettlecast::python
