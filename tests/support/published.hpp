#pragma once

#include <cstddef>

#include "catch.hpp"

/// Expected value from outside the project: with its unit and where it was printed.
struct Published {
  double value;
  const char* unit;
  const char* source;
};

/// Makes a published value; does not compile without a unit and a source.
template <std::size_t U, std::size_t S>
constexpr Published published(double value, const char (&unit)[U], const char (&source)[S]) {
  static_assert(U > 1, "a published value needs a unit, \"-\" if it has none");
  static_assert(S > 8, "a published value needs its source");
  return {value, unit, source};
}

/// Checks a value, given in the unit of the source, to a relative tolerance.
inline void check_relative(double actual, const Published& expected, double tolerance) {
  INFO("[" << expected.unit << "] " << expected.source);
  CHECK_THAT(actual, Catch::Matchers::WithinRel(expected.value, tolerance));
}

/// Checks a value, given in the unit of the source, to an absolute tolerance in that unit.
inline void check_absolute(double actual, const Published& expected, double tolerance) {
  INFO("[" << expected.unit << "] " << expected.source);
  CHECK_THAT(actual, Catch::Matchers::WithinAbs(expected.value, tolerance));
}
