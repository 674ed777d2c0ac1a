#include "kettlecast/properties/glycol.hpp"
#include "kettlecast/properties/water.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;

namespace {
constexpr double kelvin(double celsius) { return celsius + constants::ice_point; }
}  // namespace

TEST_CASE("freezing points of propylene glycol in water") {
  // Printed tables differ by 0.5 K for thin and by 1.5 K for strong mixtures.
  const char source[] = "ASHRAE Fundamentals, aqueous propylene glycol by mass (from memory)";
  const auto freezing = [](double share) {
    return glycol::freezing_temperature(share) - constants::ice_point;
  };
  CHECK(freezing(0.0) == 0.0);
  check_absolute(freezing(0.1), published(-3.3, "degC", source), 0.5);
  check_absolute(freezing(0.2), published(-7.1, "degC", source), 0.5);
  check_absolute(freezing(0.3), published(-12.7, "degC", source), 0.5);
  check_absolute(freezing(0.4), published(-21.1, "degC", source), 1.5);
  check_absolute(freezing(0.5), published(-33.5, "degC", source), 1.5);
  check_absolute(freezing(0.6), published(-51.1, "degC", source), 1.5);
}

TEST_CASE("specific gravity and freezing point of a handbook of chemistry") {
  // Shares by volume of the glycol, density 1040 kg/m3 at 15.6 degC; that of water 999.0 kg/m3. The
  // table steps by 5 % of volume, 0.5 % of gravity.
  const char source[] = "Lange's Handbook of Chemistry, 15th edition, table 5.13";
  const double rows[][3] = {{0.10, 1.006, -2.2},  {0.20, 1.017, -6.7},  {0.30, 1.024, -12.8},
                            {0.35, 1.028, -16.1}, {0.40, 1.032, -20.6}, {0.45, 1.037, -26.7},
                            {0.50, 1.040, -33.3}};
  for (const auto& [volume_share, gravity, freezing] : rows) {
    const double share = volume_share * 1040.0 / (gravity * 999.0);
    INFO(share);
    check_relative(glycol::density(share, kelvin(15.6)) / 999.0, published(gravity, "-", source),
                   5e-3);
    check_absolute(glycol::freezing_temperature(share) - constants::ice_point,
                   published(freezing, "degC", source), 1.6);
  }
}

TEST_CASE("mixture without glycol is water") {
  // Conductivities of the tables behind the fit are good to 1 % at best.
  for (const double celsius : {5.0, 20.0, 50.0, 80.0, 95.0}) {
    const double at = kelvin(celsius);
    INFO(celsius);
    check_relative(glycol::density(0.0, at),
                   published(water::density(at), "kg/m3", "IAPWS-IF97, see water.hpp"), 1e-3);
    check_relative(glycol::specific_heat(0.0, at),
                   published(water::specific_heat(at), "J/(kg K)", "IAPWS-IF97, see water.hpp"),
                   5e-3);
    check_relative(glycol::conductivity(0.0, at),
                   published(water::conductivity(at), "W/(m K)", "IAPWS R15-11, see water.hpp"),
                   1e-2);
    check_relative(glycol::viscosity(0.0, at),
                   published(water::viscosity(at), "Pa s", "IAPWS R12-08, see water.hpp"), 0.02);
  }
}

TEST_CASE("mixtures against the tables of a handbook of refrigeration") {
  // Tables of inhibited glycol, so within the spread that inhibitors and the two sources have.
  const char source[] = "ASHRAE Fundamentals (2001), chapter 21, as fitted in CoolProp (APG)";
  struct Line {
    double share, celsius, density, specific_heat, conductivity, viscosity;
  };
  for (const Line& line : {Line{0.15, 20.0, 1013.8, 4027.0, 0.5167, 1.655e-3},
                           Line{0.15, 80.0, 983.0, 4141.0, 0.5702, 5.136e-4},
                           Line{0.30, 0.0, 1036.2, 3793.0, 0.4227, 7.232e-3},
                           Line{0.30, 20.0, 1028.3, 3848.0, 0.4448, 3.069e-3},
                           Line{0.30, 80.0, 992.4, 4013.0, 0.4824, 6.997e-4},
                           Line{0.50, -20.0, 1060.5, 3378.0, 0.3337, 7.432e-2},
                           Line{0.50, 20.0, 1042.9, 3532.0, 0.3621, 6.600e-3},
                           Line{0.50, 80.0, 1001.0, 3763.0, 0.3816, 1.126e-3},
                           Line{0.60, 40.0, 1035.5, 3427.0, 0.3315, 4.256e-3}}) {
    const double at = kelvin(line.celsius);
    INFO(line.share << " at " << line.celsius);
    check_relative(glycol::density(line.share, at), published(line.density, "kg/m3", source), 0.01);
    check_relative(glycol::specific_heat(line.share, at),
                   published(line.specific_heat, "J/(kg K)", source), 0.005);
    check_relative(glycol::conductivity(line.share, at),
                   published(line.conductivity, "W/(m K)", source), 0.03);
    check_relative(glycol::viscosity(line.share, at), published(line.viscosity, "Pa s", source),
                   0.15);
  }
}

TEST_CASE("properties of mixtures over their range") {
  for (const double share : {0.0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6}) {
    INFO(share);
    const double low = std::fmax(kelvin(-20.0), glycol::freezing_temperature(share));
    const double high = kelvin(100.0);
    const auto at = [&](auto property) {
      return [=](double temperature) { return property(share, temperature); };
    };
    sweep::positive(low, high, at(&glycol::specific_heat<double>));
    sweep::without_jump(low, high, 1e-3, at(&glycol::specific_heat<double>));
    sweep::rising(low, high, at(&glycol::conductivity<double>));
    sweep::falling(low, high, at(&glycol::viscosity<double>));
    if (share > 0.0) sweep::falling(low, high, at(&glycol::density<double>));
    const double slope = sweep::slope(kelvin(45.0), 0.01, at(&glycol::density<double>));
    CHECK_THAT(glycol::expansivity(share, kelvin(45.0)),
               Catch::Matchers::WithinRel(-slope / glycol::density(share, kelvin(45.0)), 1e-6));
  }
  sweep::falling(0.0, 0.6, [](double share) { return glycol::freezing_temperature(share); });
  sweep::rising(0.0, 0.6, [](double share) { return glycol::viscosity(share, kelvin(20.0)); });
  sweep::falling(0.0, 0.6, [](double share) { return glycol::conductivity(share, kelvin(20.0)); });
}
