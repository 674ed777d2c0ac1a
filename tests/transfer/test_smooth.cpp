#include <cmath>

#include "kettlecast/numerics/polynomial.hpp"
#include "kettlecast/numerics/smooth.hpp"
#include "sweep.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

TEST_CASE("smooth positive part approaches zero and x and stays above both") {
  const auto part = [](double x) { return smooth_positive(x, 0.1); };
  CHECK_THAT(part(0.0), WithinRel(0.05, 1e-15));
  CHECK_THAT(part(1e3) - 1e3, WithinAbs(0.1 * 0.1 / 4e3, 1e-12));  // width^2 / (4 x)
  CHECK_THAT(part(-1e8), WithinRel(0.1 * 0.1 / 4e8, 1e-12));       // no cancellation
  sweep::rising(-5.0, 5.0, part);
  sweep::positive(-1e6, 1e6, part);
}

TEST_CASE("blend lies between the larger value and the sum") {
  CHECK_THAT(blend(3.0, 4.0, 2.0), WithinRel(5.0, 1e-15));  // 3-4-5 triangle
  CHECK(blend(0.0, 0.0, 3.0) == 0.0);
  CHECK(blend(7.0, 0.0, 3.0) == 7.0);
  CHECK(blend(2.0, 5.0, 3.0) == blend(5.0, 2.0, 3.0));
  CHECK_THAT(blend(1e200, 1e200, 3.0), WithinRel(1e200 * std::cbrt(2.0), 1e-14));
  sweep::rising(0.01, 10.0, [](double a) { return blend(a, 2.0, 3.0); });
}

TEST_CASE("smooth step is flat outside and symmetric inside") {
  CHECK(smooth_step(-1.0) == 0.0);
  CHECK(smooth_step(0.0) == 0.0);
  CHECK(smooth_step(1.0) == 1.0);
  CHECK(smooth_step(9.0) == 1.0);
  CHECK(smooth_step(0.5) == 0.5);
  CHECK_THAT(smooth_step(0.2) + smooth_step(0.8), WithinRel(1.0, 1e-14));
  sweep::rising(0.001, 0.999, smooth_step<double>);
  for (double end : {0.0, 1.0})
    CHECK_THAT(sweep::slope(end, 1e-4, smooth_step<double>), WithinAbs(0.0, 1e-6));
}

TEST_CASE("saturating ramp goes from x to one") {
  CHECK_THAT(saturating(1e-3), WithinRel(1e-3, 1e-12));
  CHECK_THAT(saturating(1.0), WithinRel(std::pow(2.0, -0.25), 1e-14));
  CHECK_THAT(saturating(1e4), WithinRel(1.0, 1e-12));
  CHECK(saturating(-0.7) == -saturating(0.7));
  sweep::rising(-5.0, 5.0, saturating<double>);
}

TEST_CASE("polynomial, its derivative and its integral") {
  constexpr PolynomialCoefficients<3> c{1.0, -2.0, 3.0};  // 1 - 2 x + 3 x^2
  CHECK(polynomial(c, 2.0) == 9.0);
  CHECK(polynomial(derivative(c), 2.0) == 10.0);    // -2 + 6 x
  CHECK(polynomial(integral(c, 1.0), 1.0) == 0.0);  // x - x^2 + x^3 - 1
  CHECK(polynomial(integral(c, 1.0), 2.0) == 5.0);
}
