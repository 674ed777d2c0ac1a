#include <cmath>

#include "kettlecast/base/constants.hpp"
#include "kettlecast/numerics/root.hpp"
#include "published.hpp"

using namespace kettlecast;

TEST_CASE("roots of known functions") {
  check_relative(bracketed_root(0.0, 2.0, [](double x) { return std::cos(x); }),
                 published(0.5 * constants::pi, "-", "first zero of the cosine"), 1e-15);
  check_relative(bracketed_root(2.0, 3.0, [](double x) { return std::cyl_bessel_j(0.0, x); }),
                 published(2.404825557695773, "-", "DLMF table 10.21.1, first zero of J0"), 1e-14);
  // Flat on one side, steep on the other.
  check_relative(bracketed_root(0.0, 50.0, [](double x) { return std::exp(x) - 1e10; }),
                 published(10.0 * std::log(10.0), "-", "inverse of the exponential"), 1e-14);
  check_relative(bracketed_root(-1.0, 9.0, [](double x) { return x * x * x - 1e-9; }),
                 published(1e-3, "-", "cube root"), 1e-13);
}

TEST_CASE("a root at an end is that end") {
  CHECK(bracketed_root(1.0, 5.0, [](double x) { return x - 1.0; }) == 1.0);
  CHECK(bracketed_root(1.0, 5.0, [](double x) { return x - 5.0; }) == 5.0);
}
