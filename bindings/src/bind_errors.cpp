#include <exception>

#include "bind.hpp"
#include "kettlecast/base/errors.hpp"

namespace kettlecast::python {
namespace {

namespace py = pybind11;

/// New exception class `kettlecast.<name>` with the given bases.
py::object new_exception(py::module_& module, const char* name, const char* text,
                         const py::tuple& bases) {
  const std::string full = std::string("kettlecast.") + name;
  auto type = py::reinterpret_steal<py::object>(
      PyErr_NewExceptionWithDoc(full.c_str(), text, bases.ptr(), nullptr));
  module.attr(name) = type;
  return type;
}

/// The bound classes, kept for the lifetime of the interpreter (exception translators outlive
/// the module object).
struct ErrorTypes {
  py::object base, invalid_argument, unknown_name, outside_validity, integration_failure;
};
ErrorTypes* types = nullptr;

void raise_integration_failure(const IntegrationFailure& failure) {
  py::object raised = types->integration_failure(failure.what());
  raised.attr("reason") = failure.reason;
  raised.attr("time") = failure.time;
  raised.attr("component") = failure.component;
  raised.attr("phase") = failure.phase;
  PyErr_SetObject(types->integration_failure.ptr(), raised.ptr());
}

void translate(std::exception_ptr pointer) {
  try {
    if (pointer) std::rethrow_exception(pointer);
  } catch (const IntegrationFailure& failure) {
    raise_integration_failure(failure);
  } catch (const InvalidArgument& error) {
    PyErr_SetString(types->invalid_argument.ptr(), error.what());
  } catch (const UnknownName& error) {
    PyErr_SetString(types->unknown_name.ptr(), error.what());
  } catch (const OutsideValidity& error) {
    PyErr_SetString(types->outside_validity.ptr(), error.what());
  }
}

py::object builtin(PyObject* type) { return py::reinterpret_borrow<py::object>(type); }

}  // namespace

void bind_errors(py::module_& module) {
  types = new ErrorTypes;
  types->base = new_exception(module, "Error", "Any error raised on purpose by kettlecast.",
                              py::make_tuple(builtin(PyExc_Exception)));
  const auto derived = [&](const char* name, const char* text, PyObject* standard) {
    return new_exception(module, name, text, py::make_tuple(types->base, builtin(standard)));
  };
  types->invalid_argument =
      derived("InvalidArgument", "An argument that no run can accept.", PyExc_ValueError);
  types->unknown_name = derived(
      "UnknownName", "A name that is not known; the message lists the nearest.", PyExc_KeyError);
  types->unknown_name.attr("__str__") = builtin(PyExc_Exception).attr("__str__");
  types->outside_validity =
      derived("OutsideValidity", "A state at which a property has no meaning.", PyExc_ValueError);
  types->integration_failure =
      derived("IntegrationFailure",
              "An integration that cannot go on; has reason, time [s], component and phase.",
              PyExc_RuntimeError);
  py::register_exception_translator(&translate);
}

}  // namespace kettlecast::python
