#pragma once

#include <initializer_list>
#include <utility>

#include "kettlecast/base/errors.hpp"

/// Checks of numbers that come from Python.
namespace kettlecast::python {

using NamedNumbers = std::initializer_list<std::pair<const char*, double>>;

inline constexpr double least = 1e-30, most = 1e30;  // of any number that must be above zero

/// Throws InvalidArgument, naming the first number that is not above zero.
inline void above_zero(const char* where, NamedNumbers values) {
  for (const auto& [name, value] : values) {
    require_between(where, name, value, least, most, "SI units");
  }
}

/// Throws InvalidArgument, naming the first number that is negative.
inline void not_negative(const char* where, NamedNumbers values) {
  for (const auto& [name, value] : values) {
    require_between(where, name, value, 0.0, most, "SI units");
  }
}

}  // namespace kettlecast::python
