#pragma once

#include <pybind11/pybind11.h>
#include <pybind11/stl.h>

#include <algorithm>
#include <string>
#include <type_traits>
#include <vector>

#include "kettlecast/base/errors.hpp"

/// Binds a described record (see kettlecast/base/record.hpp): keyword-only constructor, read-only
/// properties, `replace`, equality, repr and pickling all come from its one list of members.
namespace kettlecast::python {

namespace py = pybind11;

template <class Record>
std::vector<std::string> member_names() {
  std::vector<std::string> names;
  Record::describe([&](const char* name, auto) { names.emplace_back(name); });
  return names;
}

/// Copies values from a dict onto a record; an unknown key or a wrong type raises TypeError.
template <class Record>
void assign(Record& record, const py::dict& values, const char* type_name) {
  std::size_t used = 0;
  Record::describe([&](const char* name, auto member) {
    if (!values.contains(name)) return;
    ++used;
    using Value = std::decay_t<decltype(record.*member)>;
    try {
      record.*member = values[name].template cast<Value>();
    } catch (const py::cast_error&) {
      throw py::type_error(std::string(type_name) + ": " + name + " has the wrong type: " +
                           py::repr(values[name]).template cast<std::string>());
    }
  });
  if (used == values.size()) return;
  const auto names = member_names<Record>();
  for (const auto& item : values) {
    const auto key = item.first.cast<std::string>();
    if (std::find(names.begin(), names.end(), key) == names.end()) {
      throw UnknownName(type_name, key, names);
    }
  }
}

template <class Record>
py::dict to_dict(const Record& record) {
  py::dict values;
  Record::describe([&](const char* name, auto member) { values[name] = record.*member; });
  return values;
}

/// "Name(key=value, ...)".
inline std::string record_text(const std::string& name, const py::dict& values) {
  std::string text;
  for (const auto& item : values) {
    text += (text.empty() ? "" : ", ") + item.first.cast<std::string>() + "=" +
            py::repr(item.second).cast<std::string>();
  }
  return name + "(" + text + ")";
}

template <class Record>
py::class_<Record> bind_record(py::module_& module, const char* name, const char* text) {
  py::class_<Record> bound(module, name, text);
  bound.def(py::init([name](const py::kwargs& values) {
    Record record;
    assign(record, values, name);
    return record;
  }));
  Record::describe([&](const char* member_name, auto member) {
    bound.def_readonly(member_name, member, py::return_value_policy::copy);
  });
  bound.def(
      "replace",
      [name](const Record& record, const py::kwargs& values) {
        Record changed = record;
        assign(changed, values, name);
        return changed;
      },
      "A copy with the given members changed.");
  bound.def("to_dict", &to_dict<Record>, "Members by name, SI units.");
  bound.def("__eq__", [](const Record& left, const py::object& right) {
    return py::isinstance<Record>(right) && left == right.cast<const Record&>();
  });
  bound.def("__repr__",
            [name](const Record& record) { return record_text(name, to_dict(record)); });
  bound.def(py::pickle([](const Record& record) { return to_dict(record); },
                       [name](const py::dict& values) {
                         Record record;
                         assign(record, values, name);
                         return record;
                       }));
  bound.attr("__hash__") = py::none();
  return bound;
}

}  // namespace kettlecast::python
