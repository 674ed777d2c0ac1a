#include <Eigen/Core>
#include <cmath>
#include <limits>

#include "catch.hpp"
#include "kettlecast/base/errors.hpp"
#include "kettlecast/numerics/information.hpp"
#include "kettlecast/numerics/least_squares.hpp"
#include "message.hpp"
#include "published.hpp"
#include "vectors.hpp"

using namespace kettlecast;
using Eigen::MatrixXd;
using Eigen::VectorXd;

namespace {

/// Hardening of Portland cement: heat given off by the shares of four compounds. Woods, Steinour,
/// Starke, Industrial Eng. Chem. 24 (1932) 1207-1214, as in Burnham and Anderson (2002), table 3.1
/// (data from memory; the residual sums below check them).
struct Cement {
  MatrixXd shares = MatrixXd(13, 4);
  VectorXd heat =
      values({78.5, 74.3, 104.3, 87.6, 95.9, 109.2, 102.7, 72.5, 93.1, 115.9, 83.8, 113.3, 109.4});

  Cement() {
    shares.col(0) = values({7, 1, 11, 11, 7, 11, 3, 1, 2, 21, 1, 11, 10});
    shares.col(1) = values({26, 29, 56, 31, 52, 55, 71, 31, 54, 47, 40, 66, 68});
    shares.col(2) = values({6, 15, 8, 8, 6, 9, 17, 22, 18, 4, 23, 9, 8});
    shares.col(3) = values({60, 52, 20, 47, 33, 22, 6, 44, 22, 26, 34, 12, 12});
  }

  LeastSquaresSummary fitted(std::initializer_list<Eigen::Index> columns) const {
    MatrixXd a(13, static_cast<Eigen::Index>(columns.size()) + 1);
    a.col(0).setOnes();
    Eigen::Index next = 1;
    for (const auto column : columns) a.col(next++) = shares.col(column - 1);
    return minimise(linear(a, heat), VectorXd::Ones(a.cols()), tight());
  }
};

/// -2 log of the likelihood: product of normal densities of the residuals, added up one by one.
double deviance(const VectorXd& residuals, double variance) {
  double sum = 0.0;
  for (const double r : residuals) {
    sum -= 2.0 * std::log(std::exp(-0.5 * r * r / variance) /
                          std::sqrt(2.0 * std::acos(-1.0) * variance));
  }
  return sum;
}

}  // namespace

TEST_CASE("models of hardening cement rank as Burnham and Anderson print it") {
  const Cement cement;
  const auto pair = cement.fitted({1, 2});
  const auto three = cement.fitted({1, 2, 4});
  check_absolute(
      2.0 * pair.cost,
      published(57.90, "-", "Draper, Smith, Applied regression analysis (1998), from memory"),
      0.005);
  check_absolute(
      2.0 * three.cost,
      published(47.97, "-", "Draper, Smith, Applied regression analysis (1998), from memory"),
      0.005);
  const auto first = information_of(pair.cost, 13, 3, ErrorsOfData::estimated);
  const auto second = information_of(three.cost, 13, 4, ErrorsOfData::estimated);
  check_absolute(first.akaike_corrected,
                 published(32.41, "-", "Burnham, Anderson (2002), table 3.2, from memory"), 0.01);
  check_absolute(second.akaike_corrected - first.akaike_corrected,
                 published(3.13, "-", "Burnham, Anderson (2002), table 3.2, from memory"), 0.01);
}

TEST_CASE("criteria differ as the likelihoods themselves") {
  // The constant n (log 2 pi + 1) of all models of the same data is left out.
  const Cement cement;
  const double constant = 13.0 * (std::log(2.0 * std::acos(-1.0)) + 1.0);
  for (const auto& fit : {cement.fitted({1, 2}), cement.fitted({1, 2, 4}), cement.fitted({4})}) {
    const double size = static_cast<double>(fit.x.size()) + 1.0;
    const double exact = deviance(fit.residuals, 2.0 * fit.cost / 13.0) - constant;
    const auto found =
        information_of(fit.cost, 13, static_cast<int>(fit.x.size()), ErrorsOfData::estimated);
    CHECK_THAT(found.akaike, Catch::Matchers::WithinRel(exact + 2.0 * size, 1e-10));
    CHECK_THAT(found.bayes, Catch::Matchers::WithinRel(exact + size * std::log(13.0), 1e-10));
  }
  const auto known = information_of(3.0, 13, 2);
  const auto larger = information_of(2.5, 13, 3);
  // -2 log likelihood with known errors falls by twice the fall of the cost.
  CHECK_THAT(known.akaike - larger.akaike, Catch::Matchers::WithinRel(1.0 - 2.0, 1e-14));
  CHECK_THAT(known.akaike_corrected, Catch::Matchers::WithinRel(10.0 + 12.0 / 10.0, 1e-14));
}

TEST_CASE("too few data for a model and numbers without meaning") {
  CHECK(information_of(1.0, 5, 4).akaike_corrected == std::numeric_limits<double>::infinity());
  CHECK(std::isfinite(information_of(1.0, 5.5, 4).akaike_corrected));
  CHECK(information_of(0.0, 5, 0).akaike == 0.0);
  CHECK_THROWS_AS(information_of(0.0, 5, 1, ErrorsOfData::estimated), InvalidArgument);
  CHECK_THROWS_WITH(information_of(1.0, 0.0, 1), mentions("count"));
  CHECK_THROWS_WITH(information_of(1.0, 5.0, -1), mentions("parameters"));
}
