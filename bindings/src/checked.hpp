#pragma once

#include <pybind11/numpy.h>
#include <pybind11/pybind11.h>
#include <pybind11/stl.h>

#include <string>
#include <type_traits>
#include <utility>
#include <vector>

#include "kettlecast/base/errors.hpp"
#include "kettlecast/properties/shape.hpp"

/// Functions whose arguments are checked by their names before they are called.
namespace kettlecast::python {

namespace py = pybind11;

/// What a number may be; without a unit there is nothing to check.
struct Limits {
  double lower = 0.0, upper = 0.0;
  const char* unit = nullptr;
};

/// Limits of all arguments of a name, from one table; a name that is not in it throws.
Limits usual_limits(const std::string& name);

/// A number that may be left out.
struct Preset : py::arg_v {
  Limits limits;
};

/// A number, or a list of them, that has to lie within limits.
struct Named : py::arg {
  Limits limits;
  Preset operator=(double value) const { return {py::arg_v(name, value), limits}; }
  Preset operator=(int value) const { return {py::arg_v(name, value), limits}; }
};

/// An argument with the usual limits of its name.
inline Named named(const char* name) { return {py::arg(name), usual_limits(name)}; }

/// An argument with limits that hold for some functions only.
inline Named named(const char* name, double lower, double upper, const char* unit) {
  return {py::arg(name), {lower, upper, unit}};
}

namespace checked_detail {
struct Entry {
  std::string name;
  Limits limits;
};
using Entries = std::vector<Entry>;

inline void add(Entries& all, const Named& one) { all.push_back({one.name, one.limits}); }
inline void add(Entries& all, const Preset& one) { all.push_back({one.name, one.limits}); }
inline void add(Entries& all, const py::arg& one) { all.push_back({one.name, {}}); }
inline void add(Entries&, const py::kw_only&) {}

// What pybind11 is handed: it knows its own types of arguments only.
inline const py::arg& shown(const py::arg& one) { return one; }
inline const py::arg_v& shown(const py::arg_v& one) { return one; }
inline const py::kw_only& shown(const py::kw_only& one) { return one; }

template <class Value, class = void>
struct HasCheck : std::false_type {};
template <class Value>
struct HasCheck<Value, std::void_t<decltype(check(std::declval<const Value&>()))>>
    : std::true_type {};

/// Throws unless the value makes sense: a number its limits, a record its own check.
template <class Value>
void require_sense(const std::string& where, const Entry& entry, const Value& value) {
  if constexpr (std::is_arithmetic_v<Value>) {
    const Limits& may = entry.limits;
    if (!may.unit) return;
    require_between(where, entry.name, static_cast<double>(value), may.lower, may.upper, may.unit);
  } else if constexpr (std::is_same_v<Value, std::vector<double>>) {
    for (const double one : value) require_sense(where, entry, one);
  } else if constexpr (std::is_same_v<Value, Shape>) {
    if (value == Shape::none) {
      throw InvalidArgument(where + ": shape none given, a solid one is needed");
    }
  } else if constexpr (HasCheck<Value>::value) {
    check(value);
  }
}

/// The function, called once all its arguments were checked.
template <class Return, class... Given, class Function>
auto checked(std::string where, Entries entries, Function function) {
  return [where = std::move(where), entries = std::move(entries), function](Given... values) {
    std::size_t i = 0;
    (require_sense(where, entries[i++], values), ...);
    return static_cast<Return>(function(values...));
  };
}

/// Path of a function for messages, for example "batch.required_power".
std::string place(const py::module_& module, const std::string& name);

template <class... Arguments>
Entries entries_of(const Arguments&... arguments) {
  Entries all;
  (add(all, arguments), ...);
  return all;
}

template <bool for_arrays, class Function, class Return, class... Given, class... Arguments>
void define_as(Return (*)(Given...), py::module_& module, const char* name, Function function,
               const char* text, const Arguments&... arguments) {
  static_assert((std::is_base_of_v<py::arg, Arguments> + ... + 0) == sizeof...(Given),
                "every argument has a name");
  const std::string where = place(module, name);
  const Entries entries = entries_of(arguments...);
  if constexpr (for_arrays) {
    const auto one = checked<Return, std::decay_t<Given>...>(where, entries, function);
    module.def(name, py::vectorize(one), shown(arguments)..., text);
  } else {
    module.def(name, checked<Return, Given...>(where, entries, function), shown(arguments)...,
               text);
  }
}

template <class Function>
constexpr std::add_pointer_t<py::detail::function_signature_t<Function>> signature = nullptr;

}  // namespace checked_detail

/// Defines a function that checks its arguments by their names.
///
/// Numbers stay within the limits of their names, shapes are solid, records pass their `check`.
/// An argument told as plain py::arg is left to the function, as are relations between arguments.
template <class Function, class... Arguments>
void define(py::module_& module, const char* name, Function function, const char* text,
            const Arguments&... arguments) {
  checked_detail::define_as<false>(checked_detail::signature<Function>, module, name, function,
                                   text, arguments...);
}

/// The same for a function of numbers that also takes arrays of any shape.
template <class Function, class... Arguments>
void define_for_arrays(py::module_& module, const char* name, Function function, const char* text,
                       const Arguments&... arguments) {
  checked_detail::define_as<true>(checked_detail::signature<Function>, module, name, function, text,
                                  arguments...);
}

}  // namespace kettlecast::python
