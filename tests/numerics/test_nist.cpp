// Least squares against the certified values of the NIST Statistical Reference Datasets,
// nonlinear regression: NIST/ITL StRD, the 27 files of that collection, both starts of each.
// The files are not part of the project; see KETTLECAST_NIST in tests/CMakeLists.txt.
#include <cmath>
#include <string>
#include <vector>

#include "catch.hpp"
#include "kettlecast/numerics/covariance.hpp"
#include "nist_problems.hpp"

using kettlecast::LeastSquaresSummary;

namespace {

constexpr double digits_of_values = 6.0;
constexpr double digits_of_errors = 6.0;

/// Number of leading digits in which a value agrees with a certified one.
double digits(double found, double certified) {
  return -std::log10(std::fabs(found - certified) / std::fabs(certified));
}

double fewest_digits(const Eigen::VectorXd& found, const Eigen::VectorXd& certified) {
  double fewest = 99.0;
  for (Eigen::Index i = 0; i < found.size(); ++i) {
    fewest = std::fmin(fewest, digits(found[i], certified[i]));
  }
  return fewest;
}

LeastSquaresSummary search(const kettlecast::LeastSquaresProblem& problem,
                           const Eigen::VectorXd& start) {
  kettlecast::LeastSquaresOptions options;
  options.cost_tolerance = 1e-16;
  options.step_tolerance = 1e-13;
  options.gradient_tolerance = 1e-13;
  options.max_evaluations = 20000;
  return minimise(problem, start, options);
}

void check(const nist::Problem& problem, const nist::Certified& certified, std::size_t start) {
  const auto posed = nist::posed(problem, certified);
  const auto found = search(posed, certified.starts[start]);
  const auto freedom =
      static_cast<double>(certified.y.size()) - static_cast<double>(certified.values.size());
  const double residual_error = std::sqrt(2.0 * found.cost / freedom);
  const auto known =
      kettlecast::covariance_of(posed.jacobian(found.x), residual_error * residual_error);
  INFO(problem.name << " from start " << start + 1 << ": " << in_words(found.reason) << " after "
                    << found.evaluations << " evaluations");
  CHECK(found.converged());
  CHECK(fewest_digits(found.x, certified.values) >= digits_of_values);
  CHECK(digits(residual_error, certified.residual_error) >= digits_of_errors);
  CHECK(known.rank == found.x.size());
  CHECK(fewest_digits(known.standard_errors, certified.errors) >= digits_of_errors);
}

}  // namespace

TEST_CASE("certified values of all NIST problems are found from both starts") {
  int read = 0;
  auto problems = nist::exponential_problems();
  for (auto& other : nist::other_problems()) problems.push_back(std::move(other));
  REQUIRE(problems.size() == 27);
  for (const auto& problem : problems) {
    std::ifstream file(KETTLECAST_NIST "/" + problem.name + ".dat");
    if (!file) continue;
    ++read;
    const auto certified = nist::read(file);
    for (const std::size_t start : {0u, 1u}) check(problem, certified, start);
  }
  if (read == 0) {
    WARN("skipped: no NIST files in " KETTLECAST_NIST);
  } else {
    CHECK(read == 27);
  }
}
