#include <algorithm>

#include "kettlecast/properties/saturation.hpp"
#include "kettlecast/properties/water.hpp"
#include "kettlecast/properties/water_ambient.hpp"
#include "kettlecast/properties/water_saturation.hpp"
#include "kettlecast/properties/water_states.hpp"
#include "kettlecast/properties/water_transport.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;
namespace states = kettlecast::water_states;

namespace {

constexpr double ice = 273.15, hot = 433.15;  // [K], range of the fits of water.hpp

/// Largest relative difference of a fit from a reference over a range.
template <class Fit, class Reference>
double largest_error(double low, double high, Fit&& fit, Reference&& reference) {
  double largest = 0.0;
  for (int i = 0; i <= sweep::steps; ++i) {
    const double t = low + (high - low) * i / sweep::steps;
    largest = std::max(largest, std::fabs(fit(t) / reference(t) - 1.0));
  }
  return largest;
}

/// Property of saturated liquid from a property at temperature and pressure.
template <class Property>
auto saturated(Property&& property) {
  return [property](double t) { return property(t, water::saturation_pressure(t)); };
}

}  // namespace

TEST_CASE("compressed water is region 1 of IAPWS-IF97") {
  struct Row {
    double temperature, pressure, volume, enthalpy, specific_heat;  // K, MPa, m3/kg, kJ/kg
  };
  const Row rows[] = {{300, 3, 0.100215168e-2, 0.115331273e3, 0.417301218e1},
                      {300, 80, 0.971180894e-3, 0.184142828e3, 0.401008987e1},
                      {500, 3, 0.120241800e-2, 0.975542239e3, 0.465580682e1}};
  for (const Row& row : rows) {
    const double t = row.temperature, p = row.pressure * 1e6;
    check_relative(states::compressed_volume(t, p),
                   published(row.volume, "m3/kg", "IAPWS R7-97(2012) Table 5"), 1e-8);
    check_relative(states::compressed_density(t, p),
                   published(1.0 / row.volume, "kg/m3", "IAPWS R7-97(2012) Table 5"), 1e-8);
    check_relative(states::compressed_enthalpy(t, p) / 1e3,
                   published(row.enthalpy, "kJ/kg", "IAPWS R7-97(2012) Table 5"), 1e-8);
    check_relative(states::compressed_specific_heat(t, p) / 1e3,
                   published(row.specific_heat, "kJ/(kg K)", "IAPWS R7-97(2012) Table 5"), 1e-8);
  }
}

TEST_CASE("slope of the enthalpy of compressed water is its specific heat") {
  for (const double pressure : {1e6, 10e6, 100e6})
    for (double t = 280.0; t < 450.0; t += 10.0)
      CHECK_THAT(
          sweep::slope(t, 0.01, [&](double x) { return states::compressed_enthalpy(x, pressure); }),
          Catch::Matchers::WithinRel(states::compressed_specific_heat(t, pressure), 1e-7));
}

TEST_CASE("viscosity is IAPWS R12-08 without critical enhancement") {
  struct Row {
    double temperature, density, viscosity;  // K, kg/m3, uPa s
  };
  const Row rows[] = {{298.15, 998, 889.735100},  {298.15, 1200, 1437.649467},
                      {373.15, 1000, 307.883622}, {433.15, 1, 14.538324},
                      {433.15, 1000, 217.685358}, {873.15, 1, 32.619287},
                      {873.15, 100, 35.802262},   {873.15, 600, 77.430195},
                      {1173.15, 1, 44.217245},    {1173.15, 400, 64.154608}};
  for (const Row& row : rows)
    check_relative(states::viscosity(row.density, row.temperature) * 1e6,
                   published(row.viscosity, "uPa s", "IAPWS R12-08 Table 4"), 4e-8);
}

TEST_CASE("conductivity is IAPWS R15-11 without critical enhancement") {
  struct Row {
    double temperature, density, conductivity;  // K, kg/m3, mW/(m K)
  };
  const Row rows[] = {{298.15, 0, 18.4341883},
                      {298.15, 998, 607.712868},
                      {298.15, 1200, 799.038144},
                      {873.15, 0, 79.1034659}};
  for (const Row& row : rows)
    check_relative(states::conductivity(row.density, row.temperature) * 1e3,
                   published(row.conductivity, "mW/(m K)", "IAPWS R15-11 Table 4"), 1e-8);
}

TEST_CASE("surface tension is IAPWS R1-76") {
  check_absolute(states::surface_tension(293.15) * 1e3,
                 published(72.74, "mN/m", "IAPWS R1-76(2014) Table 1"), 0.006);
  check_absolute(states::surface_tension(373.15) * 1e3,
                 published(58.91, "mN/m", "IAPWS R1-76(2014) Table 1"), 0.006);
}

TEST_CASE("liquid at 0.1 MPa is IAPWS SR6-08") {
  check_relative(states::ambient_density(298.15),
                 published(997.047013, "kg/m3", "IAPWS SR6-08(2011) Table 8"), 1e-9);
  check_relative(states::ambient_specific_heat(298.15) / 1e3,
                 published(4.18144618, "kJ/(kg K)", "IAPWS SR6-08(2011) Table 8"), 1e-8);
  check_relative(states::ambient_viscosity(298.15) * 1e6,
                 published(889.996774, "uPa s", "IAPWS SR6-08(2011) Table 8"), 1e-8);
  check_relative(states::ambient_conductivity(298.15),
                 published(0.606502308, "W/(m K)", "IAPWS SR6-08(2011) Table 8"), 1e-8);
  sweep::positive(253.15, 383.15, states::ambient_specific_heat<double>);
  sweep::positive(253.15, 383.15, states::ambient_density<double>);
  sweep::falling(253.15, 383.15, states::ambient_viscosity<double>);
  sweep::rising(253.15, 383.15, states::ambient_conductivity<double>);
}

TEST_CASE("saturated water and steam are IAPWS SR1-86") {
  struct Row {
    double temperature, pressure, slope;                                      // K, Pa, Pa/K
    double liquid_density, vapour_density, liquid_enthalpy, vapour_enthalpy;  // kg/m3, kJ/kg
  };
  // Tolerance: one unit of the last digit printed.
  const Row rows[] = {{273.16, 611.657, 44.436693, 999.789, 0.00485426, 0.00061, 2500.5},
                      {373.1243, 101325, 3616, 958.365, 0.597586, 419.05, 2675.7},
                      {647.096, 22.064e6, 268e3, 322, 322, 2086.6, 2086.6}};
  const double slope_digit[] = {1e-5, 1.0, 1e3}, liquid_digit[] = {1e-3, 1e-3, 1.0};
  const double vapour_digit[] = {1e-8, 1e-6, 1.0}, enthalpy_digit[] = {1e-5, 1e-2, 0.1};
  for (int i = 0; i < 3; ++i) {
    const Row& row = rows[i];
    const double t = row.temperature;
    check_relative(states::saturation_pressure(t),
                   published(row.pressure, "Pa", "IAPWS SR1-86(1992) Table 1"), 1e-6);
    check_absolute(states::saturation_pressure_slope(t),
                   published(row.slope, "Pa/K", "IAPWS SR1-86(1992) Table 1"), slope_digit[i]);
    check_absolute(states::saturated_liquid_density(t),
                   published(row.liquid_density, "kg/m3", "IAPWS SR1-86(1992) Table 1"),
                   liquid_digit[i]);
    check_absolute(states::saturated_vapour_density(t),
                   published(row.vapour_density, "kg/m3", "IAPWS SR1-86(1992) Table 1"),
                   vapour_digit[i]);
    check_absolute(states::saturated_liquid_enthalpy(t) / 1e3,
                   published(row.liquid_enthalpy, "kJ/kg", "IAPWS SR1-86(1992) Table 1"),
                   enthalpy_digit[i]);
    check_absolute(states::saturated_vapour_enthalpy(t) / 1e3,
                   published(row.vapour_enthalpy, "kJ/kg", "IAPWS SR1-86(1992) Table 1"), 0.1);
  }
  sweep::rising(273.16, 647.0, states::saturation_pressure<double>);
  sweep::falling(278.0, 647.0, states::saturated_liquid_density<double>);
  sweep::rising(273.16, 647.0, states::saturated_vapour_density<double>);
}

TEST_CASE("compact fits of water keep the errors they state") {
  CHECK(largest_error(ice, hot, water::specific_heat<double>,
                      saturated(states::compressed_specific_heat<double>)) < 5.1e-5);
  CHECK(largest_error(ice, hot, water::density<double>,
                      saturated(states::compressed_density<double>)) < 8.2e-6);
  CHECK(largest_error(ice, hot, water::surface_tension<double>, states::surface_tension<double>) <
        2.5e-5);
  const auto density = saturated(states::compressed_density<double>);
  CHECK(largest_error(ice, hot, water::viscosity<double>,
                      [&](double t) { return states::viscosity(density(t), t); }) < 3.8e-5);
  // The fit holds the critical enhancement, the reference does not; it is zero up to 400 K.
  const auto conductivity = [&](double t) { return states::conductivity(density(t), t); };
  CHECK(largest_error(ice, 400.0, water::conductivity<double>, conductivity) < 8.5e-5);
  CHECK(largest_error(400.0, hot, water::conductivity<double>, conductivity) < 4.7e-4);
}

TEST_CASE("compact fits of water agree with the auxiliary equations of saturation") {
  const auto latent = [](double t) {
    return states::saturated_vapour_enthalpy(t) - states::saturated_liquid_enthalpy(t);
  };
  // Stated error of each fit plus the scatter between both IAPWS formulations.
  CHECK(largest_error(273.16, hot, water::latent_heat<double>, latent) < 3e-4);
  CHECK(largest_error(273.16, hot, water::vapour_density<double>,
                      states::saturated_vapour_density<double>) < 4e-4);
  CHECK(largest_error(273.16, hot, water::density<double>,
                      states::saturated_liquid_density<double>) < 4e-5);
  CHECK(largest_error(273.16, hot, water::saturation_pressure<double>,
                      states::saturation_pressure<double>) < 3e-4);
}
