#pragma once

#include <cmath>

/// Losses that let single large residuals count less than their square.
namespace kettlecast {

/// How a squared residual counts.
enum class Loss { linear, soft_l1, huber };

/// A loss and its first two derivatives by the squared residual [-].
struct LossValue {
  double value;
  double slope;
  double curvature;
};

/// Loss of a squared residual z [-]; all three are z for small z.
///
///     linear   z
///     soft_l1  2 (sqrt(1 + z) - 1)
///     huber    z up to 1, then 2 sqrt(z) - 1
///
/// Source: Triggs, McLauchlan, Hartley, Fitzgibbon, Bundle adjustment - a modern synthesis (2000),
/// section 4.3 for the use of such losses; Huber, Ann. Math. Statist. 35 (1964) 73-101 for the
/// third. Same definitions as in SciPy's least_squares.
/// @param loss     which one
/// @param squared  square of a scaled residual, >= 0 [-]
inline LossValue loss_of(Loss loss, double squared) {
  if (loss == Loss::soft_l1) {
    const double root = std::sqrt(1.0 + squared);
    return {2.0 * squared / (root + 1.0), 1.0 / root, -0.5 / (root * root * root)};
  }
  if (loss == Loss::huber && squared > 1.0) {
    const double root = std::sqrt(squared);
    return {2.0 * root - 1.0, 1.0 / root, -0.5 / (squared * root)};
  }
  return {squared, 1.0, 0.0};
}

}  // namespace kettlecast
