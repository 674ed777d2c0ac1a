#include "kettlecast/properties/steam.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;

namespace {
constexpr double psi = 6894.757293168;  // [Pa]
constexpr double bar = 1e5;             // [Pa]
}  // namespace

TEST_CASE("steam of a jacket by its gauge agrees with an independent computation of IAPWS-IF97") {
  struct Row {
    double gauge, temperature, latent_heat, density;
  };
  const Row rows[] = {{0.34473786e5, 381.5412852, 2234060.836, 0.78591700},
                      {1.03421359e5, 394.1046664, 2199474.075, 1.15406978},
                      {2.06842719e5, 407.5937875, 2160741.190, 1.69287132},
                      {4.0e5, 425.0859769, 2107609.024, 2.67472009},
                      {7.0e5, 443.6321402, 2047051.577, 4.16753051},
                      {9.0e5, 453.0931808, 2014232.788, 5.15189039}};
  for (const Row& row : rows) {
    constexpr const char source[] = "package iapws (IAPWS-IF97), 101325 Pa outside";
    check_absolute(steam::temperature(row.gauge, constants::atmosphere),
                   published(row.temperature, "K", source), 1e-4);
    check_relative(steam::latent_heat(row.gauge, constants::atmosphere),
                   published(row.latent_heat, "J/kg", source), 1.3e-5);
    check_relative(steam::density(row.gauge, constants::atmosphere),
                   published(row.density, "kg/m3", source), 1.0e-4);
  }
}

TEST_CASE("steam of a jacket agrees with tables and worked examples") {
  check_absolute(steam::temperature(5.0 * psi, constants::atmosphere) - 273.15,
                 published(108.3912853, "degC", "package iapws, 5 psi gauge"), 0.01);
  check_relative(steam::latent_heat(15.0 * psi, constants::atmosphere) / 2326.0,
                 published(945.0, "Btu/lb", "civil engineering handbook, 15 psi gauge"), 1e-3);
  // SR1-86 rests on IAPWS-95; the two formulations differ by 6e-5 there.
  check_relative(steam::latent_heat(0.0, constants::atmosphere),
                 published(2256.65e3, "J/kg", "IAPWS SR1-86 Table 1, 1 atm"), 1e-4);
  // The example takes 2 bar of gauge pressure as 3.00 bar in all.
  check_absolute(steam::temperature(2.0 * bar, bar) - 273.15,
                 published(133.5, "degC", "worked sheet of a coil, steam at 2 bar gauge"), 0.05);
}

TEST_CASE("the same gauge reads colder steam on a mountain") {
  const double sea = steam::temperature(1.0 * bar, constants::atmosphere);
  CHECK_THAT(steam::temperature(1.0 * bar, 0.795 * bar),
             Catch::Matchers::WithinAbs(water::saturation_temperature(1.795 * bar), 1e-9));
  CHECK(sea - steam::temperature(1.0 * bar, 0.795 * bar) > 3.0);
}

TEST_CASE("air in steam lowers its temperature by Dalton's law") {
  check_absolute(steam::temperature_with_air(2.0 * bar, 0.1),
                 published(390.0624081, "K", "package iapws at 0.9 of 0.2 MPa"), 1e-3);
  CHECK(steam::temperature_with_air(2.0 * bar, 0.0) == water::saturation_temperature(2.0 * bar));
  sweep::falling(0.0, 0.9, [](double y) { return steam::temperature_with_air(2.0 * bar, y); });
  // Half of the molecules: 28.9644 / (28.9644 + 18.015268).
  check_relative(steam::air_mass_fraction(0.5),
                 published(0.616530, "-", "molar masses of US Standard Atmosphere 1976 and IAPWS"),
                 1e-5);
  CHECK(steam::air_mass_fraction(0.0) == 0.0);
  CHECK_THAT(steam::air_mass_fraction(1.0), Catch::Matchers::WithinRel(1.0, 1e-14));
  sweep::rising(0.0, 1.0, [](double y) { return steam::air_mass_fraction(y); });
}

TEST_CASE("steam is finite, positive and goes the right way up to 9 bar of gauge pressure") {
  const auto of = [](auto property) {
    return [=](double gauge) { return property(gauge, constants::atmosphere); };
  };
  const auto temperature = of([](double g, double a) { return steam::temperature(g, a); });
  const auto latent = of([](double g, double a) { return steam::latent_heat(g, a); });
  const auto density = of([](double g, double a) { return steam::density(g, a); });
  sweep::rising(-1e5, 9e5, temperature);
  sweep::falling(-1e5, 9e5, latent);
  sweep::rising(-1e5, 9e5, density);
  sweep::positive(-1e5, 9e5, density);
}
