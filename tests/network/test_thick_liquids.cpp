#include <cmath>

#include "kettlecast/network/liquid_pool.hpp"
#include "kettlecast/network/thick_liquids.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

Consistency power_law(double k, double n) {
  Consistency liquid;
  liquid.consistency = k;
  liquid.flow_index = n;
  return liquid;
}

/// Viscosity of thick liquids with a mass of thin liquid of 1 mPa s; below 0: boiled down [Pa s].
double stirred(const ThickLiquids<double>& thick, double thin_mass) {
  return stirred_viscosity(thick, 1e-3, thick_mass(thick) + thin_mass, 293.15);
}

}  // namespace

TEST_CASE("without thick liquids the thin one stays as it is") {
  CHECK(stirred({}, 10.0) == 1e-3);
  CHECK(stirred({}, 0.0) == 1e-3);
}

TEST_CASE("a power-law liquid alone has K g^(n-1)") {
  const auto paste = power_law(20.0, 0.5);
  const ThickLiquids<double> ribbon{{{&paste, 0.0, 0.0, 5.0, 0.0}}, 30.0};
  check_relative(stirred(ribbon, 0.0),
                 published(3.651483717, "Pa s", "20 x 30^-0.5, Metzner & Otto (1957)"), 1e-4);
  const ThickLiquids<double> pitched{{{&paste, 0.0, 0.0, 5.0, 0.0}}, 9.5};
  check_relative(stirred(pitched, 0.0),
                 published(6.488856845, "Pa s", "20 x 9.5^-0.5, Metzner & Otto (1957)"), 1e-4);
}

TEST_CASE("thin liquid dilutes along a straight line of the logarithm") {
  const auto paste = power_law(10.0, 1.0);
  const ThickLiquids<double> thick{{{&paste, 0.0, 0.0, 6.0, 0.0}}, 5.0};
  // ln mu = (6 ln 10 + m ln 0.001) / (6 + m): the law stated, by hand.
  CHECK_THAT(stirred(thick, 2.0), WithinRel(1.0, 1e-6));   // 10^((6 - 6)/8)
  CHECK_THAT(stirred(thick, 6.0), WithinRel(0.1, 1e-6));   // 10^((6 - 18)/12)
  CHECK_THAT(stirred(thick, 6e6), WithinRel(1e-3, 1e-4));  // next to nothing of it
  sweep::falling(0.0, 50.0, [&](double thin_mass) { return stirred(thick, thin_mass); });
  sweep::without_jump(0.0, 50.0, 0.05, [&](double thin_mass) { return stirred(thick, thin_mass); });
}

TEST_CASE("order and partition of thick liquids do not matter") {
  const auto sauce = power_law(4.0, 0.6), puree = power_law(30.0, 0.3);
  const ThickPart<double> some{&sauce, 0.0, 0.1, 3.0, 0.0}, other{&puree, 0.1, 0.2, 4.0, 0.0};
  const ThickPart<double> half{&sauce, 0.0, 0.1, 1.5, 0.0};
  const double whole = stirred({{some, other}, 10.0}, 2.0);
  CHECK_THAT(stirred({{other, some}, 10.0}, 2.0), WithinRel(whole, 1e-12));
  CHECK_THAT(stirred({{half, other, half}, 10.0}, 2.0), WithinRel(whole, 1e-12));
}

TEST_CASE("two liquids of one viscosity mix to that viscosity") {
  const auto paste = power_law(0.05, 1.0);
  const ThickLiquids<double> thick{{{&paste, 0.0, 0.0, 5.0, 0.0}}, 20.0};
  for (double thin_mass : {0.0, 1.0, 100.0}) {
    // Water, a fiftieth as thick, keeps a power law from falling below it: (1/50)^4 / 4.
    CHECK_THAT(stirred_viscosity(thick, 0.05, 5.0 + thin_mass, 293.15), WithinRel(0.05, 1e-7));
  }
}

TEST_CASE("a power law never makes a watery liquid thinner than water") {
  const auto thin = power_law(0.02, 0.3);
  for (double shear : {0.1, 10.0, 1e3, 1e5}) {
    CHECK(apparent_viscosity(thin, 353.15, shear, 0.0, 0.0) >= water::viscosity(353.15));
  }
}

TEST_CASE("a boiled-down liquid is thicker by exp(B dw), up to the driest") {
  auto puree = power_law(2.0, 1.0);
  puree.reference_solids = 0.1;
  puree.solids_exponent = 12.0;
  const ThickLiquids<double> thick{{{&puree, 0.0, 0.1, 6.0, 0.0}}, 10.0};
  const auto left = [&](double mass) { return stirred(thick, mass - 6.0); };
  // 0.6 kg of dry matter in 6, 3 and 2 kg: 10, 20 and 30 %.
  CHECK_THAT(left(3.0) / left(6.0), WithinRel(std::exp(1.2), 1e-8));
  CHECK_THAT(left(2.0) / left(6.0), WithinRel(std::exp(2.4), 1e-8));
  CHECK_THAT(left(0.1) / left(6.0), WithinRel(std::exp(12.0 * (0.95 - 0.1)), 1e-8));
  // From a soup to a paste: thicker all the way, without a jump where the thin liquid is gone.
  sweep::falling(0.7, 12.0, left);
  sweep::without_jump(0.7, 12.0, 0.1, left);
}

TEST_CASE("mass and fat of thick liquids add up") {
  const Consistency any;
  const ThickLiquids<double> thick{{{&any, 0.2, 0.3, 5.0, 0.0}, {&any, 0.05, 0.1, 2.0, 0.0}}, 0.0};
  CHECK_THAT(thick_mass(thick), WithinAbs(7.0, 1e-14));
  CHECK_THAT(thick_fat(thick), WithinAbs(1.1, 1e-14));
}

TEST_CASE("fat that a thick liquid brought along is not counted as free oil") {
  // 5 kg of a cream of 20 % fat alone: its own K, whatever oil would do to it.
  const auto cream = power_law(0.7, 1.0);
  const LiquidPool<double> pool{3.5, 1.0, 0.5, 0.0, 0.0};
  const ThickLiquids<double> thick{{{&cream, 0.2, 0.3, 5.0, 0.0}}, 5.0};
  CHECK_THAT(liquid_viscosity(pool, thick, 293.15), WithinRel(0.7, 1e-6));
  // 5 kg of water to it: halfway in the logarithm. 1.0016 mPa s (IAPWS R12-08, 20 degC).
  const LiquidPool<double> thinned{8.5, 1.0, 0.5, 0.0, 0.0};
  CHECK_THAT(liquid_viscosity(thinned, thick, 293.15), WithinRel(std::sqrt(0.7 * 1.0016e-3), 2e-3));
}
