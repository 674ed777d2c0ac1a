#include "kettlecast/network/size_classes.hpp"

#include <array>
#include <cmath>

#include "kettlecast/base/constants.hpp"
#include "kettlecast/base/errors.hpp"

namespace kettlecast {
namespace {

/// Below this spread, pieces count as of one size [-].
constexpr double least_variation = 1e-4;

/// Recurrence p(n+1) = (x - a[n]) p(n) - b[n] p(n-1) of orthogonal polynomials.
struct Recurrence {
  std::array<double, 3> a;
  std::array<double, 3> b;  ///< b[0] is the total weight
};

/// Roots of the third polynomial, rising: three real ones, by the cosine of a third of an angle.
std::array<double, 3> nodes(const Recurrence& of) {
  const double c0 = of.a[0] - of.a[1], c2 = of.a[2] - of.a[1];
  const double shift = (c0 + c2) / 3.0;
  const double linear = c0 * c2 - of.b[1] - of.b[2];
  const double constant = of.b[1] * c2 + of.b[2] * c0;
  const double p = linear - 3.0 * shift * shift;
  const double q = constant + shift * linear - 2.0 * shift * shift * shift;
  const double reach = 2.0 * std::sqrt(-p / 3.0);
  const double angle = std::acos(3.0 * q / (p * reach)) / 3.0;
  const double third = 2.0 * constants::pi / 3.0;
  const auto root = [&](double turn) { return of.a[1] + shift + reach * std::cos(angle - turn); };
  return {root(2.0 * third), root(third), root(0.0)};
}

/// Weight of a node: total weight over the sum of the squared orthonormal polynomials.
double weight(const Recurrence& of, double x) {
  const double first = x - of.a[0];
  const double second = first * (x - of.a[1]) - of.b[1];
  return of.b[0] / (1.0 + first * first / of.b[1] + second * second / (of.b[1] * of.b[2]));
}

void check_spread(const char* where, double mean_size, double variation, double most) {
  require_between(where, "mean_size", mean_size, 1e-6, 1.0, "m");
  require_between(where, "variation", variation, 0.0, most, "-");
}

}  // namespace

std::vector<SizeClass> lognormal_size_classes(double mean_size, double variation) {
  check_spread("lognormal_size_classes", mean_size, variation, 1.0);
  if (variation < least_variation) return {{mean_size, 1.0}};
  // Mass over size is lognormal too, its median shifted down by q^(3/2) from the mean by mass.
  const double s2 = variation * variation, q = 1.0 + s2;
  const double median = mean_size / (q * std::sqrt(q));
  Recurrence of{};
  of.b = {q / mean_size, median * median * q * s2,
          median * median * q * q * q * q * s2 * (2.0 + s2)};
  double power = 1.0;  // q^n
  for (double& a : of.a) {
    a = median * power / std::sqrt(q) * (power * q + power - 1.0);
    power *= q;
  }
  std::vector<SizeClass> classes;
  for (double size : nodes(of)) classes.push_back({size, size * weight(of, size)});
  return classes;
}

std::vector<SizeClass> normal_size_classes(double mean_size, double variation) {
  check_spread("normal_size_classes", mean_size, variation, 0.3);
  if (variation < least_variation) return {{mean_size, 1.0}};
  const double reach = std::sqrt(3.0) * variation * mean_size;
  return {{mean_size - reach, 1.0 / 6.0}, {mean_size, 2.0 / 3.0}, {mean_size + reach, 1.0 / 6.0}};
}

}  // namespace kettlecast
