#include <cmath>
#include <vector>

#include "kettlecast/properties/process_time.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinRel;

namespace {

constexpr double ice = constants::ice_point;
constexpr double minute = 60.0;

/// Integral over T of exp(-e/T), e = E/R, by the exponential integral.
double integral(double e, double temperature) {
  return temperature * std::exp(-e / temperature) + e * std::expint(-e / temperature);
}

}  // namespace

TEST_CASE("process time of ramp, hold and ramp") {
  const std::vector<double> times{0.0, 10.0 * minute, 15.0 * minute, 21.0 * minute};
  const std::vector<double> temperatures{100.0 + ice, 121.1 + ice, 121.1 + ice, 100.0 + ice};
  check_relative(process_time(times, temperatures, 121.1 + ice, 10.0) / minute,
                 published(8.267664709, "min", "integral of the exponential over linear ramps"),
                 1e-9);
}

TEST_CASE("a process time does not depend on how the lines are cut") {
  const std::vector<double> few{0.0, 900.0}, hot{300.0, 360.0};
  std::vector<double> many, values;
  for (int i = 0; i <= 90; ++i) {
    many.push_back(10.0 * i);
    values.push_back(300.0 + 60.0 * i / 90.0);
  }
  CHECK_THAT(process_time(many, values, 343.15, 7.0),
             WithinRel(process_time(few, hot, 343.15, 7.0), 1e-12));
}

TEST_CASE("browning of a crust on a hot plate") {
  // First order with k = 42000 1/s exp(-64151/(R T)) (Zanoni, Peri & Bruno 1995).
  const auto k = [](double t) { return 42000.0 * std::exp(-64151.0 / (8.314462618 * t)); };
  const double at_185 = 185.0 + ice, at_150 = 150.0 + ice;
  CHECK_THAT(browning::rate(at_185, browning::reference_temperature, browning::dry_crust_energy),
             WithinRel(k(at_185) / k(at_150), 1e-12));
  const auto rate = [](double t) {
    return browning::rate(t, browning::reference_temperature, browning::dry_crust_energy);
  };
  sweep::positive(273.15, 550.0, rate);
  sweep::rising(273.15, 550.0, rate);
  const double z = browning::z_from_activation_energy(at_150, browning::highest_energy);
  CHECK_THAT(browning::activation_energy_from_z(at_150, z),
             WithinRel(browning::highest_energy, 1e-14));
  // z is the slope of the logarithm of the rate.
  const double slope = sweep::slope(at_150, 1e-3, [](double t) {
    return std::log10(browning::rate(t, 423.15, browning::highest_energy));
  });
  CHECK_THAT(z, WithinRel(1.0 / slope, 1e-8));
}

TEST_CASE("browning time of a ramp is the exponential integral") {
  for (const double energy : {browning::dry_crust_energy, browning::highest_energy}) {
    const double e = energy / constants::molar_gas, from = 410.0, to = 440.0, duration = 120.0;
    const double exact = duration * std::exp(e / browning::reference_temperature) *
                         (integral(e, to) - integral(e, from)) / (to - from);
    CHECK_THAT(
        browning_time<double>({0.0, duration}, {from, to}, browning::reference_temperature, energy),
        WithinRel(exact, 1e-6));
  }
  CHECK_THAT(browning_time<double>({0.0, 70.0}, {423.15, 423.15}, 423.15, 64151.0),
             WithinRel(70.0, 1e-13));
}

TEST_CASE("D and z come back from exact death times") {
  std::vector<double> temperatures, times;
  for (const double t : {328.0, 331.0, 335.0, 342.0}) {
    temperatures.push_back(t);
    times.push_back(100.0 * std::pow(10.0, (333.15 - t) / 5.5));
  }
  const DeathTimes found = fit_death_times(temperatures, times, 333.15);
  CHECK_THAT(found.decimal_reduction, WithinRel(100.0, 1e-10));
  CHECK_THAT(found.z, WithinRel(5.5, 1e-10));
}

TEST_CASE("series and tables that make no sense are refused") {
  CHECK_THROWS_AS(process_time<double>({0.0, 1.0}, {300.0}, 343.0, 7.0), InvalidArgument);
  CHECK_THROWS_AS(process_time<double>({1.0, 0.0}, {300.0, 300.0}, 343.0, 7.0), InvalidArgument);
  CHECK_THROWS_AS(fit_death_times({300.0}, {1.0}, 300.0), InvalidArgument);
  CHECK_THROWS_AS(fit_death_times({}, {}, 300.0), InvalidArgument);
  CHECK_THROWS_AS(fit_death_times({300.0, 310.0}, {1.0, 0.0}, 300.0), InvalidArgument);
  CHECK_THROWS_AS(fit_death_times({300.0, 310.0}, {1.0, 2.0}, 300.0), InvalidArgument);
}
