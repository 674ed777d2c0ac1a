#include <cmath>
#include <limits>

#include "kettlecast/transfer/batch_sums.hpp"
#include "kettlecast/transfer/batch_time.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

using Batch = LumpedBatch<double>;
constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr char kern[] = "Kern (1950), ch. 18; two methods agree";
constexpr char derived[] = "heat balance; two methods agree";

double celsius(double degrees) { return degrees + 273.15; }

/// Euler with tiny steps and Richardson's correction: knows no closed form.
double stepped(const Batch& batch, double start, double time) {
  const auto end = [&](int steps) {
    double temperature = start;
    for (int i = 0; i < steps; ++i) {
      temperature += net_heat_flow(batch, temperature) * time / steps / batch.heat_capacity;
    }
    return temperature;
  };
  return 2.0 * end(400000) - end(200000);
}

}  // namespace

TEST_CASE("a jacket with isothermal medium heats a batch") {
  const Batch batch{100.0 * 4186.0, 800.0, celsius(130.0), 0.0};
  check_relative(time_to_temperature(batch, celsius(20.0), celsius(95.0)),
                 published(599.1904782, "s", kern), 1e-9);
  check_relative(temperature_after(batch, celsius(20.0), 300.0) - 273.15,
                 published(67.99961083, "degC", kern), 1e-9);
}

TEST_CASE("milk stirred in a glass follows its bath") {
  const double rate = lumped_rate(120.0, 1.0 / 0.0105, 998.0, 4182.0);
  constexpr char source[] = "Cengel, Heat and Mass Transfer, solution of problem 4-17";
  check_relative(rate, published(0.002738, "1/s", source), 2e-4);
  // Printed: 348 s = 5.8 min, to two figures of minutes.
  check_relative(time_to_temperature(Batch{1.0, rate, 60.0, 0.0}, 3.0, 38.0),
                 published(348.0, "s", source), 5e-3);
}

TEST_CASE("tomato juice in a hemispherical kettle") {
  const double rate = lumped_rate(5000.0, hemisphere_surface_per_volume(0.5), 980.0, 3950.0);
  check_absolute(temperature_after(Batch{1.0, rate, 90.0, 0.0}, 20.0, 300.0),
                 published(83.3, "degC",
                           "Singh & Heldman, Introduction to Food Engineering, ch. 4; cp and "
                           "answer from memory"),
                 0.3);
}

TEST_CASE("constant power with a loss to the room") {
  const Batch batch{60.0 * 4186.0 + 15.0 * 500.0, 15.0, celsius(22.0), 12e3};
  Batch tight = batch;
  tight.conductance = 0.0;
  check_relative(time_to_temperature(batch, celsius(10.0), celsius(95.0)),
                 published(1906.735687, "s", derived), 1e-9);
  check_relative(time_to_temperature(tight, celsius(10.0), celsius(95.0)),
                 published(1832.175, "s", derived), 1e-12);
  check_relative(steady_temperature(batch) - 273.15, published(822.0, "degC", derived), 1e-12);
  check_relative(required_power(batch, celsius(10.0), celsius(95.0), 1906.735687),
                 published(12e3, "W", derived), 1e-9);
}

TEST_CASE("twenty more pounds of cold product into a hot batch") {
  const double pound = 0.45359237, btu = 4186.8;  // exact: kg per lb, J/(kg K) per Btu/(lb degF)
  const double hot = 100.0 * pound * 0.95 * btu, cold = 20.0 * pound * 0.90 * btu;
  const double mixed = mixing_temperature(hot, 180.0, cold, 40.0);
  check_relative(mixed, published(157.699115, "degF", "heat balance by hand"), 1e-8);
  check_relative(time_to_temperature(Batch{hot + cold, 0.0, 0.0, 10e3}, mixed / 1.8, 180.0 / 1.8),
                 published(265.8740749, "s", "heat balance by hand"), 1e-8);
}

TEST_CASE("heat and steam of a kettle of milk that boils off a quarter") {
  constexpr char source[] = "worked example of an energy management handbook [Btu, lb, degF]";
  const double sensible = sensible_heat(1500.0, 0.90, 80.0, 212.0);
  const double latent = boil_off_heat(1500.0, 0.25, 970.3);
  check_relative(sensible, published(178200.0, "Btu", source), 1e-12);
  check_relative(latent, published(363863.0, "Btu", source), 2e-6);
  check_relative(mass_of_vapour(sensible + latent, 945.0), published(574.0, "lb", source), 1e-3);
}

TEST_CASE("conductance for a wanted time") {
  constexpr char source[] = "worked sheet of a coil by Kern's equation";
  const Batch batch{729.0 * 4186.8, 0.0, 133.5, 0.0};
  const double conductance = required_conductance(batch, 18.0, 50.0, 3600.0);
  check_relative(conductance / 1484.9, published(0.185, "m2", source), 5e-3);
  const double heat = sensible_heat(729.0, 4.1868, 18.0, 50.0);
  check_relative(heat, published(97670.0, "kJ", source), 1e-5);
  check_relative(mass_of_vapour(heat, 2163.2), published(45.15, "kg", source), 1e-4);
}

TEST_CASE("the closed form agrees with small steps, heating, cooling and at any loss") {
  const Batch cases[] = {{4e5, 800.0, 400.0, 0.0},
                         {4e5, 300.0, 280.0, 0.0},
                         {4e5, 15.0, 295.0, 12e3},
                         {4e5, 1e-9, 295.0, 12e3}};
  for (const auto& batch : cases) {
    const double after = temperature_after(batch, 330.0, 900.0);
    CHECK_THAT(after, WithinAbs(stepped(batch, 330.0, 900.0), 1e-7));
    CHECK_THAT(time_to_temperature(batch, 330.0, after), WithinRel(900.0, 1e-9));
  }
}

TEST_CASE("what is never reached takes for ever") {
  const Batch steam{4e5, 800.0, 400.0, 0.0};
  CHECK(time_to_temperature(steam, 300.0, 400.0) == infinity);
  CHECK(time_to_temperature(steam, 300.0, 410.0) == infinity);
  CHECK(time_to_temperature(steam, 300.0, 290.0) == infinity);
  CHECK(time_to_temperature(Batch{4e5, 0.0, 400.0, 0.0}, 300.0, 310.0) == infinity);
  CHECK(time_to_temperature(steam, 400.0, 400.0) == 0.0);
  CHECK(required_conductance(steam, 300.0, 410.0, 60.0) == infinity);
}

TEST_CASE("times and temperatures over their range") {
  const auto time = [](double target) {
    return time_to_temperature(Batch{4e5, 15.0, 295.0, 12e3}, 280.0, target);
  };
  sweep::rising(281.0, 370.0, time);
  sweep::positive(281.0, 370.0, time);
  const auto cooled = [](double seconds) {
    return temperature_after(Batch{4e5, 300.0, 280.0, 0.0}, 370.0, seconds);
  };
  sweep::falling(0.0, 1e4, cooled);
  // Across the series at small losses: a step changes G by 0.5 % and G dT / P is 6e-5 at most.
  const auto lossy = [](double exponent) {
    return time_to_temperature(Batch{4e5, std::pow(10.0, exponent), 295.0, 12e3}, 295.0, 370.0);
  };
  sweep::without_jump(-6.0, -2.0, 2e-7, lossy);
  CHECK_THAT(mixing_temperature(1e5, 350.0, 0.0, 280.0), WithinAbs(350.0, 1e-12));
}
