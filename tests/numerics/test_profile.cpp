#include <algorithm>
#include <cmath>
#include <limits>

#include "catch.hpp"
#include "kettlecast/base/errors.hpp"
#include "kettlecast/numerics/covariance.hpp"
#include "kettlecast/numerics/profile.hpp"
#include "kettlecast/numerics/root.hpp"
#include "message.hpp"
#include "published.hpp"
#include "vectors.hpp"

using namespace kettlecast;
using Eigen::MatrixXd;
using Eigen::VectorXd;

namespace {

const double infinite = std::numeric_limits<double>::infinity();

/// Residuals scale * shape(rate, t) - y and their slopes, of a curve given with its slope by rate.
template <class Shape, class Slope>
LeastSquaresProblem scaled_curve(VectorXd t, VectorXd y, Shape shape, Slope slope) {
  const auto curve = [=](double rate, auto&& function) {
    VectorXd found(t.size());
    for (Eigen::Index i = 0; i < t.size(); ++i) found[i] = function(rate, t[i]);
    return found;
  };
  return {[=](const VectorXd& x) -> VectorXd { return x[0] * curve(x[1], shape) - y; },
          [=](const VectorXd& x) {
            MatrixXd slopes(t.size(), 2);
            slopes << curve(x[1], shape), x[0] * curve(x[1], slope);
            return slopes;
          }};
}

/// Reaction rate by substrate, treated cells: Bates and Watts (1988), table A1.3.
LeastSquaresProblem puromycin() {
  return scaled_curve(
      values({0.02, 0.02, 0.06, 0.06, 0.11, 0.11, 0.22, 0.22, 0.56, 0.56, 1.10, 1.10}),
      values({76, 47, 97, 107, 123, 139, 159, 152, 191, 201, 207, 200}),
      [](double half, double c) { return c / (half + c); },
      [](double half, double c) { return -c / ((half + c) * (half + c)); });
}

const VectorXd demand_days = values({1, 2, 3, 4, 5, 7});
const VectorXd demand = values({8.3, 10.3, 19.0, 16.0, 15.6, 19.8});

/// Biochemical oxygen demand by day: Bates and Watts (1988), table A1.4.
LeastSquaresProblem oxygen_demand() {
  return scaled_curve(
      demand_days, demand, [](double rate, double t) { return 1.0 - std::exp(-rate * t); },
      [](double rate, double t) { return t * std::exp(-rate * t); });
}

/// Half the residual sum of squares of the oxygen demand with the best scale for a rate.
double demand_cost(double rate) {
  const VectorXd shape = 1.0 - (-rate * demand_days.array()).exp();
  const double scale = shape.dot(demand) / shape.squaredNorm();
  return 0.5 * (scale * shape - demand).squaredNorm();
}

ProfileOptions with_rise(double rise) {
  ProfileOptions options;
  options.rise = rise;
  options.tolerance = 1e-8;
  options.search.cost_tolerance = 1e-14;
  return options;
}

/// Rise of the cost for a quantile of Student's t and m - n degrees of freedom.
double rise_of(const LeastSquaresSummary& best, double quantile) {
  const auto freedom = static_cast<double>(best.residuals.size() - best.x.size());
  return 0.5 * quantile * quantile * 2.0 * best.cost / freedom;
}

}  // namespace

TEST_CASE("the profile of a linear model is its normal interval") {
  // Points (1, 6), (2, 5), (3, 7), (4, 10) with errors of 1: (J'J)^-1 = {1.5, -0.5; -0.5, 0.2}.
  MatrixXd a(4, 2);
  a << 1, 1, 1, 2, 1, 3, 1, 4;
  const auto problem = linear(a, values({6, 5, 7, 10}));
  const auto best = minimise(problem, values({0, 0}), tight());
  const double quantile = 1.959963984540054;  // of the normal distribution, 97.5 %
  for (const double first_step : {0.0, 0.01, 20.0}) {
    auto options = with_rise(0.5 * quantile * quantile);
    options.first_step = first_step;
    const auto intercept = profile_interval(problem, best, 0, options);
    const auto slope = profile_interval(problem, best, 1, options);
    CHECK(intercept.lower.end == ProfileEnd::found);
    CHECK(intercept.lower.reason.empty());
    CHECK_THAT(intercept.lower.value,
               Catch::Matchers::WithinAbs(3.5 - quantile * std::sqrt(1.5), 1e-6));
    CHECK_THAT(slope.lower.value,
               Catch::Matchers::WithinAbs(1.4 - quantile * std::sqrt(0.2), 1e-6));
    CHECK_THAT(slope.upper.value,
               Catch::Matchers::WithinAbs(1.4 + quantile * std::sqrt(0.2), 1e-6));
    // A straight line in the root of the rise: one search is enough from the half-width.
    if (first_step == 0.0) CHECK(slope.upper.points.size() <= 2);
  }
}

TEST_CASE("a single value is profiled without others to fit") {
  const auto problem = linear(MatrixXd::Constant(1, 1, 2.0), values({3.0}));
  const auto best = minimise(problem, values({0}), tight());
  // 0.5 (2 x - 3)^2 = 2 at x = 1.5 +- 1.
  const auto found = profile_interval(problem, best, 0, with_rise(2.0));
  CHECK_THAT(found.lower.value, Catch::Matchers::WithinAbs(0.5, 1e-7));
  CHECK_THAT(found.upper.value, Catch::Matchers::WithinAbs(2.5, 1e-7));
}

TEST_CASE("the puromycin reaction has the profile intervals that R finds") {
  const auto problem = puromycin();
  const auto best = minimise(problem, values({205, 0.08}), tight());
  check_absolute(best.x[0], published(212.7, "-", "Bates, Watts (1988), section 2.2.3"), 0.05);
  check_absolute(best.x[1], published(0.0641, "-", "Bates, Watts (1988), section 2.2.3"), 5e-5);
  // 97.5 % of Student's t with 10 degrees of freedom: 2.228139.
  const auto options = with_rise(rise_of(best, 2.228139));
  const auto scale = profile_interval(problem, best, 0, options);
  const auto half = profile_interval(problem, best, 1, options);
  // R interpolates splines through about ten points of the profile.
  check_relative(scale.lower.value, published(197.30212848, "-", "R confint of nls, 95 %"), 2e-5);
  check_relative(scale.upper.value, published(229.29006490, "-", "R confint of nls, 95 %"), 2e-5);
  check_relative(half.lower.value, published(0.04692517, "-", "R confint of nls, 95 %"), 2e-4);
  check_relative(half.upper.value, published(0.08615995, "-", "R confint of nls, 95 %"), 2e-4);
}

TEST_CASE("oxygen demand bounds the rate at 95 % and leaves it open above at 99 %") {
  const auto problem = oxygen_demand();
  const auto best = minimise(problem, values({20, 0.24}), tight());
  check_absolute(best.x[0], published(19.143, "-", "Bates, Watts (1988), section 2.5, from memory"),
                 5e-4);
  check_absolute(best.x[1], published(0.5311, "-", "Bates, Watts (1988), section 2.5, from memory"),
                 5e-5);
  // Student's t with 4 degrees of freedom: 2.776445 (97.5 %), 4.604095 (99.5 %).
  auto options = with_rise(rise_of(best, 2.776445));
  const auto likely = profile_interval(problem, best, 1, options);
  const auto above = [&](double rate) { return demand_cost(rate) - best.cost - options.rise; };
  CHECK_THAT(likely.lower.value,
             Catch::Matchers::WithinRel(bracketed_root(0.01, best.x[1], above), 1e-6));
  CHECK_THAT(likely.upper.value,
             Catch::Matchers::WithinRel(bracketed_root(best.x[1], 10.0, above), 1e-6));
  // A rate without limit shows the mean; its cost is below what 99 % allow.
  options.rise = rise_of(best, 4.604095);
  const double mean_cost = 0.5 * (demand.array() - demand.mean()).square().sum();
  REQUIRE(mean_cost - best.cost < options.rise);
  const auto open = profile_interval(problem, best, 1, options);
  CHECK(open.upper.end == ProfileEnd::no_rise);
  CHECK(open.upper.value == infinite);
  CHECK_THAT(open.upper.reason, mentions("has not risen"));
  CHECK_THAT(open.upper.points.back().rise,
             Catch::Matchers::WithinRel(mean_cost - best.cost, 1e-9));
  CHECK(open.lower.end == ProfileEnd::found);
  CHECK_THAT(open.lower.value,
             Catch::Matchers::WithinRel(bracketed_root(1e-4, best.x[1], above), 1e-6));
}

TEST_CASE("a bound ends a side before the rise, bounds of others are kept") {
  const auto problem = oxygen_demand();
  auto options = with_rise(1.0);
  options.search.lower = values({0.0, 0.5});
  options.search.upper = values({19.5, 2.0});
  const auto best = minimise(problem, values({19, 0.6}), options.search);
  const auto rate = profile_interval(problem, best, 1, options);
  CHECK(rate.lower.end == ProfileEnd::at_bound);
  CHECK(rate.lower.value == 0.5);
  CHECK_THAT(rate.lower.reason, mentions("bound"));
  for (const auto& point : rate.lower.points) CHECK(point.x[0] <= 19.5);
  // A value that lies on its bound already.
  options.search.lower = values({0.0, 0.6});
  const auto held = minimise(problem, values({19, 0.7}), options.search);
  REQUIRE(held.x[1] == 0.6);
  const auto side = profile_interval(problem, held, 1, options).lower;
  CHECK(side.end == ProfileEnd::at_bound);
  CHECK(side.points.empty());
}

TEST_CASE("a value that the others can replace has no ends") {
  MatrixXd a(3, 2);
  a << 1, 1, 2, 2, 3, 3;
  const auto problem = linear(a, values({1, 2, 4}));
  const auto best = minimise(problem, values({0.5, 0.5}), tight());
  const auto found = profile_interval(problem, best, 0, with_rise(1.0));
  CHECK(found.lower.end == ProfileEnd::no_rise);
  CHECK(found.lower.value == -infinite);
  CHECK(found.upper.value == infinite);
}

TEST_CASE("sides that cannot be found say why and do not throw") {
  const auto problem = oxygen_demand();
  const auto best = minimise(problem, values({20, 0.24}), tight());
  const double rise = rise_of(best, 2.776445);
  auto options = with_rise(rise);
  options.max_searches = 1;
  const auto early = profile_interval(problem, best, 1, options).upper;
  CHECK(early.end == ProfileEnd::failed);
  CHECK_THAT(early.reason, mentions("number of searches"));
  options = with_rise(rise);
  auto broken = problem;
  broken.residuals = [=](const VectorXd& x) -> VectorXd {
    if (x[1] > 0.6) throw OutsideValidity("rate is too high");
    if (x[1] < 0.5) return VectorXd::Constant(6, std::nan(""));
    return problem.residuals(x);
  };
  const auto found = profile_interval(broken, best, 1, options);
  CHECK(found.upper.end == ProfileEnd::failed);
  CHECK(found.upper.reason == "rate is too high");
  CHECK(found.lower.end == ProfileEnd::failed);
  CHECK_THAT(found.lower.reason, mentions("not finite"));
  // Shorter steps came close to where residuals end to be finite.
  CHECK(found.lower.value >= 0.5);
  CHECK(found.lower.value < best.x[1]);
  CHECK(std::isfinite(found.upper.value));
}

TEST_CASE("a lower minimum on the way is told") {
  // Sum of squares (x^2 - 1)^2 + 0.1 (x - 1)^2 has its higher minimum near -0.95.
  const LeastSquaresProblem wells{
      [](const VectorXd& x) {
        return values({x[0] * x[0] - 1.0, std::sqrt(0.1) * (x[0] - 1.0)});
      },
      [](const VectorXd& x) {
        MatrixXd slopes(2, 1);
        slopes << 2.0 * x[0], std::sqrt(0.1);
        return slopes;
      }};
  const auto higher = minimise(wells, values({-2}), tight());
  auto options = with_rise(5.0);
  options.first_step = 2.0;
  const auto found = profile_interval(wells, higher, 0, options).upper;
  CHECK(found.end == ProfileEnd::failed);
  CHECK_THAT(found.reason, mentions("lower cost"));
  CHECK(found.points.back().rise < 0.0);
}

TEST_CASE("profiles without meaning are refused") {
  const auto problem = linear(MatrixXd::Ones(1, 1), values({1.0}));
  const auto best = minimise(problem, values({0}));
  CHECK_THROWS_WITH(profile_interval(problem, best, 1), mentions("parameter"));
  CHECK_THROWS_WITH(profile_interval(problem, best, 0, with_rise(0.0)), mentions("rise"));
  ProfileOptions options;
  options.search.lower = values({0, 0});
  CHECK_THROWS_WITH(profile_interval(problem, best, 0, options), mentions("bounds"));
}
