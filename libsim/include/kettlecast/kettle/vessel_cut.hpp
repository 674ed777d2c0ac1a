#pragma once

#include <cmath>

#include "kettlecast/base/constants.hpp"

/// What a level surface cuts off a tilted cylinder over a flat floor or a floor that is part of a
/// sphere. Lengths along the axis count from the centre of the floor.
///
/// With t = tan of the tilt the surface meets the floor side of the wall at d + h + t x, x across
/// the axis towards the low side, h = level - d, d depth of the floor.
namespace kettlecast {

/// Sizes of a vessel as the formulas want them; made once per vessel by `vessel_sizes`.
struct VesselSizes {
  double radius = 0.0;                             ///< of the straight wall, R [m]
  double depth = 0.0;                              ///< of the floor on the axis, d; 0: flat [m]
  double sphere = 0.0;                             ///< radius of the floor rho; 0: flat [m]
  double sine = 0.0, cosine = 1.0, tangent = 0.0;  ///< of the tilt [-]
  double floor_area = 0.0;                         ///< of the whole floor [m2]
  double floor_volume = 0.0;                       ///< below the rim of the floor, upright [m3]
  double low_volume = 0.0;   ///< up to which the surface stays below the rim of the floor [m3]
  double full_volume = 0.0;  ///< from which the floor is covered [m3]
};

/// Product below a level surface, and what changes when the level rises.
template <class T>
struct Cut {
  T volume;        ///< [m3]
  T floor_area;    ///< wetted [m2]
  T wall_area;     ///< wetted, of the straight wall [m2]
  T surface_area;  ///< free surface [m2]
  T volume_rate;   ///< change per level: the free surface seen along the axis [m2]
  T floor_rate;    ///< of the wetted floor per level [m]
  T wall_rate;     ///< of the wetted wall per level [m]
};

/// Volume of a spherical cap of a height, cut from a sphere of a radius [m3].
///
///     V = pi h^2 (3 rho - h) / 3
///
/// Source: Harris & Stocker, Handbook of Mathematics and Computational Science (1998),
/// section 4.8.4 Range:  0 <= h <= 2 rho.
template <class T>
T cap_volume(const T& height, double sphere) {
  return constants::pi / 3.0 * height * height * (3.0 * sphere - height);
}

/// Height of a spherical cap of a volume [m], the inverse of cap_volume up to a hemisphere.
///
///     h = 4 rho sin(k) sin(k + pi/3),   k = asin(sqrt(q)/2) / 3,   q = 3 V / (pi rho^3)
///
/// Source: trigonometric root of the cubic of cap_volume (Viete), half angles against cancellation.
/// Range:  0 <= q <= 2.
template <class T>
T cap_height(const T& volume, double sphere) {
  using std::asin;
  using std::sin;
  using std::sqrt;
  const T q = volume * (3.0 / (constants::pi * sphere * sphere * sphere));
  const T angle = asin(0.5 * sqrt(q)) / 3.0;
  return 4.0 * sphere * sin(angle) * sin(angle + constants::pi / 3.0);
}

/// The surface lies above the rim of the floor all round: levels are those of the axis.
template <class T>
Cut<T> cut_through_wall(const VesselSizes& v, const T& above_rim) {
  const double disc = constants::pi * v.radius * v.radius;
  const double girth = 2.0 * constants::pi * v.radius;
  return {v.floor_volume + disc * above_rim,
          T(v.floor_area),
          girth * above_rim,
          T(disc / v.cosine),
          T(disc),
          T(0.0),
          T(girth)};
}

/// The surface lies below the rim of the floor all round: a cap of its sphere, however tilted.
template <class T>
Cut<T> cut_through_floor(const VesselSizes& v, const T& level) {
  const T height = v.sphere + (level - v.sphere) * v.cosine;
  const bool wet = v.sphere > 0.0 && v.low_volume > 0.0 && height > 0.0;
  if (!wet) return {T(0.0), T(0.0), T(0.0), T(0.0), T(0.0), T(0.0), T(0.0)};
  const T disc = constants::pi * height * (2.0 * v.sphere - height);
  const double rate = 2.0 * constants::pi * v.sphere;
  return {cap_volume(height, v.sphere), rate * height, T(0.0), disc, disc * v.cosine,
          T(rate * v.cosine),           T(0.0)};
}

/// The surface crosses the rim of the floor: a hoof of the cylinder, and below it the part of the
/// ball that lies under the rim and under the surface.
///
///     hoof:  V = h S_1 + 2/3 t y^3,   A_wall = 2 R (h phi_1 + t y)
///     ball:  A = 2 rho^2 (alpha + (phi_1 p_1 + phi_2 p_2)/rho),   V = (rho A + p_1 S_1 + p_2
///     S_2)/3
///
/// y is half the chord that both planes share, phi_i half the angle of the wet arc on circle i,
/// S_i the segment it bounds, p_i the distance of plane i from the middle of the sphere and alpha
/// the angle in which the circles meet.
///
/// Source: hoof: Harris & Stocker (1998), section 4.6.3 (segment of a cylinder); area: Gauss-Bonnet
///         theorem; volume: divergence theorem; both exact.
/// Range:  |h| <= t R.
template <class T>
Cut<T> cut_through_rim(const VesselSizes& v, const T& above_rim) {
  using std::atan2;
  using std::sqrt;
  const double R = v.radius, t = v.tangent, rho = v.sphere;
  const T x = -above_rim / t;
  const T square = (R - x) * (R + x);
  const T y = sqrt(square > 0.0 ? square : T(1e-30 * R * R));
  const T angle = atan2(y, x);
  const T segment = R * R * angle - x * y;
  Cut<T> cut{above_rim * segment + 2.0 / 3.0 * t * y * y * y,
             segment,
             2.0 * R * (above_rim * angle + t * y),
             segment / v.cosine,
             segment,
             2.0 * y / t,
             2.0 * R * angle};
  if (v.depth == 0.0) return cut;
  const double p_rim = v.depth - rho;
  const T from_middle = above_rim + p_rim;
  const T p = from_middle * v.cosine;
  const T s = from_middle * v.sine - above_rim / v.sine;
  const T arc = atan2(y, T(-s));
  const T disc = (rho - p) * (rho + p) * arc + s * y;
  const T corner = atan2(T(rho * v.sine * y), T(p_rim * p - rho * rho * v.cosine));
  cut.floor_area = 2.0 * rho * (rho * corner + p_rim * angle + p * arc);
  cut.volume += (rho * cut.floor_area + p_rim * segment + p * disc) / 3.0;
  cut.surface_area += disc;
  cut.volume_rate += disc * v.cosine;
  cut.floor_rate = 2.0 * rho * v.cosine * arc;
  return cut;
}

/// Product below a surface that meets the axis at a level [m]; walls go on above the lip.
template <class T>
Cut<T> cut_at(const VesselSizes& v, const T& level) {
  const T above_rim = level - v.depth;
  const double reach = v.tangent * v.radius;
  if (above_rim >= reach) return cut_through_wall(v, above_rim);
  return above_rim <= -reach ? cut_through_floor(v, level) : cut_through_rim(v, above_rim);
}

}  // namespace kettlecast
