#include "kettlecast/kettle/vessel.hpp"

#include "kettlecast/base/errors.hpp"

namespace kettlecast {
namespace {

/// Depth of a torispherical floor with crown radius D and knuckle radius D/10, per diameter.
/// Source: DIN 28011 (from memory). Such a floor holds a quarter more than part of a sphere of the
/// same depth.
constexpr double usual_dish = 0.1935;

/// Shallowest dish per diameter; the differences of its large sphere would lose digits below.
constexpr double least_dish = 0.02;

double depth_of_floor(const VesselShape& shape) {
  if (shape.floor == FloorShape::flat) return 0.0;
  if (shape.floor == FloorShape::hemispherical) return 0.5 * shape.diameter;
  return shape.floor_depth > 0.0 ? shape.floor_depth : usual_dish * shape.diameter;
}

}  // namespace

void check(const VesselShape& shape, const std::string& where) {
  require_between(where, "diameter", shape.diameter, 0.02, 5.0, "m");
  require_between(where, "wall_height", shape.wall_height, 0.0, 5.0, "m");
  require_between(where, "tilt", shape.tilt, 0.0, 1.05, "rad");
  const bool dished = shape.floor == FloorShape::dished;
  if (dished && shape.floor_depth != 0.0) {
    require_between(where, "floor_depth", shape.floor_depth, least_dish * shape.diameter,
                    0.5 * shape.diameter, "m");
  }
  if (!dished && shape.floor_depth != 0.0) {
    throw InvalidArgument(where + ": floor_depth is for a dished floor only; leave it 0 m");
  }
  if (!(capacity(shape) > 0.0)) {
    throw InvalidArgument(where + ": with this wall_height and tilt it holds no product");
  }
}

VesselSizes vessel_sizes(const VesselShape& shape) {
  VesselSizes v;
  v.radius = 0.5 * shape.diameter;
  v.depth = depth_of_floor(shape);
  v.sine = std::sin(shape.tilt);
  v.cosine = std::cos(shape.tilt);
  v.tangent = v.sine / v.cosine;
  v.floor_area = constants::pi * (v.radius * v.radius + v.depth * v.depth);
  const double reach = v.tangent * v.radius;
  if (v.depth > 0.0) {
    v.sphere = (v.radius * v.radius + v.depth * v.depth) / (2.0 * v.depth);
    v.floor_volume = cap_volume(v.depth, v.sphere);
    // Tilted further than the floor is steep at its rim, the vessel is lowest at that rim.
    const bool lowest_inside = v.sine * v.sphere < v.radius;
    const double height = v.sphere + (v.depth - reach - v.sphere) * v.cosine;
    v.low_volume = lowest_inside ? cap_volume(height, v.sphere) : 0.0;
  }
  v.full_volume = v.floor_volume + constants::pi * v.radius * v.radius * reach;
  return v;
}

double floor_total_area(const VesselShape& shape) { return vessel_sizes(shape).floor_area; }

double volume_at_level(const VesselShape& shape, double level) {
  return cut_at(vessel_sizes(shape), level).volume;
}

double capacity(const VesselShape& shape) {
  const double reach = 0.5 * shape.diameter * std::tan(shape.tilt);
  return volume_at_level(shape, depth_of_floor(shape) + shape.wall_height - reach);
}

double volume_to_cover(const VesselShape& shape, double height, double radius) {
  return volume_at_level(shape, height + radius * std::tan(shape.tilt));
}

}  // namespace kettlecast
