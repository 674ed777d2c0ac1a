// Several starts on sums of squares whose minima are known.
#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>

#include "catch.hpp"
#include "kettlecast/base/errors.hpp"
#include "kettlecast/numerics/multi_start.hpp"
#include "message.hpp"
#include "nist_problems.hpp"
#include "published.hpp"
#include "vectors.hpp"

using namespace kettlecast;
using Eigen::MatrixXd;
using Eigen::VectorXd;

namespace {

LeastSquaresProblem himmelblau() {
  return {[](const VectorXd& x) {
            return values({x[0] * x[0] + x[1] - 11.0, x[0] + x[1] * x[1] - 7.0});
          },
          [](const VectorXd& x) {
            MatrixXd slopes(2, 2);
            slopes << 2.0 * x[0], 1.0, 1.0, 2.0 * x[1];
            return slopes;
          }};
}

/// Sum of squares ((x^2 - 1)^2 + 0.1 (x - 1)^2): minimum 0 at 1, a higher one near -1.
LeastSquaresProblem two_wells() {
  return {[](const VectorXd& x) {
            return values({x[0] * x[0] - 1.0, std::sqrt(0.1) * (x[0] - 1.0)});
          },
          [](const VectorXd& x) {
            MatrixXd slopes(2, 1);
            slopes << 2.0 * x[0], std::sqrt(0.1);
            return slopes;
          }};
}

MultiStartOptions patient() {
  MultiStartOptions options;
  options.search = tight();
  options.search.max_evaluations = 5000;
  return options;
}

/// Whether a minimum lies near a point.
bool lists(const MultiStart& found, const VectorXd& point) {
  return std::any_of(found.minima.begin(), found.minima.end(), [&](const DistinctMinimum& one) {
    return (one.x - point).cwiseAbs().maxCoeff() < 1e-5;
  });
}

/// Whether all values agree with certified ones to six digits.
bool agree(const VectorXd& found, const VectorXd& certified) {
  return ((found - certified).array().abs() <= 1e-6 * certified.array().abs()).all();
}

const nist::Problem& named(const std::vector<nist::Problem>& problems, const std::string& name) {
  for (const auto& problem : problems) {
    if (problem.name == name) return problem;
  }
  throw std::runtime_error(name);
}

}  // namespace

TEST_CASE("all four minima of Himmelblau's function are found and counted") {
  std::mt19937_64 random(1);
  const auto starts = starts_within(values({-5, -5}), values({5, 5}), 40, random);
  const auto found = minimise_from(himmelblau(), starts, patient());
  REQUIRE(found.minima.size() == 4);
  // Himmelblau, Applied nonlinear programming (1972), to the digits usually printed, from memory.
  CHECK(lists(found, values({3.0, 2.0})));
  CHECK(lists(found, values({-2.805118, 3.131312})));
  CHECK(lists(found, values({-3.779310, -3.283186})));
  CHECK(lists(found, values({3.584428, -1.848126})));
  int reached = 0, converged = 0;
  for (const auto& one : found.minima) reached += one.reached;
  for (const auto& one : found.starts) converged += one.failure.empty() ? 1 : 0;
  CHECK(reached == converged);
  CHECK(found.starts.size() == 40);
}

TEST_CASE("the lower of two wells is the best, whichever start comes first") {
  // Stationary points: 4 x (x^2 - 1) + 0.2 (x - 1) = 0, so x = 1 or 4 x^2 + 4 x + 0.2 = 0 with the
  // minimum at (-1 - sqrt(0.8)) / 2.
  const double higher = 0.5 * (-1.0 - std::sqrt(0.8));
  const auto found =
      minimise_from(two_wells(), {values({-2}), values({-1}), values({1.5})}, patient());
  REQUIRE(found.minima.size() == 2);
  CHECK_THAT(found.best.x[0], Catch::Matchers::WithinAbs(1.0, 1e-7));
  CHECK(found.reached_best == 1);
  CHECK(found.minima[0].reached == 1);
  CHECK(found.minima[1].reached == 2);
  CHECK_THAT(found.minima[1].x[0], Catch::Matchers::WithinAbs(higher, 1e-6));
  CHECK(found.minima[0].cost < found.minima[1].cost);
  CHECK(found.starts[0].minimum == 1);
  CHECK(found.starts[2].minimum == 0);
}

TEST_CASE("lengths say which ends are one minimum") {
  auto options = patient();
  options.lengths = values({3000.0});  // a share of 1e-3 is wider than the wells lie apart
  const auto found = minimise_from(two_wells(), {values({-2}), values({1.5})}, options);
  CHECK(found.minima.size() == 1);
  CHECK(found.reached_best == 2);
  options.lengths = values({1.0, 1.0});
  CHECK_THROWS_WITH(minimise_from(two_wells(), {values({1})}, options), mentions("lengths"));
}

TEST_CASE("ends of starts close to each other are compared by the size of the values") {
  auto options = patient();
  options.search.cost_tolerance = 1e-2;
  const auto found = minimise_from(two_wells(), {values({-3}), values({-3.001})}, options);
  const double apart = std::fabs(found.starts[0].found.x[0] - found.starts[1].found.x[0]);
  REQUIRE(apart > 1e-6);  // a share of 1e-3 of what the starts span
  REQUIRE(apart < 1e-3);
  CHECK(found.minima.size() == 1);
}

TEST_CASE("starts that fail are kept with their reason") {
  auto problem = two_wells();
  const auto inner = problem.residuals;
  problem.residuals = [=](const VectorXd& x) -> VectorXd {
    if (x[0] < -5.0) throw OutsideValidity("x is too low");
    if (x[0] > 5.0) return VectorXd::Constant(2, std::nan(""));
    return inner(x);
  };
  const auto found = minimise_from(problem, {values({-9}), values({9}), values({1.2})}, patient());
  CHECK(found.starts[0].failure == "x is too low");
  CHECK(found.starts[0].found.x.size() == 0);
  CHECK(found.starts[1].failure == "the residuals at the start are not finite");
  CHECK(found.starts[1].minimum == -1);
  CHECK(found.starts[2].failure.empty());
  CHECK(found.minima.size() == 1);
  CHECK(found.reached_best == 1);
  CHECK_THROWS_WITH(minimise_from(problem, {values({-9}), values({9})}, patient()),
                    mentions("none of 2 starts") && mentions("x is too low"));
  problem.residuals = [](const VectorXd&) -> VectorXd { throw std::runtime_error("interrupt"); };
  CHECK_THROWS_WITH(minimise_from(problem, {values({1})}), "interrupt");
}

TEST_CASE("an end that did not converge is no minimum but may be the best") {
  auto options = patient();
  options.search.max_evaluations = 2;
  const auto found = minimise_from(two_wells(), {values({-2})}, options);
  CHECK(found.minima.empty());
  CHECK(found.reached_best == 0);
  CHECK(found.best.x.size() == 1);
  CHECK(found.starts[0].failure == "the allowed number of evaluations is used up");
}

TEST_CASE("NIST problems are solved from boxes far wider than their starts") {
  // BoxBOD runs onto a plateau from some starts (rate without limit), MGH17 into several others;
  // its two exponentials may also end in each other's place, at the same cost.
  struct Row {
    const char* name;
    VectorXd lower, upper;
    std::vector<Eigen::Index> mirrored;
  };
  const Row rows[] = {
      {"BoxBOD", values({1, 0.01}), values({500, 10}), {0, 1}},
      {"MGH17", values({-100, -100, -100, 0, 0}), values({100, 100, 100, 1, 1}), {0, 2, 1, 4, 3}}};
  const auto problems = nist::exponential_problems();
  for (const auto& row : rows) {
    std::ifstream file(KETTLECAST_NIST "/" + std::string(row.name) + ".dat");
    if (!file) {
      WARN("skipped: no " << row.name << " in " KETTLECAST_NIST);
      continue;
    }
    const auto certified = nist::read(file);
    std::mt19937_64 random(5);
    const auto found = minimise_from(nist::posed(named(problems, row.name), certified),
                                     starts_within(row.lower, row.upper, 24, random), patient());
    INFO(row.name << ": " << found.minima.size() << " minima");
    VectorXd mirror = certified.values;
    for (Eigen::Index i = 0; i < mirror.size(); ++i)
      mirror[i] = certified.values[row.mirrored[static_cast<std::size_t>(i)]];
    int reached = 0;
    for (const auto& one : found.minima) {
      if (agree(one.x, certified.values) || agree(one.x, mirror)) reached += one.reached;
    }
    CHECK((agree(found.best.x, certified.values) || agree(found.best.x, mirror)));
    CHECK(reached >= 3);
    CHECK(reached < 24);  // else the box would show nothing that one start does not
    CHECK(found.minima.back().cost > 2.0 * found.best.cost);
    CHECK(found.reached_best == found.minima.front().reached);
  }
}

TEST_CASE("a Latin hypercube has one point in each slice of every value") {
  std::mt19937_64 random(9);
  const auto points = starts_within(values({-1, 10, 2}), values({1, 30, 2}), 25, random);
  REQUIRE(points.size() == 25);
  for (const Eigen::Index j : {0, 1}) {
    const double low = j == 0 ? -1.0 : 10.0, width = j == 0 ? 2.0 : 20.0;
    std::vector<int> slices;
    for (const auto& point : points)
      slices.push_back(static_cast<int>(25.0 * (point[j] - low) / width));
    std::sort(slices.begin(), slices.end());
    for (int i = 0; i < 25; ++i) CHECK(slices[static_cast<std::size_t>(i)] == i);
  }
  for (const auto& point : points) CHECK(point[2] == 2.0);
  std::mt19937_64 again(9);
  CHECK(starts_within(values({-1, 10, 2}), values({1, 30, 2}), 25, again) == points);
  CHECK(starts_within(values({-1, 10, 2}), values({1, 30, 2}), 25, again) != points);
}

TEST_CASE("starts without meaning are refused") {
  std::mt19937_64 random(1);
  const double infinite = std::numeric_limits<double>::infinity();
  CHECK_THROWS_AS(minimise_from(two_wells(), {}), InvalidArgument);
  CHECK_THROWS_WITH(minimise_from(two_wells(), {values({1}), values({1, 2})}),
                    mentions("must have 1 values"));
  CHECK_THROWS_WITH(starts_within(values({0}), values({infinite}), 3, random), mentions("finite"));
  CHECK_THROWS_AS(starts_within(values({1}), values({0}), 3, random), InvalidArgument);
  CHECK_THROWS_WITH(starts_within(values({0}), values({1}), 0, random), mentions("count"));
}
