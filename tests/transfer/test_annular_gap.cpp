#include "kettlecast/transfer/annular_gap.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;

TEST_CASE("developed laminar flow in annuli heated at the inner wall") {
  const char source[] =
      "Kays & Perkins, in Incropera table 8.2, outer wall insulated (from memory)";
  const auto developed = [](double ratio) { return laminar_gap_nusselt(100.0, 5.0, ratio, 0.0); };
  check_relative(developed(1.0), published(4.86, "-", source), 1e-3);
  check_relative(developed(0.5), published(5.74, "-", source), 5e-3);
  check_relative(developed(0.25), published(7.37, "-", source), 1.2e-2);
  check_relative(developed(0.1), published(11.56, "-", source), 4e-2);
}

TEST_CASE("turbulent flow in a narrow gap") {
  // One heated wall passes less than two: the equation of tubes is the first guess, good to 25 %.
  check_relative(turbulent_gap_nusselt(1e5, 5.0, 0.95, 0.0),
                 published(437.84, "-", "Dittus & Boelter, 0.023 Re^0.8 Pr^0.4, good to 25 %"),
                 0.25);
  check_relative(turbulent_gap_nusselt(2e4, 5.0, 0.95, 0.0),
                 published(120.82, "-", "Dittus & Boelter, 0.023 Re^0.8 Pr^0.4, good to 25 %"),
                 0.25);
}

TEST_CASE("gap passes from laminar to turbulent without a jump") {
  for (const double prandtl : {0.7, 5.0, 200.0}) {
    const auto nusselt = [&](double reynolds) {
      return gap_nusselt(reynolds, prandtl, 0.92, 0.05);
    };
    sweep::positive(0.0, 1e5, nusselt);
    sweep::rising(0.0, 1e5, nusselt);
    sweep::without_jump(1e3, 2e4, 0.03, nusselt);
  }
}

TEST_CASE("a narrower gap and a shorter path") {
  sweep::falling(0.1, 0.99, [](double ratio) { return gap_nusselt(500.0, 5.0, ratio, 0.05); });
  sweep::rising(0.0, 0.2, [](double length) { return gap_nusselt(500.0, 5.0, 0.9, length); });
  sweep::positive(0.1, 0.999, [](double ratio) { return gap_nusselt(2e4, 5.0, ratio, 0.05); });
}
