#include <cmath>

#include "catch.hpp"
#include "kettlecast/numerics/dual.hpp"
#include "kettlecast/numerics/polynomial.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

using Dual2 = Dual<2>;

/// A number with slope 1 by the parameter of this index.
Dual2 parameter(double value, int index) {
  Dual2 u(value);
  u.slope[index] = 1.0;
  return u;
}

}  // namespace

TEST_CASE("sums and products have the slopes of calculus") {
  const Dual2 u = parameter(3.0, 0), v = parameter(-2.0, 1);
  const Dual2 f = (u * u * v - 4.0 / v + 2.0) / (u - v);
  // f = (u^2 v - 4/v + 2)/(u - v) = (-18 + 2 + 2)/5; by hand:
  // df/du = 2uv/(u-v) - f/(u-v), df/dv = (u^2 + 4/v^2)/(u-v) + f/(u-v)
  CHECK_THAT(f.value, WithinRel(-2.8, 1e-15));
  CHECK_THAT(f.slope[0], WithinRel((-12.0 + 2.8) / 5.0, 1e-15));
  CHECK_THAT(f.slope[1], WithinRel((9.0 + 1.0 - 2.8) / 5.0, 1e-15));
}

TEST_CASE("plain numbers have no slopes and comparisons see values only") {
  const Dual2 u = parameter(1.0, 0);
  CHECK((Dual2(7.0).slope == 0.0).all());
  CHECK(u == Dual2(1.0));
  CHECK(u < 1.5);
  CHECK((3.0 - u).slope[0] == -1.0);
  CHECK(value_of(u) == value_of(1.0));
}

TEST_CASE("functions have the slopes of the tables of derivatives") {
  const double x = 0.37;
  const Dual2 u = parameter(x, 0);
  const auto slope = [](const Dual2& f) { return f.slope[0]; };
  CHECK_THAT(slope(exp(u)), WithinRel(std::exp(x), 1e-15));
  CHECK_THAT(slope(log(u)), WithinRel(1.0 / x, 1e-15));
  CHECK_THAT(slope(log10(u)), WithinRel(1.0 / (x * std::log(10.0)), 1e-15));
  CHECK_THAT(slope(sqrt(u)), WithinRel(0.5 / std::sqrt(x), 1e-15));
  CHECK_THAT(slope(cbrt(u)), WithinRel(std::pow(x, -2.0 / 3.0) / 3.0, 1e-14));
  CHECK_THAT(slope(pow(u, 2.5)), WithinRel(2.5 * std::pow(x, 1.5), 1e-14));
  CHECK_THAT(slope(pow(2.0, u)), WithinRel(std::pow(2.0, x) * std::log(2.0), 1e-14));
  CHECK_THAT(slope(pow(u, u)), WithinRel(std::pow(x, x) * (std::log(x) + 1.0), 1e-14));
  CHECK_THAT(slope(tanh(u)), WithinRel(1.0 / std::pow(std::cosh(x), 2), 1e-14));
  CHECK_THAT(slope(sin(u)), WithinRel(std::cos(x), 1e-15));
  CHECK_THAT(slope(asin(u)), WithinRel(1.0 / std::sqrt(1.0 - x * x), 1e-15));
  CHECK_THAT(slope(fabs(-u)), WithinRel(1.0, 1e-15));
  // angle of (x, y): d/dx = -y/r2, d/dy = x/r2
  const Dual2 angle = atan2(parameter(2.0, 0), parameter(-1.0, 1));
  CHECK(angle.value == std::atan2(2.0, -1.0));
  CHECK_THAT(angle.slope[0], WithinRel(-0.2, 1e-15));
  CHECK_THAT(angle.slope[1], WithinRel(-0.4, 1e-15));
}

TEST_CASE("roots and powers of nothing have no infinite slopes") {
  const Dual2 nothing = parameter(0.0, 0);
  CHECK(sqrt(nothing).slope[0] == 0.0);
  CHECK(cbrt(nothing).slope[0] == 0.0);
  CHECK(pow(nothing, 0.25).slope[0] == 0.0);
  CHECK(pow(nothing, 1.0).slope[0] == 1.0);
}

TEST_CASE("a polynomial of a dual number has the derivative's value as slope") {
  const PolynomialCoefficients<4> c{1.0, -2.0, 0.5, 3.0};
  const Dual2 f = polynomial(c, parameter(0.7, 1));
  CHECK_THAT(f.value, WithinRel(polynomial(c, 0.7), 1e-15));
  CHECK_THAT(f.slope[1], WithinRel(polynomial(derivative(c), 0.7), 1e-15));
  CHECK(f.slope[0] == 0.0);
}
