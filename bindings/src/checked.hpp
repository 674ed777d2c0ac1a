#pragma once

#include <pybind11/pybind11.h>

#include <array>
#include <string>

/// Functions of plain numbers, each argument checked by its name.
namespace kettlecast::python {

/// Throws InvalidArgument unless an argument of this name makes physical sense.
///
/// @param where  name of the function, for the message
/// @param key    name of the argument; one without limits of its own has to be finite
void require_sense(const std::string& where, const std::string& key, double value);

/// An argument without default.
inline pybind11::arg named(const char* name) { return pybind11::arg(name); }

/// Defines a function of numbers that checks each of them by its name.
template <class... D, class... A>
void define(pybind11::module_& module, const char* name, double (*function)(D...), const char* text,
            const A&... arguments) {
  static_assert(sizeof...(D) == sizeof...(A), "every argument has a name");
  const std::array<std::string, sizeof...(D)> keys{arguments.name...};
  const std::string where = name;
  module.def(
      name,
      [function, keys, where](D... values) {
        const std::array<double, sizeof...(D)> given{values...};
        for (std::size_t i = 0; i < given.size(); ++i) require_sense(where, keys[i], given[i]);
        return function(values...);
      },
      arguments..., text);
}

}  // namespace kettlecast::python
