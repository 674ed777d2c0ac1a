#pragma once

#include <pybind11/numpy.h>

#include <memory>
#include <utility>
#include <vector>

/// Arrays out: read-only float64 views owned by the vector they were made from.
namespace kettlecast::python {

namespace py = pybind11;

/// Read-only numpy array that takes over a vector; shape (n,) or (rows, columns).
inline py::array_t<double> array_from(std::vector<double> values,
                                      std::vector<py::ssize_t> shape = {}) {
  if (shape.empty()) shape = {static_cast<py::ssize_t>(values.size())};
  auto owned = std::make_unique<std::vector<double>>(std::move(values));
  double* first = owned->data();
  py::capsule owner(owned.release(),
                    [](void* vector) { delete static_cast<std::vector<double>*>(vector); });
  py::array_t<double> array(std::move(shape), first, owner);
  array.attr("flags").attr("writeable") = false;
  return array;
}

}  // namespace kettlecast::python
