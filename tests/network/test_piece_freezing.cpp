#include <cmath>

#include "kettlecast/base/constants.hpp"
#include "kettlecast/numerics/root.hpp"
#include "kettlecast/transfer/freezing_time.hpp"
#include "piece_run.hpp"
#include "published.hpp"

using namespace kettlecast;
using Catch::Matchers::WithinRel;

namespace {

constexpr Shape shapes[] = {Shape::slab, Shape::cylinder, Shape::sphere};
constexpr double zero = constants::ice_point;
constexpr double ends_at = zero - 10.0;  // centre of a frozen piece [K]

/// A piece, its film and the temperatures it comes from and goes to.
struct Trial {
  Shape shape;
  double size, film, from, surroundings;
};

/// A food of 77 % water, as the one that the published equations were fitted to.
PieceShells pieces(const Trial& trial) {
  Addition addition;
  addition.name = "block";
  addition.food.composition = {0.77, 0.0, 0.0, 0.23, 0.0, 0.0};
  addition.food.freezing_point = zero - 0.6;
  addition.shape = trial.shape;
  addition.piece_size = trial.size;
  return make_piece_shells(addition);
}

double time_until(const Trial& trial, double centre, Crossing crossing) {
  const auto shells = pieces(trial);
  PieceRun run(shells, trial.film, zero + trial.surroundings, zero + trial.from);
  return run.until([&] { return run.core() - centre; }, crossing, 1e6);
}

double freezing_time(const Trial& trial) { return time_until(trial, ends_at, Crossing::falling); }
double thawing_time(const Trial& trial) { return time_until(trial, zero, Crossing::rising); }

/// Heat per volume between two temperatures [J/m3].
double heat_between(const PieceShells& shells, double warm, double cold) {
  return shells.density *
         (shells.freezing.specific_enthalpy(warm) - shells.freezing.specific_enthalpy(cold));
}

double cleland_earle_time(const Trial& trial) {
  const auto shells = pieces(trial);
  const auto& food = shells.freezing;
  const double difference = food.freezing_point - zero - trial.surroundings;
  const double heat = heat_between(shells, food.freezing_point, ends_at);
  const double conductivity = shell_conductivity(shells, zero - 20.0);
  const double before = heat_between(shells, zero + trial.from, food.freezing_point);
  const PhaseChangeGroups<double> groups{
      before / heat, shells.density * food.frozen_specific_heat * difference / heat,
      trial.film * trial.size / conductivity};
  return phase_change_time<double>({trial.shape, trial.size, trial.film, conductivity},
                                   cleland_earle_factors(trial.shape, groups), heat, difference);
}

double pham_time(const Trial& trial) {
  const auto shells = pieces(trial);
  const auto& food = shells.freezing;
  // Latent heat of what is frozen at the end; the rest of the water stays liquid.
  const FreezingHeats<double> heats{shells.density * food.unfrozen_specific_heat,
                                    shells.density * food.frozen_specific_heat,
                                    shells.density * fusion_heat * food.ice_fraction(ends_at)};
  const PieceInFluid<double> piece{trial.shape, trial.size, trial.film,
                                   shell_conductivity(shells, zero - 20.0)};
  return pham_freezing_time(piece, heats, {zero + trial.from, ends_at, zero + trial.surroundings});
}

double published_thawing_time(const Trial& trial) {
  const auto shells = pieces(trial);
  const auto& food = shells.freezing;
  const double difference = zero + trial.surroundings - food.freezing_point;
  const double heat = heat_between(shells, zero, ends_at);
  const PhaseChangeGroups<double> groups{
      shells.density * food.frozen_specific_heat * (food.freezing_point - zero - trial.from) / heat,
      shells.density * food.unfrozen_specific_heat * difference / heat,
      trial.film * trial.size / shells.conductivity};
  return phase_change_time<double>({trial.shape, trial.size, trial.film, shells.conductivity},
                                   thawing_factors(trial.shape, groups), heat, difference);
}

}  // namespace

TEST_CASE("freezing by shells agrees with the equations of Cleland & Earle and of Pham") {
  for (Shape shape : shapes) {
    // Inside the range of both: D [m], h [W/(m2 K)], from and surroundings [degC].
    for (const Trial& trial :
         {Trial{shape, 0.05, 60.0, 5.0, -25.0}, Trial{shape, 0.10, 50.0, 25.0, -30.0},
          Trial{shape, 0.10, 25.0, 10.0, -30.0}, Trial{shape, 0.08, 30.0, 20.0, -25.0}}) {
      INFO("shape " << dimensions(shape) << " D " << trial.size << " h " << trial.film);
      const double time = freezing_time(trial);
      CHECK_THAT(time, WithinRel(cleland_earle_time(trial), 0.10));
      CHECK_THAT(time, WithinRel(pham_time(trial), 0.10));
    }
  }
}

TEST_CASE("thawing by shells agrees with the published equation") {
  for (Shape shape : shapes) {
    for (const Trial& trial :
         {Trial{shape, 0.05, 20.0, -20.0, 15.0}, Trial{shape, 0.05, 60.0, -25.0, 10.0}}) {
      INFO("shape " << dimensions(shape) << " h " << trial.film);
      CHECK_THAT(thawing_time(trial), WithinRel(published_thawing_time(trial), 0.10));
    }
  }
}

TEST_CASE("freezing by shells agrees with the heat equation solved on a fine grid") {
  // 80 cells, LSODA at 1e-6; enthalpy and conductivity of the same food.
  constexpr char source[] = "heat equation by the method of lines with SciPy, 80 cells";
  const auto check_frozen = [&](const Trial& trial, double expected) {
    check_relative(freezing_time(trial), published(expected, "s", source), 0.04);
  };
  check_frozen({Shape::slab, 0.05, 60.0, 5.0, -25.0}, 7768.0);
  check_frozen({Shape::slab, 0.10, 50.0, 25.0, -30.0}, 21605.0);
  check_frozen({Shape::cylinder, 0.05, 60.0, 5.0, -25.0}, 3855.0);
  check_frozen({Shape::cylinder, 0.10, 50.0, 25.0, -30.0}, 10783.0);
  check_frozen({Shape::sphere, 0.05, 60.0, 5.0, -25.0}, 2601.0);
  check_frozen({Shape::sphere, 0.10, 50.0, 25.0, -30.0}, 7294.0);
}

TEST_CASE("thawing by shells: the centre is early, the more the stronger the film") {
  constexpr char source[] = "heat equation by the method of lines with SciPy, 80 cells";
  const auto check_thawed = [&](const Trial& trial, double expected, double tolerance) {
    check_relative(thawing_time(trial), published(expected, "s", source), tolerance);
  };
  check_thawed({Shape::slab, 0.05, 20.0, -20.0, 15.0}, 29142.0, 0.05);
  check_thawed({Shape::slab, 0.10, 100.0, -30.0, 40.0}, 19213.0, 0.05);
  check_thawed({Shape::cylinder, 0.05, 20.0, -20.0, 15.0}, 14902.0, 0.05);
  check_thawed({Shape::cylinder, 0.10, 100.0, -30.0, 40.0}, 10278.0, 0.12);
  check_thawed({Shape::sphere, 0.05, 20.0, -20.0, 15.0}, 10108.0, 0.10);
  check_thawed({Shape::sphere, 0.10, 100.0, -30.0, 40.0}, 7126.0, 0.20);
}

TEST_CASE("a slab of water freezes through as Neumann's solution says") {
  // One phase, surface held: s = 2 x sqrt(a t), x e^(x^2) erf x = Ste / sqrt(pi); exact until the
  // fronts meet (Carslaw & Jaeger, 11.2). Six shells step the front: up to 6 % slow.
  for (double surface : {-5.0, -10.0, -30.0}) {
    Addition addition;
    addition.name = "ice";
    addition.food.composition = {1.0, 0.0, 0.0, 0.0, 0.0, 0.0};
    addition.shape = Shape::slab;
    addition.piece_size = 0.05;
    const auto shells = make_piece_shells(addition);
    PieceRun run(shells, 1e6, zero + surface, shells.freezing.freezing_point + 1e-3);
    const double time =
        run.until([&] { return run.temperatures()[0] - (zero - 0.1); }, Crossing::falling, 1e6);
    const double capacity = shells.freezing.frozen_specific_heat;
    const double diffusivity =
        shell_conductivity(shells, zero + surface) / (shells.density * capacity);
    const double stefan = -capacity * surface / fusion_heat;
    const double x = bracketed_root(1e-6, 3.0, [&](double z) {
      return z * std::exp(z * z) * std::erf(z) - stefan / std::sqrt(constants::pi);
    });
    const double half = 0.5 * addition.piece_size;
    INFO("surface " << surface);
    CHECK_THAT(time, WithinRel(half * half / (4.0 * x * x * diffusivity), 0.06));
  }
}
