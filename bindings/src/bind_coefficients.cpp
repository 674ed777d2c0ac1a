#include <pybind11/pybind11.h>
#include <pybind11/stl.h>

#include "bind.hpp"
#include "kettlecast/kettle/coefficients.hpp"

namespace kettlecast::python {
namespace {

namespace py = pybind11;

py::dict as_dict(const Coefficients& coefficients) {
  py::dict values;
  const auto& cards = coefficient_cards();
  for (std::size_t i = 0; i < cards.size(); ++i) {
    values[py::str(std::string(cards[i].name))] = coefficients.values()[i];
  }
  return values;
}

Coefficients with_all(Coefficients coefficients, const py::dict& values) {
  for (const auto& item : values) {
    coefficients = coefficients.with(item.first.cast<std::string>(), item.second.cast<double>());
  }
  return coefficients;
}

}  // namespace

void bind_coefficients(py::module_& module) {
  py::class_<CoefficientCard>(module, "CoefficientCard",
                              "What is known about a coefficient before a kettle is fitted.")
      .def_readonly("name", &CoefficientCard::name)
      .def_readonly("unit", &CoefficientCard::unit)
      .def_readonly("value", &CoefficientCard::value)
      .def_readonly("lower", &CoefficientCard::lower)
      .def_readonly("upper", &CoefficientCard::upper)
      .def_readonly("spread", &CoefficientCard::spread)
      .def_readonly("positive", &CoefficientCard::positive)
      .def_readonly("meaning", &CoefficientCard::meaning)
      .def_readonly("source", &CoefficientCard::source)
      .def_readonly("of_run", &CoefficientCard::of_run);
  module.def(
      "coefficient_cards",
      [] {
        const auto& cards = coefficient_cards();
        return std::vector<CoefficientCard>(cards.begin(), cards.end());
      },
      "Cards of all coefficients.");
  py::class_<Coefficients>(module, "Coefficients",
                           "One value per coefficient, in the unit of its card.")
      .def(py::init<>(), "Defaults of all cards.")
      .def(py::init([](const py::dict& values) { return with_all(Coefficients(), values); }),
           py::arg("values"), "Defaults, changed where a value is given by name.")
      .def("__getitem__", &Coefficients::value, py::arg("name"))
      .def("replace", &with_all, py::arg("values"),
           "A copy with values changed by name; raises UnknownName or InvalidArgument.")
      .def("to_dict", &as_dict, "Values by name.")
      .def("__eq__",
           [](const Coefficients& left, const py::object& right) {
             return py::isinstance<Coefficients>(right) &&
                    left == right.cast<const Coefficients&>();
           })
      .def("__repr__",
           [](const Coefficients& coefficients) {
             return "Coefficients(" + py::repr(as_dict(coefficients)).cast<std::string>() + ")";
           })
      .def(py::pickle(&as_dict,
                      [](const py::dict& values) { return with_all(Coefficients(), values); }))
      .attr("__hash__") = py::none();
}

}  // namespace kettlecast::python
