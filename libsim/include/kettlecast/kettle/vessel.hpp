#pragma once

#include <cmath>
#include <string>

#include "kettlecast/base/record.hpp"
#include "kettlecast/kettle/vessel_cut.hpp"

/// Geometry of a kettle: from the volume of the product to its level and what it wets.
namespace kettlecast {

/// Floor under the straight wall: a plane, part of a sphere, or half a sphere.
enum class FloorShape { flat, dished, hemispherical };

/// A cylinder over a floor, upright or tilted about a horizontal axis.
struct VesselShape {
  FloorShape floor = FloorShape::flat;
  double diameter = 0.0;     ///< inner diameter of the straight wall [m]
  double wall_height = 0.0;  ///< of the straight wall, from the rim of the floor to the lip [m]
  double floor_depth = 0.0;  ///< of a dished floor on the axis; 0: 0.1935 of the diameter [m]
  double tilt = 0.0;         ///< of the axis from the vertical [rad]

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("floor", &VesselShape::floor);
    visit("diameter", &VesselShape::diameter);
    visit("wall_height", &VesselShape::wall_height);
    visit("floor_depth", &VesselShape::floor_depth);
    visit("tilt", &VesselShape::tilt);
  }
  bool operator==(const VesselShape& other) const { return equal_records(*this, other); }
};

/// What a volume of product wets.
template <class T>
struct Wetting {
  T level{};         ///< of the surface on the axis, from the centre of the floor; below 0: the
                     ///< vessel is tilted and the centre dry [m]
  T floor_area{};    ///< wetted [m2]
  T wall_area{};     ///< wetted, of the straight wall [m2]
  T surface_area{};  ///< free surface [m2]
  T wall_area_per_volume{};  ///< change of the wetted wall per change of volume [1/m]

  template <class Visitor>
  static void describe(Visitor&& visit) {
    visit("level", &Wetting::level);
    visit("floor_area", &Wetting::floor_area);
    visit("wall_area", &Wetting::wall_area);
    visit("surface_area", &Wetting::surface_area);
    visit("wall_area_per_volume", &Wetting::wall_area_per_volume);
  }
  bool operator==(const Wetting& other) const { return equal_records(*this, other); }
};

/// Mean depth of product below which part of what it could wet is bare [m]. Common practice, no
/// source: a puddle of thick product is about this deep.
inline constexpr double bare_depth = 1e-3;

/// Throws InvalidArgument, naming the key and the allowed range, if the vessel cannot exist.
/// @param where  what has this shape, for the message
void check(const VesselShape& shape, const std::string& where = "VesselShape");

/// Sizes that the formulas want, from a shape that passed `check`.
VesselSizes vessel_sizes(const VesselShape& shape);

/// Area of the whole floor [m2]: pi R^2 flat, pi (R^2 + d^2) for part of a sphere.
double floor_total_area(const VesselShape& shape);

/// Volume that a kettle holds until the low side of its lip spills [m3].
double capacity(const VesselShape& shape);

/// Volume of product whose surface meets the axis at a level above the centre of the floor [m3].
double volume_at_level(const VesselShape& shape, double level);

/// Volume that covers a disc on the axis, for example an agitator [m3].
///
/// @param shape   of the vessel
/// @param height  of the disc above the centre of the floor, along the axis [m]
/// @param radius  of the disc; matters only in a tilted vessel [m]
double volume_to_cover(const VesselShape& shape, double height, double radius);

/// Level on the axis of a volume of product [m], the inverse of cut_at.
///
/// Source: closed forms of vessel_cut.hpp; where the surface crosses the rim of the floor, Newton's
///         method on V^(2/5), in which the tip of a hoof is nearly straight. Range: volume > 0;
///         error below 1e-7 of the diameter.
template <class T>
T level_of(const VesselSizes& v, const T& volume) {
  using std::pow;
  if (volume >= v.full_volume) {
    return v.depth + (volume - v.floor_volume) / (constants::pi * v.radius * v.radius);
  }
  if (volume <= v.low_volume) {
    return v.sphere + (cap_height(volume, v.sphere) - v.sphere) / v.cosine;
  }
  const bool tip = !(v.low_volume > 0.0);
  const double reach = v.tangent * v.radius;
  const double lowest = tip ? -0.9999 * reach : -reach;
  const T rise = (volume - v.low_volume) / (v.full_volume - v.low_volume);
  T above_rim = reach * (2.0 * pow(rise, tip ? 0.4 : 0.7) - 1.0);
  constexpr int most_steps = 6;
  for (int i = 0; i < most_steps; ++i) {
    const Cut<T> cut = cut_through_rim(v, above_rim);
    const T step = cut.volume * (1.0 - pow(volume / cut.volume, 0.4)) / (0.4 * cut.volume_rate);
    above_rim -= step;
    if (above_rim > reach) above_rim = T(reach);
    if (above_rim < lowest) above_rim = T(lowest);
    if (step < 1e-8 * reach && step > -1e-8 * reach) break;
  }
  return v.depth + above_rim;
}

/// What a volume of product wets.
///
/// Areas are those of the level surface, times 1 - (1 - u)^3 while u = V / (A_floor bare_depth) is
/// below 1: a film breaks up, so that no area jumps when the first drop is poured.
///
/// Source: vessel_cut.hpp; breaking film: common practice, no source.
/// Range:  any volume; above the capacity the wall is thought to go on, below 1e-9 R^3 the level
///         stays that of 1e-9 R^3.
///
/// @param v       from vessel_sizes
/// @param volume  of the product [m3]
template <class T>
Wetting<T> wetting(const VesselSizes& v, const T& volume) {
  const T poured = volume > 0.0 ? volume : T(0.0);
  const double least = 1e-9 * v.radius * v.radius * v.radius;
  const T level = level_of(v, poured > least ? poured : T(least));
  const Cut<T> cut = cut_at(v, level);
  const T filled = poured / (cut.floor_area * bare_depth);
  const T rate = cut.wall_rate / cut.volume_rate;
  if (!(filled < 1.0)) return {level, cut.floor_area, cut.wall_area, cut.surface_area, rate};
  const T bare = 1.0 - filled;
  const T share = filled * (3.0 + filled * (filled - 3.0));
  const T share_rate = 3.0 * bare * bare / (cut.floor_area * bare_depth) *
                       (1.0 - poured * cut.floor_rate / (cut.floor_area * cut.volume_rate));
  return {level, share * cut.floor_area, share * cut.wall_area, share * cut.surface_area,
          share * rate + cut.wall_area * share_rate};
}

/// The same from a shape, for single calls.
inline Wetting<double> wetting(const VesselShape& shape, double volume) {
  return wetting(vessel_sizes(shape), volume);
}

}  // namespace kettlecast
