#include <cmath>
#include <limits>
#include <stdexcept>

#include "catch.hpp"
#include "kettlecast/base/errors.hpp"
#include "kettlecast/numerics/least_squares.hpp"
#include "message.hpp"
#include "published.hpp"
#include "vectors.hpp"

using namespace kettlecast;
using Eigen::MatrixXd;
using Eigen::VectorXd;

namespace {

/// Intercept and slope of a line through points at 0, 1, 2, ...
LeastSquaresProblem line_through(const VectorXd& points) {
  MatrixXd a(points.size(), 2);
  a.col(0).setOnes();
  a.col(1).setLinSpaced(0.0, static_cast<double>(points.size() - 1));
  return linear(a, points);
}

LeastSquaresProblem rosenbrock() {
  return {[](const VectorXd& x) {
            return values({10.0 * (x[1] - x[0] * x[0]), 1.0 - x[0]});
          },
          [](const VectorXd& x) {
            MatrixXd slopes(2, 2);
            slopes << -20.0 * x[0], 10.0, -1.0, 0.0;
            return slopes;
          }};
}

// A cost that no longer falls by 1e-15 of itself leaves x open to the root of that.
const double flat = std::sqrt(1e-15);

const VectorXd outlier_line = values({1.1, 2.9, 5.2, 6.8, 9.1, 10.9, 30.0, 15.2, 16.8, 19.1});

}  // namespace

TEST_CASE("the valley of Rosenbrock ends at (1, 1)") {
  for (const auto scale : {StepScale::column_norms, StepScale::given_units}) {
    auto options = tight();
    options.scale = scale;
    const auto found = minimise(rosenbrock(), values({-1.2, 1.0}), options);
    CHECK(found.converged());
    check_absolute(found.x[0], published(1.0, "-", "Rosenbrock, Computer J. 3 (1960) 175-184"),
                   1e-12);
    check_absolute(found.x[1], published(1.0, "-", "Rosenbrock, Computer J. 3 (1960) 175-184"),
                   1e-12);
    CHECK(found.accepted + found.rejected + 1 == found.evaluations);
  }
}

TEST_CASE("a line fits its normal equations") {
  // 4 points (1, 6), (2, 5), (3, 7), (4, 10): sums 10, 28, 30, 77 give 4 a + 10 b = 28 and
  // 10 a + 30 b = 77, so a = 3.5, b = 1.4; residuals -1.1, 1.3, 0.7, -0.9, cost 2.1.
  MatrixXd a(4, 2);
  a << 1, 1, 1, 2, 1, 3, 1, 4;
  const auto found = minimise(linear(a, values({6, 5, 7, 10})), values({0, 0}), tight());
  CHECK_THAT(found.x[0], Catch::Matchers::WithinAbs(3.5, flat));
  CHECK_THAT(found.x[1], Catch::Matchers::WithinAbs(1.4, flat));
  CHECK_THAT(found.cost, Catch::Matchers::WithinRel(2.1, 1e-12));
}

TEST_CASE("a bound that cuts off the minimum holds its value, the other adapts") {
  // The line above with b <= 1: a = mean(y - x) = 18 / 4 = 4.5. With a >= 4 instead, b minimises
  // over b alone: b = (77 - 4 * 10) / 30 = 37 / 30.
  MatrixXd a(4, 2);
  a << 1, 1, 1, 2, 1, 3, 1, 4;
  const auto problem = linear(a, values({6, 5, 7, 10}));
  const double open = std::numeric_limits<double>::infinity();
  auto options = tight();
  options.upper = values({open, 1.0});
  // From within, from the bound itself, and from beyond it.
  for (const double start : {-3.0, 1.0, 9.0}) {
    const auto found = minimise(problem, values({0.0, start}), options);
    CHECK(found.converged());
    CHECK(found.x[1] == 1.0);
    CHECK_THAT(found.x[0], Catch::Matchers::WithinAbs(4.5, flat));
  }
  options = tight();
  options.lower = values({4.0, -open});
  const auto found = minimise(problem, values({4.0, 0.0}), options);
  CHECK(found.x[0] == 4.0);
  CHECK_THAT(found.x[1], Catch::Matchers::WithinAbs(37.0 / 30.0, flat));
}

TEST_CASE("a start on a bound that does not matter leaves it") {
  auto options = tight();
  options.lower = values({-2.0, -3.0});
  options.upper = values({2.0, 3.0});
  const auto found = minimise(rosenbrock(), values({-2.0, 3.0}), options);
  CHECK_THAT(found.x[0], Catch::Matchers::WithinAbs(1.0, 1e-10));
}

TEST_CASE("no point tried lies outside the bounds") {
  auto options = tight();
  options.lower = values({-1.5, -0.5});
  options.upper = values({0.5, 1.0});
  auto problem = rosenbrock();
  int outside = 0;
  const auto inner = problem.residuals;
  problem.residuals = [&](const VectorXd& x) {
    if ((x.array() < options.lower.array()).any()) ++outside;
    if ((x.array() > options.upper.array()).any()) ++outside;
    return inner(x);
  };
  const auto found = minimise(problem, values({-1.2, 1.0}), options);
  CHECK(outside == 0);
  // With x0 <= 0.5 the valley x1 = x0^2 ends at (0.5, 0.25).
  CHECK(found.x[0] == 0.5);
  CHECK_THAT(found.x[1], Catch::Matchers::WithinAbs(0.25, flat));
}

TEST_CASE("robust losses find the line that SciPy finds") {
  struct Row {
    Loss loss;
    Published intercept, slope, cost;
  };
  const Row rows[] = {
      {Loss::soft_l1, published(1.03964451094, "-", "SciPy 1.17.1 least_squares, tolerances 1e-15"),
       published(2.02030420597, "-", "SciPy 1.17.1 least_squares, tolerances 1e-15"),
       published(16.048384189, "-", "SciPy 1.17.1 least_squares, tolerances 1e-15")},
      {Loss::huber, published(1.03916666667, "-", "SciPy 1.17.1 least_squares, tolerances 1e-15"),
       published(2.01916666667, "-", "SciPy 1.17.1 least_squares, tolerances 1e-15"),
       published(16.5230833333, "-", "SciPy 1.17.1 least_squares, tolerances 1e-15")},
      {Loss::linear, published(1.32727272727, "-", "SciPy 1.17.1 least_squares, tolerances 1e-15"),
       published(2.30727272727, "-", "SciPy 1.17.1 least_squares, tolerances 1e-15"),
       published(126.089818182, "-", "SciPy 1.17.1 least_squares, tolerances 1e-15")}};
  for (const auto& row : rows) {
    const auto found = minimise(line_through(outlier_line), values({0, 0}), tight(row.loss));
    CHECK(found.converged());
    check_relative(found.x[0], row.intercept, 1e-7);
    check_relative(found.x[1], row.slope, 1e-7);
    check_relative(found.cost, row.cost, 1e-10);
  }
}

TEST_CASE("points without finite residuals are stepped back from") {
  // Residual log(x) has its zero at 1; an undamped step from 10 leads to x < 0.
  const LeastSquaresProblem problem{
      [](const VectorXd& x) { return values({std::log(x[0])}); },
      [](const VectorXd& x) { return MatrixXd::Constant(1, 1, 1.0 / x[0]); }};
  const auto found = minimise(problem, values({10.0}), tight());
  CHECK(found.rejected > 0);
  CHECK_THAT(found.x[0], Catch::Matchers::WithinAbs(1.0, 1e-12));
}

TEST_CASE("a search that cannot go on says why") {
  auto options = tight();
  options.max_evaluations = 3;
  const auto early = minimise(rosenbrock(), values({-1.2, 1.0}), options);
  CHECK_FALSE(early.converged());
  CHECK(early.evaluations == 3);
  CHECK(in_words(early.reason) == "the allowed number of evaluations is used up");
  const double nan = std::numeric_limits<double>::quiet_NaN();
  auto broken = rosenbrock();
  broken.residuals = [=](const VectorXd&) { return values({nan, 1.0}); };
  CHECK(minimise(broken, values({0, 0})).reason == StopReason::start_not_finite);
  broken = rosenbrock();
  broken.jacobian = [=](const VectorXd&) { return MatrixXd::Constant(2, 2, nan); };
  CHECK(minimise(broken, values({0, 0})).reason == StopReason::slopes_not_finite);
}

TEST_CASE("a value that changes nothing does not disturb the others") {
  MatrixXd a = MatrixXd::Zero(3, 2);
  a.col(0) = values({1, 2, 3});
  const auto found = minimise(linear(a, values({2, 4, 6})), values({0.0, 5.0}), tight());
  CHECK(found.converged());
  CHECK_THAT(found.x[0], Catch::Matchers::WithinAbs(2.0, 1e-12));
  CHECK(found.x[1] == 5.0);
}

TEST_CASE("impossible searches are refused") {
  LeastSquaresOptions options;
  CHECK_THROWS_AS(minimise(rosenbrock(), VectorXd()), InvalidArgument);
  options.lower = values({0.0});
  CHECK_THROWS_WITH(minimise(rosenbrock(), values({0, 0}), options),
                    mentions("must have 2 values"));
  options.lower = values({0.0, 2.0});
  options.upper = values({1.0, 1.0});
  CHECK_THROWS_WITH(minimise(rosenbrock(), values({0, 0}), options), mentions("upper bound"));
  auto narrow = rosenbrock();
  narrow.jacobian = [](const VectorXd&) { return MatrixXd::Ones(2, 1); };
  CHECK_THROWS_WITH(minimise(narrow, values({0, 0})), mentions("one row per residual"));
  auto interrupted = rosenbrock();
  interrupted.jacobian = [](const VectorXd&) -> MatrixXd { throw std::runtime_error("stop"); };
  CHECK_THROWS_WITH(minimise(interrupted, values({0, 0})), "stop");
}
