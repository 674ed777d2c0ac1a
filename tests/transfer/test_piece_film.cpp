#include "kettlecast/transfer/piece_film.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;

TEST_CASE("a sphere at rest loses heat by conduction alone") {
  check_relative(ranz_marshall_nusselt(0.0, 1.0),
                 published(2.0, "-", "conduction from a sphere into an infinite body"), 3e-4);
}

TEST_CASE("film of a sphere in a stream") {
  // 2 + 0.6 * 10 * 2 by hand.
  CHECK_THAT(ranz_marshall_nusselt(100.0, 8.0), Catch::Matchers::WithinRel(14.0, 1e-8));
  sweep::rising(0.0, 1e4, [](double re) { return ranz_marshall_nusselt(re, 5.0); });
  sweep::rising(0.6, 380.0, [](double pr) { return ranz_marshall_nusselt(100.0, pr); });
}
