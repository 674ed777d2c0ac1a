#pragma once

#include <string>
#include <vector>

#include "kettlecast/kettle/coefficients.hpp"

/// Coefficients in units of their priors, which is how a fit sees them.
///
/// A scaled coefficient is 0 at its default and 1 one prior spread above; of coefficients that are
/// scales or rates the logarithm is taken. So every prior is a standard normal.
namespace kettlecast {

/// Scaled values of some coefficients [-], in the order of their names.
/// @throws UnknownName
std::vector<double> to_scaled(const Coefficients& coefficients,
                              const std::vector<std::string>& names);

/// A copy of `base` with some coefficients set to scaled values, which are moved into the bounds.
/// @param base   all coefficients
/// @param names  of those to set
/// @param point  scaled values of those, same length [-]
/// @throws UnknownName; InvalidArgument if the lengths differ or a value is not finite
Coefficients from_scaled(const Coefficients& base, const std::vector<std::string>& names,
                         const std::vector<double>& point);

/// Change of each coefficient, in the unit of its card, per change of its scaled value [unit].
/// @throws UnknownName
std::vector<double> scaled_slopes(const Coefficients& coefficients,
                                  const std::vector<std::string>& names);

/// Lowest and highest scaled values that the cards allow [-].
struct ScaledBounds {
  std::vector<double> lower;
  std::vector<double> upper;
};

/// Bounds of some coefficients, scaled [-].
/// @throws UnknownName
ScaledBounds scaled_bounds(const std::vector<std::string>& names);

}  // namespace kettlecast
