#include <cmath>

#include "kettlecast/transfer/cooling_factors.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinRel;

namespace {
constexpr Shape shapes[] = {Shape::slab, Shape::cylinder, Shape::sphere};
}

TEST_CASE("factors of slab and cylinder from the printed polynomials") {
  constexpr char source[] = "ASHRAE Refrigeration, Cooling and Freezing Times, tables 1 and 2";
  const auto check_factors = [&](double biot, double slab, double lag, double cylinder) {
    check_relative(cooling_time_factor(Shape::slab, biot), published(slab, "-", source), 1e-4);
    check_relative(cooling_lag_factor(Shape::slab, biot), published(lag, "-", source), 1e-4);
    check_relative(cooling_time_factor(Shape::cylinder, biot), published(cylinder, "-", source),
                   1e-4);
  };
  check_factors(0.2, 12.3071, 1.0310, 6.0384);
  check_factors(1.0, 3.1063, 1.1193, 1.4561);
}

TEST_CASE("limits of strong films") {
  constexpr char source[] = "ASHRAE Refrigeration, Cooling and Freezing Times, tables 1 to 3";
  check_relative(cooling_time_factor(Shape::slab, 150.0), published(0.9332, "-", source), 1e-3);
  check_relative(cooling_lag_factor(Shape::slab, 150.0), published(1.273, "-", source), 1e-3);
  check_relative(cooling_time_factor(Shape::cylinder, 150.0), published(0.3982, "-", source), 1e-3);
  check_relative(cooling_lag_factor(Shape::cylinder, 150.0), published(1.6015, "-", source), 1e-3);
  check_relative(cooling_time_factor(Shape::sphere, 150.0),
                 published(0.2333, "-", "ln 10 / pi^2, as ASHRAE table 3 (from memory)"), 1e-3);
  check_relative(cooling_lag_factor(Shape::sphere, 150.0),
                 published(2.0, "-", "amplitude at u = pi, as ASHRAE table 3 (from memory)"), 1e-3);
}

TEST_CASE("weak films: the body is warm alike throughout") {
  for (Shape shape : shapes) {
    CHECK_THAT(cooling_time_factor(shape, 0.05),
               WithinRel(std::log(10.0) / (dimensions(shape) * 0.05), 1e-12));
    CHECK(cooling_lag_factor(shape, 0.05) == 1.0);
  }
}

TEST_CASE("factors keep to the exact first mode as far as stated") {
  for (Shape shape : shapes) {
    // Below, one joins the lumped body; the amplitude of a mode is not the lag there.
    for (double biot = 0.1; biot < 5000.0; biot *= 1.07) {
      INFO("shape " << dimensions(shape) << " Bi " << biot);
      const double exact = conduction_eigenvalue(shape, biot, 1);
      const double limit = biot > 15.0 && biot < 100.0 ? 0.036 : 0.011;
      CHECK_THAT(cooling_factor_root(shape, biot), WithinRel(exact, limit));
      CHECK_THAT(cooling_lag_factor(shape, biot), WithinRel(mode_amplitude(shape, exact), 0.011));
    }
  }
}

TEST_CASE("factors change with the Biot number without a jump") {
  for (Shape shape : shapes) {
    const auto time = [&](double x) { return cooling_time_factor(shape, std::pow(10.0, x)); };
    const auto lag = [&](double x) { return cooling_lag_factor(shape, std::pow(10.0, x)); };
    sweep::falling(-3.0, 2.09, time);
    sweep::without_jump(-3.0, 4.0, 0.011, time);  // 7 decades in 2000 steps, f ~ 1/Bi: 0.8 % each
    sweep::without_jump(-3.0, 4.0, 0.003, lag);
    sweep::positive(-3.0, 4.0, time);
  }
}
