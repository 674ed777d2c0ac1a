#include "kettlecast/transfer/scraped.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;

TEST_CASE("scraped wall without losses is penetration theory") {
  const Fluid<double> watery{1000.0, 4180.0, 0.6, 0.0, 0.0};
  check_relative(scraped_coefficient(watery, 1.0 / (0.5 * 2.0), 1.0),
                 published(1786.976435, "W/(m2 K)",
                           "Kool, Latinen: 2 sqrt(k rho cp N n / pi), two methods agree"),
                 1e-9);
  const Fluid<double> oil{890.0, 2100.0, 0.17, 0.0, 0.0};
  check_relative(scraped_coefficient(oil, 1.0 / (0.6667 * 2.0), 1.0),
                 published(734.4536544, "W/(m2 K)",
                           "Kool, Latinen: 2 sqrt(k rho cp N n / pi), two methods agree"),
                 1e-9);
}

TEST_CASE("scraped wall loses by its efficiency and stays finite at rest") {
  const Fluid<double> paste{1100.0, 3500.0, 0.45, 10.0, 0.0};
  const auto film = [&](double speed) {
    return scraped_coefficient(paste, contact_time(speed, 2.0, 60.0), 0.5);
  };
  sweep::positive(0.0, 2.0, film);
  sweep::rising(0.0, 2.0, film);
  CHECK_THAT(film(1.0) / scraped_coefficient(paste, contact_time(1.0, 2.0, 60.0), 1.0),
             Catch::Matchers::WithinRel(0.5, 1e-14));
}
