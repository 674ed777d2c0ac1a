#include <cmath>
#include <limits>

#include "kettlecast/transfer/batch_exchange.hpp"
#include "kettlecast/transfer/batch_passes.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinRel;

namespace {

constexpr char kern[] = "Kern (1950), ch. 18; two methods agree";
constexpr double infinity = std::numeric_limits<double>::infinity();

/// Heat flow per kelvin of a counterflow exchanger by stepping along it and shooting for the outlet
/// of the batch side: knows no closed form.
double stepped_counterflow(double conductance, double medium_flow, double batch_flow) {
  constexpr int steps = 20000;
  const auto batch_at_inlet = [&](double batch_outlet) {
    double medium = 1.0, batch = batch_outlet;
    for (int i = 0; i < steps; ++i) {
      const double half = 0.5 * conductance / steps * (medium - batch);
      const double flow =
          conductance / steps * (medium - half / medium_flow - (batch - half / batch_flow));
      medium -= flow / medium_flow;
      batch -= flow / batch_flow;
    }
    return batch;
  };
  // The equations are linear, so that two shots hit.
  const double cold = batch_at_inlet(0.0), warm = batch_at_inlet(0.5);
  return batch_flow * 0.5 * cold / (cold - warm);
}

}  // namespace

TEST_CASE("a medium that cools on its way through coil or jacket") {
  const double flow = 0.3 * 4190.0;
  check_relative(difference_ratio(500.0, flow), published(1.488505318, "-", kern), 1e-9);
  const LumpedBatch<double> batch{200.0 * 4000.0, flowing_medium_conductance(500.0, flow), 110.0,
                                  0.0};
  check_relative(time_to_temperature(batch, 15.0, 85.0), published(2588.912764, "s", kern), 1e-9);
}

TEST_CASE("vegetable oil in a coil-heated agitated vessel") {
  // kcal, kg, h, degC
  const double flow = 10000.0 * 0.8, conductance = 900.0 * 30.0;
  check_relative(difference_ratio(conductance, flow),
                 published(29.2243, "-", "board problem of 1986 with Perry, 8th ed., eq. 11-35b"),
                 1e-6);
  const LumpedBatch<double> oil{5000.0 * 0.9, flowing_medium_conductance(conductance, flow), 350.0,
                                0.0};
  check_relative(60.0 * time_to_temperature(oil, 20.0, 250.0),
                 published(41.72255048, "min", "Perry, 8th ed., eq. 11-35b; two methods agree"),
                 1e-9);
}

TEST_CASE("the area conductance of a flowing medium is found back") {
  sweep::positive(1.0, 5000.0, [](double conductance) {
    const double effective = flowing_medium_conductance(conductance, 1257.0);
    CHECK_THAT(flowing_medium_area_conductance(effective, 1257.0), WithinRel(conductance, 1e-10));
    return effective;
  });
  CHECK(flowing_medium_area_conductance(1257.0, 1257.0) == infinity);
}

TEST_CASE("external counterflow exchanger against steps along its length") {
  for (double batch_flow : {500.0, 1000.0, 1000.0001, 4000.0}) {
    CHECK_THAT(counterflow_conductance(1500.0, 1000.0, batch_flow),
               WithinRel(stepped_counterflow(1500.0, 1000.0, batch_flow), 1e-6));
  }
}

TEST_CASE("external exchangers by their limits") {
  // An isothermal side is an infinite capacity flow.
  for (double flow : {300.0, 3000.0}) {
    CHECK_THAT(counterflow_conductance(900.0, 1e15, flow),
               WithinRel(flowing_medium_conductance(900.0, flow), 1e-9));
    CHECK_THAT(shell_and_tube_conductance(900.0, 1e15, flow, 1),
               WithinRel(flowing_medium_conductance(900.0, flow), 1e-9));
  }
  check_absolute(shell_and_tube_conductance(1000.0, 1000.0, 1000.0, 1) / 1000.0,
                 published(0.463, "-",
                           "Kays & London, Compact Heat Exchangers, one shell pass, N = 1, equal "
                           "flows (from memory)"),
                 5e-4);
  // Many shells in series are counterflow, one is worse.
  const double counter = counterflow_conductance(2000.0, 900.0, 1000.0);
  CHECK_THAT(shell_and_tube_conductance(2000.0, 900.0, 1000.0, 400), WithinRel(counter, 1e-5));
  CHECK(shell_and_tube_conductance(2000.0, 900.0, 1000.0, 1) < 0.95 * counter);
  CHECK(shell_and_tube_conductance(2000.0, 900.0, 1000.0, 2) >
        shell_and_tube_conductance(2000.0, 900.0, 1000.0, 1));
}

TEST_CASE("exchangers over their range") {
  const auto counter = [](double area) { return counterflow_conductance(area, 700.0, 1200.0); };
  const auto shells = [](double area) {
    return shell_and_tube_conductance(area, 700.0, 1200.0, 2);
  };
  sweep::positive(1.0, 5000.0, counter);
  sweep::rising(1.0, 5000.0, counter);
  sweep::positive(1.0, 5000.0, shells);
  sweep::rising(1.0, 3000.0, shells);
  // Across equal flows: 1000 steps of 0.05 % change the result by 0.05 % each at most.
  sweep::without_jump(600.0, 1400.0, 1e-3,
                      [](double flow) { return counterflow_conductance(900.0, 1000.0, flow); });
  sweep::without_jump(600.0, 1400.0, 1e-3, [](double flow) {
    return shell_and_tube_conductance(900.0, 1000.0, flow, 2);
  });
  CHECK(std::isfinite(counterflow_conductance(1e9, 1.0, 1000.0)));
}

TEST_CASE("an unstirred batch pumped through an exchanger, pass by pass") {
  constexpr char source[] = "Kern (1950), ch. 18, p. 637, rounded there at each step";
  const double effectiveness = 0.29, medium = 400.0, start = 100.0;  // degF
  const double printed[] = {187.0, 249.0, 293.0, 324.0};
  for (int n = 0; n < 4; ++n) {
    check_absolute(temperature_after_passes(effectiveness, medium, start, n + 1.0),
                   published(printed[n], "degF", source), 0.6);
  }
  // 0.01: with the rounded 293 and 324 degF his mixing gives 3.23, unrounded 3.24.
  check_absolute(passes_to_temperature(effectiveness, medium, start, 300.0),
                 published(3.23, "-", source), 0.01);
  // Kern's exchanger: 20 000 Btu/(h degF), 10 000 lb/h of 0.60 and 40 000 lb/h of 0.48 Btu/(lb
  // degF); inputs from memory.
  check_absolute(counterflow_conductance(20000.0, 6000.0, 19200.0) / 19200.0,
                 published(0.29, "-", source), 0.005);
}

TEST_CASE("passes and temperatures are inverse to each other") {
  for (double passes : {0.0, 0.3, 1.0, 2.7, 9.0}) {
    const double reached = temperature_after_passes(0.29, 400.0, 100.0, passes);
    CHECK_THAT(passes_to_temperature(0.29, 400.0, 100.0, reached) + 1.0,
               WithinRel(passes + 1.0, 1e-9));
  }
  sweep::rising(0.0, 12.0,
                [](double passes) { return temperature_after_passes(0.29, 400.0, 100.0, passes); });
  CHECK(passes_to_temperature(0.29, 400.0, 100.0, 400.0) == infinity);
  CHECK(passes_to_temperature(0.29, 400.0, 100.0, 90.0) == infinity);
}
