#include "kettlecast/network/piece_shells.hpp"

#include <algorithm>
#include <cmath>

#include "kettlecast/base/errors.hpp"
#include "kettlecast/properties/composition.hpp"

namespace kettlecast {
namespace {

/// Radius (or distance from the mid-plane) that encloses a share of the volume [m].
double enclosing(double radius, double share, int dimension) {
  return radius * std::pow(share, 1.0 / dimension);
}

/// Steady conduction between two radii, per conductivity and per full surface area [1/m].
double link(double inner, double outer, double radius, int dimension) {
  if (dimension == 1) return 1.0 / (outer - inner);
  if (dimension == 2) return 1.0 / (radius * std::log(outer / inner));
  return 1.0 / (radius * radius * (1.0 / inner - 1.0 / outer));
}

/// Mean of the squared radius over a shell, per radius of the piece squared [-].
double mean_square(double inner_share, double outer_share, int dimension) {
  const double power = 1.0 + 2.0 / dimension;
  return (std::pow(outer_share, power) - std::pow(inner_share, power)) /
         (power * (outer_share - inner_share));
}

/// Shells that a diffusion time asks for: steps of the temperature within 40 s do not matter.
std::size_t shells_by_size(double radius) {
  const double diffusion_time = radius * radius / 1.4e-7;
  const double wanted = std::round(std::sqrt(diffusion_time / 40.0));
  return static_cast<std::size_t>(std::clamp(wanted, 1.0, double{most_shells}));
}

/// Shells that a Biot number asks for.
std::size_t shells_by_biot(double biot) {
  constexpr double joins[] = {0.1, 0.3, 0.8, 2.0, 5.0};
  std::size_t count = 1;
  for (double join : joins) count += biot >= join ? 1 : 0;
  return count;
}

/// Material of the pieces, without their geometry.
PieceShells material_of(const Addition& addition) {
  if (addition.shape == Shape::none) {
    throw InvalidArgument("make_piece_shells: addition \"" + addition.name + "\" is a liquid");
  }
  constexpr double warm = 323.15;
  const auto& composition = addition.food.composition;
  PieceShells shells;
  shells.freezing = FreezingFood(addition.food);
  shells.density = density(composition, warm);
  shells.conductivity = conductivity(composition, warm);
  shells.water_share = composition.water;
  shells.size = addition.piece_size;
  shells.free_juice = addition.food.juice_fraction;
  shells.dry_specific_heat =
      (shells.freezing.unfrozen_specific_heat - piece_water_specific_heat * composition.water) /
      std::max(1.0 - composition.water, 1e-9);
  return shells;
}

/// Cuts the pieces into shells: links, way to the surface and to the centre.
void cut(PieceShells& shells, Shape shape, std::size_t count) {
  const int d = dimensions(shape);
  const double radius = 0.5 * shells.size;
  shells.count = count;
  shells.area = surface_per_volume(shape, shells.size) / shells.density;
  if (count == 1) {
    shells.surface_resistance = radius / (d + 2);
    shells.core_reach = 0.5 * d;
    return;
  }
  const auto share = [&](double i) { return i / static_cast<double>(count); };
  const auto middle = [&](std::size_t i) {
    return enclosing(radius, share(static_cast<double>(i) + 0.5), d);
  };
  for (std::size_t i = 0; i + 1 < count; ++i) {
    shells.links.push_back(shells.area * link(middle(i), middle(i + 1), radius, d));
  }
  shells.surface_resistance = 1.0 / link(middle(count - 1), radius, radius, d);
  const double core = mean_square(0.0, share(1.0), d);
  const double step = mean_square(share(1.0), share(2.0), d) - core;
  shells.core_reach = core / step;
  if (count > 2) shells.core_bend = step / (mean_square(share(2.0), share(3.0), d) - core - step);
}

}  // namespace

PieceShells make_piece_shells(const Addition& addition) {
  PieceShells shells = material_of(addition);
  cut(shells, addition.shape, shells_by_size(0.5 * addition.piece_size));
  return shells;
}

PieceShells make_piece_shells(const Addition& addition, double expected_film) {
  require_between("make_piece_shells", "expected_film", expected_film, 1e-3, 1e7, "W/(m2 K)");
  PieceShells shells = material_of(addition);
  const double radius = 0.5 * addition.piece_size;
  const double biot = expected_film * radius / shells.conductivity;
  cut(shells, addition.shape, std::min(shells_by_size(radius), shells_by_biot(biot)));
  return shells;
}

}  // namespace kettlecast
