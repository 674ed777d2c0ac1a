#include <cmath>

#include "kettlecast/transfer/contact.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;

namespace {
constexpr double very_long = 1e9;  // [s]
}

TEST_CASE("scraped wall by penetration theory") {
  check_relative(penetration_coefficient(0.6, 1000.0, 4180.0, contact_time(0.5, 2.0, very_long)),
                 published(1786.976435, "W/(m2 K)",
                           "Kool, Latinen: 2 sqrt(k rho cp N n / pi), two methods agree"),
                 1e-4);
  check_relative(penetration_coefficient(0.17, 890.0, 2100.0, contact_time(0.6667, 2.0, very_long)),
                 published(734.4536544, "W/(m2 K)",
                           "Kool, Latinen: 2 sqrt(k rho cp N n / pi), two methods agree"),
                 1e-4);
}

TEST_CASE("penetration coefficient is the mean of the flux into a semi-infinite body") {
  // q(t) = k dT / sqrt(pi a t); mean over 0..t by the midpoint rule in sqrt(t), which is exact.
  const double k = 0.5, rho = 1050.0, cp = 3600.0, end = 7.0;
  const double diffusivity = k / (rho * cp);
  const int n = 1000;
  double sum = 0.0;
  for (int i = 0; i < n; ++i) {
    const double root = (i + 0.5) * std::sqrt(end) / n;
    sum +=
        k / std::sqrt(constants::pi * diffusivity * root * root) * 2.0 * root * std::sqrt(end) / n;
  }
  CHECK_THAT(penetration_coefficient(k, rho, cp, end),
             Catch::Matchers::WithinRel(sum / end, 1e-10));
}

TEST_CASE("contact time falls with speed from its longest value") {
  CHECK(contact_time(0.0, 2.0, 60.0) == 60.0);
  CHECK_THAT(contact_time(1.0, 2.0, 60.0), Catch::Matchers::WithinRel(0.5, 1e-4));
  sweep::falling(1e-4, 2.0, [](double speed) { return contact_time(speed, 2.0, 60.0); });
  CHECK_THAT(sweep::slope(0.0, 1e-6, [](double speed) { return contact_time(speed, 2.0, 60.0); }),
             Catch::Matchers::WithinAbs(0.0, 1e-6));
}

TEST_CASE("two resistances in series") {
  CHECK_THAT(contact_coefficient(200.0, 300.0), Catch::Matchers::WithinRel(120.0, 1e-14));
  CHECK(contact_coefficient(200.0, 1e12) < 200.0);
  sweep::rising(1.0, 1e4, [](double film) { return contact_coefficient(500.0, film); });
}

TEST_CASE("turns until a heap is renewed") {
  // Fr = (2 pi N)^2 D / (2 g) of a vessel 0.8 m wide: 1 at 0.788 1/s, 1e-3 at 0.0249 1/s.
  const double unity = std::sqrt(2.0 * constants::gravity / 0.8) / (2.0 * constants::pi);
  const char source[] = "Schluender & Mollekopf (1984), N_mix = 9 Fr^0.05, from memory";
  check_relative(mixing_number(unity, 0.8), published(9.0, "-", source), 1e-9);
  check_relative(mixing_number(unity * std::sqrt(1e-3), 0.8), published(6.371512, "-", source),
                 1e-6);
  check_relative(mixing_number(unity * std::sqrt(0.1), 0.8), published(8.021258, "-", source),
                 1e-6);
  // The Froude number alone counts: a vessel four times as wide at half the speed is the same.
  CHECK_THAT(mixing_number(0.2, 3.2), Catch::Matchers::WithinRel(mixing_number(0.4, 0.8), 1e-12));
  // Measured numbers lie between 2 and 25.
  sweep::rising(0.02, 1.0, [](double speed) { return mixing_number(speed, 0.8); });
  CHECK(mixing_number(0.02, 0.8) > 2.0);
  CHECK(mixing_number(1.0, 0.8) < 25.0);
}

TEST_CASE("a heap rests until its turns are over, or for the longest time") {
  // At Fr = 1 a heap takes nine turns.
  const double unity = std::sqrt(2.0 * constants::gravity / 0.8) / (2.0 * constants::pi);
  CHECK_THAT(heap_contact_time(unity, 0.8, very_long),
             Catch::Matchers::WithinRel(9.0 / unity, 1e-9));
  CHECK(heap_contact_time(0.0, 0.8, 300.0) == 300.0);
  const auto at = [](double speed) { return heap_contact_time(speed, 0.8, 300.0); };
  CHECK_THAT(at(1e-9), Catch::Matchers::WithinRel(300.0, 1e-6));
  sweep::positive(0.0, 2.0, at);
  sweep::falling(0.0, 2.0, at);
  sweep::without_jump(0.0, 2.0, 0.1, at);
  // Many blades or few: a heap lies longer than a clean sweep of each blade would leave it.
  CHECK(at(0.5) > contact_time(0.5, 1.0, 300.0));
}
