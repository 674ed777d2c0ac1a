#pragma once

#include <array>
#include <cstddef>
#include <vector>

#include "kettlecast/base/record.hpp"

/// What a result can be differentiated by.
namespace kettlecast {

/// Kinds of inputs. The slopes by a mass are those by a factor on it.
enum class LeverKind {
  coefficient,           ///< a coefficient, in the unit of its card
  addition_delay,        ///< start of a pour [s]
  addition_temperature,  ///< of what is poured [K]
  addition_mass,         ///< mass relative to the one stated [-]
  start,                 ///< temperatures at the start, all together [K]
  set_point              ///< of a phase, and what its overshoot is measured from [K]
};

/// One input: which coefficient, which addition of the run or which phase, counted from 0.
struct Lever {
  LeverKind kind = LeverKind::coefficient;
  std::size_t index = 0;

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("kind", &Lever::kind);
    visit("index", &Lever::index);
  }
  bool operator==(const Lever& other) const { return equal_records(*this, other); }
};

}  // namespace kettlecast
