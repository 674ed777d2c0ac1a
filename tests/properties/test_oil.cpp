#include <cmath>
#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include "kettlecast/properties/oil.hpp"
#include "published.hpp"
#include "sweep.hpp"

using namespace kettlecast;

namespace {

constexpr double celsius(double t) { return t + 273.15; }

std::vector<std::string> cells_of(const std::string& line) {
  std::vector<std::string> cells(1);
  bool quoted = false;
  for (char c : line) {
    if (c == '"')
      quoted = !quoted;
    else if (c == ',' && !quoted)
      cells.emplace_back();
    else
      cells.back() += c;
  }
  return cells;
}

/// Measured over computed viscosity of the common cooking oils in the shared table, less one.
std::vector<double> deviations(std::istream& table) {
  const std::set<std::string> common = {"Rapeseed",  "Canola", "Soybean", "Corn", "Cottonseed",
                                        "Sunflower", "Peanut", "Olive",   "Palm"};
  std::string line;
  std::getline(table, line);
  const std::vector<std::string> head = cells_of(line);
  std::vector<double> result;
  while (std::getline(table, line)) {
    const std::vector<std::string> cells = cells_of(line);
    const std::string name = cells[0].substr(0, cells[0].find_last_not_of(' ') + 1);
    if (common.count(name) == 0) continue;
    for (std::size_t i = 2; i + 1 < cells.size() && i + 1 < head.size(); ++i) {
      if (cells[i].empty()) continue;
      const double t = celsius(std::stod(head[i]));
      const double measured = std::stod(cells[i]) * 1e-6 * oil::density(t);
      result.push_back(measured / oil::viscosity(t) - 1.0);
    }
  }
  return result;
}

}  // namespace

TEST_CASE("viscosity of cooking oil agrees with collected measurements") {
  const auto path = std::filesystem::path(__FILE__).parent_path() /
                    "../../../shared/data/oil_viscosity/centistoke.csv";
  std::ifstream table(path);
  if (!table) {
    WARN("skipped: the shared table of oil viscosities is not there");
    return;
  }
  const std::vector<double> found = deviations(table);
  REQUIRE(found.size() > 100);
  double squares = 0.0;
  double largest = 0.0;
  double near = 0.0;
  for (double deviation : found) {
    squares += deviation * deviation;
    largest = std::fmax(largest, std::fabs(deviation));
    if (std::fabs(deviation) < 0.2) near += 1.0;
  }
  // The errors stated in the docstring.
  CHECK(std::sqrt(squares / static_cast<double>(found.size())) < 0.14);
  CHECK(largest < 0.451);
  CHECK(near / static_cast<double>(found.size()) > 0.88);
}

TEST_CASE("density and viscosity of soybean oil") {
  check_relative(oil::density(celsius(25.0)),
                 published(917.0, "kg/m3", "typical refined soybean oil (from memory)"), 0.015);
  check_relative(oil::density(celsius(40.0)),
                 published(907.0, "kg/m3", "typical refined soybean oil (from memory)"), 0.015);
  check_relative(oil::density(celsius(100.0)),
                 published(867.0, "kg/m3", "typical refined soybean oil (from memory)"), 0.015);
  check_relative(oil::density(celsius(150.0)),
                 published(834.0, "kg/m3", "typical refined soybean oil (from memory)"), 0.015);
  check_relative(oil::viscosity(celsius(25.0)) * 1e3,
                 published(50.0, "mPa s", "typical refined soybean oil (from memory)"), 0.2);
  check_relative(oil::viscosity(celsius(40.0)) * 1e3,
                 published(29.0, "mPa s", "typical refined soybean oil (from memory)"), 0.2);
  check_relative(oil::viscosity(celsius(100.0)) * 1e3,
                 published(7.4, "mPa s", "typical refined soybean oil (from memory)"), 0.2);
  check_relative(oil::viscosity(celsius(150.0)) * 1e3,
                 published(3.6, "mPa s", "typical refined soybean oil (from memory)"), 0.2);
}

TEST_CASE("viscosity of the mean oil lies inside the published spread") {
  constexpr Published thinnest = published(
      0.0296, "Pa s", "Diamante & Lan, J. Food Processing (2014) 234583, walnut oil, 38 degC");
  constexpr Published thickest = published(
      0.0398, "Pa s", "Diamante & Lan, J. Food Processing (2014) 234583, rice bran oil, 38 degC");
  CHECK(oil::viscosity(celsius(38.0)) > thinnest.value);
  CHECK(oil::viscosity(celsius(38.0)) < thickest.value);
  constexpr Published cold =
      published(192.6, "mPa s", "Stanciu, Grasas y Aceites, 13 oils, highest at 278.15 K");
  CHECK(oil::viscosity(278.15) * 1e3 < cold.value);
  // Apparent activation energy between 38 and 90 degC.
  const double energy = 8.314462618 *
                        std::log(oil::viscosity(celsius(38.0)) / oil::viscosity(celsius(90.0))) /
                        (1.0 / celsius(38.0) - 1.0 / celsius(90.0));
  constexpr Published low =
      published(21.0, "kJ/mol", "Diamante & Lan, J. Food Processing (2014) 234583");
  constexpr Published high =
      published(30.0, "kJ/mol", "Diamante & Lan, J. Food Processing (2014) 234583");
  CHECK(energy / 1e3 > low.value);
  CHECK(energy / 1e3 < high.value);
}

TEST_CASE("viscosity of one oil from one measurement") {
  check_absolute(oil::arrhenius_viscosity(1.0, celsius(38.0), 21e3, celsius(90.0)),
                 published(0.3127539697, "-", "Arrhenius, E = 21 kJ/mol, computed by hand"), 1e-3);
  CHECK(oil::arrhenius_viscosity(0.04, 311.0, 25e3, 311.0) == 0.04);
  sweep::falling(celsius(5.0), celsius(120.0),
                 [](double t) { return oil::arrhenius_viscosity(0.04, 311.15, 25e3, t); });
  // From the value at 40 to that at 100 degC, read in mm2/s to one digit there.
  const auto seen = [](double kinematic, double t) { return kinematic * 1e-6 * oil::density(t); };
  const double at_40 = seen(37.0, celsius(40.0));
  check_relative(oil::viscosity_like(at_40, celsius(40.0), celsius(100.0)),
                 published(seen(8.0, celsius(100.0)), "Pa s", "Ryan et al. (1983), peanut oil"),
                 0.1);
  check_relative(oil::viscosity_like(at_40, celsius(40.0), celsius(20.0)),
                 published(seen(82.0, celsius(20.0)), "Pa s", "Ryan et al. (1983), peanut oil"),
                 0.1);
}

TEST_CASE("specific heat of vegetable oil") {
  check_relative(oil::specific_heat(celsius(40.0)) / 1e3,
                 published(2.03, "kJ/(kg K)", "typical refined soybean oil (from memory)"), 0.1);
  check_relative(oil::specific_heat(celsius(100.0)) / 1e3,
                 published(2.25, "kJ/(kg K)", "typical refined soybean oil (from memory)"), 0.1);
  check_relative(oil::specific_heat(celsius(180.0)) / 1e3,
                 published(2.55, "kJ/(kg K)", "typical refined soybean oil (from memory)"), 0.1);
  check_relative(oil::specific_heat(celsius(20.0)) / 1e3,
                 published(2.01, "kJ/(kg K)", "Geankoplis, Table A.4-1, olive oil"), 0.1);
}

TEST_CASE("conductivity of oil is that of the fat component") {
  check_relative(oil::conductivity(celsius(20.0)),
                 published(0.175118204, "W/(m K)", "Choi & Okos (1986), fat"), 1e-4);
  check_relative(oil::conductivity(celsius(100.0)),
                 published(0.1513311, "W/(m K)", "Choi & Okos (1986), fat"), 1e-4);
}

TEST_CASE("enthalpy and expansivity of oil follow from specific heat and density") {
  CHECK(oil::specific_enthalpy(273.15) == 0.0);
  for (double t = 280.0; t < 470.0; t += 10.0) {
    CHECK_THAT(sweep::slope(t, 0.1, oil::specific_enthalpy<double>),
               Catch::Matchers::WithinRel(oil::specific_heat(t), 1e-8));
    CHECK_THAT(-sweep::slope(t, 0.1, oil::density<double>) / oil::density(t),
               Catch::Matchers::WithinRel(oil::expansivity(t), 1e-8));
  }
}

TEST_CASE("properties of oil bend the right way over 5 to 200 degC") {
  const double cold = celsius(5.0);
  const double hot = celsius(200.0);
  sweep::positive(cold, hot, oil::viscosity<double>);
  sweep::positive(cold, hot, oil::conductivity<double>);
  sweep::positive(cold, hot, oil::density<double>);
  sweep::falling(cold, hot, oil::viscosity<double>);
  sweep::falling(cold, hot, oil::conductivity<double>);
  sweep::falling(cold, hot, oil::density<double>);
  sweep::rising(cold, hot, oil::specific_heat<double>);
  sweep::rising(cold, hot, oil::specific_enthalpy<double>);
  sweep::rising(cold, hot, oil::expansivity<double>);
}
