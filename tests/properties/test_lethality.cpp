#include <cmath>

#include "kettlecast/properties/lethality.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;
using namespace kettlecast::lethality;
using Catch::Matchers::WithinRel;

namespace {
constexpr double ice = constants::ice_point;
constexpr double minute = 60.0;
double fahrenheit(double value) { return (value - 32.0) / 1.8 + ice; }
}  // namespace

TEST_CASE("D and z of a thermal-death-time curve") {
  const double z = z_value(fahrenheit(235.0), 10.0 * minute, fahrenheit(270.0), 0.1 * minute);
  check_relative(1.8 * z,
                 published(17.5, "degF", "death-time curve, D 10 min at 235 F, 0.1 at 270"), 1e-12);
  const double hot = decimal_reduction_time(fahrenheit(270.0), 600.0, fahrenheit(235.0), z);
  check_relative(hold_time(6.0, hot) / minute,
                 published(0.6, "min", "six decimal reductions at 270 F of the same curve"), 1e-12);
  check_relative(hold_time(6.0, 600.0) / minute,
                 published(60.0, "min", "six decimal reductions at 235 F of the same curve"),
                 1e-12);
  CHECK_THAT(log_reductions(hold_time(6.5, 42.0), 42.0), WithinRel(6.5, 1e-15));
}

TEST_CASE("one z hotter, D is a tenth") {
  const double d = decimal_reduction_time(160.0 + ice, 4.5 * minute, 150.0 + ice, 10.0);
  check_relative(d / minute, published(0.45, "min", "definition of z: D 4.5 min at 150 C, z 10 K"),
                 1e-12);
}

TEST_CASE("a pasteurisation unit is a minute at 60 degC") {
  check_relative(pasteurisation_rate(60.0 + ice),
                 published(1.0, "PU/min", "definition of the pasteurisation unit"), 1e-14);
  check_relative(pasteurisation_rate(65.0 + ice),
                 published(5.245121854, "PU/min", "rate form 1.393^(T - 60) (from memory)"), 1e-9);
  check_relative(pasteurisation_z(),
                 published(6.946802671, "K", "1 / log10(1.393), rate form (from memory)"), 1e-9);
}

TEST_CASE("rates over their range") {
  const auto rate = [](double t) { return lethal_rate(t, 394.25, 10.0); };
  sweep::positive(320.0, 420.0, rate);
  sweep::rising(320.0, 420.0, rate);
  const auto d = [](double t) { return decimal_reduction_time(t, 12.6, 394.25, 10.0); };
  sweep::positive(320.0, 420.0, d);
  sweep::falling(320.0, 420.0, d);
  sweep::rising(320.0, 350.0, [](double t) { return pasteurisation_rate(t); });
}

TEST_CASE("the mean over a ramp is that of many short steps, either way") {
  for (const double to : {330.0, 363.0, 393.0}) {
    const double from = 363.0, reference = 394.25, z = 10.0;
    const int n = 20000;
    double sum = 0.0;
    for (int i = 0; i < n; ++i) {
      sum += std::pow(10.0, (from + (to - from) * (i + 0.5) / n - reference) / z) / n;
    }
    CHECK_THAT(mean_lethal_rate(from, to, reference, z), WithinRel(sum, 1e-7));
    CHECK_THAT(mean_lethal_rate(to, from, reference, z), WithinRel(sum, 1e-7));
  }
}

TEST_CASE("the series for a flat ramp joins the quotient") {
  for (const double x : {-0.0100001, -0.0099999, -1e-9, 0.0, 1e-9, 0.0099999, 0.0100001}) {
    const double exact = x == 0.0 ? 1.0 : std::expm1(x) / x;
    CHECK_THAT(mean_of_exponential(x), WithinRel(exact, 1e-13));
  }
}
