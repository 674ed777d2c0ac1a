#include "kettlecast/network/piece_shells.hpp"

#include <algorithm>
#include <cmath>

#include "kettlecast/base/errors.hpp"
#include "kettlecast/properties/composition.hpp"

namespace kettlecast {
namespace {

/// Dimension of the heat flow: 1 slab, 2 cylinder, 3 sphere.
int dimension(Shape shape) { return shape == Shape::slab ? 1 : shape == Shape::cylinder ? 2 : 3; }

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

}  // namespace

PieceShells make_piece_shells(const Addition& addition) {
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
  const int d = dimension(addition.shape);
  const double radius = 0.5 * addition.piece_size;
  shells.area = d / (radius * shells.density);
  const double diffusion_time = radius * radius / 1.4e-7;
  const double wanted = std::round(std::sqrt(diffusion_time / 40.0));
  shells.count = static_cast<std::size_t>(std::clamp(wanted, 1.0, double{most_shells}));
  if (shells.count == 1) {
    shells.surface_resistance = radius / (d + 2);
    return shells;
  }
  const auto middle = [&](std::size_t i) {
    const double share = (static_cast<double>(i) + 0.5) / static_cast<double>(shells.count);
    return enclosing(radius, share, d);
  };
  for (std::size_t i = 0; i + 1 < shells.count; ++i) {
    shells.links.push_back(shells.area * link(middle(i), middle(i + 1), radius, d));
  }
  shells.surface_resistance = 1.0 / link(middle(shells.count - 1), radius, radius, d);
  return shells;
}

}  // namespace kettlecast
