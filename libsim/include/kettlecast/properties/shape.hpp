#pragma once

/// Shapes of pieces and their geometry.
namespace kettlecast {

/// Shape of the pieces of an ingredient; `none` for liquids.
enum class Shape { none, slab, cylinder, sphere };

/// Directions in which heat comes in: 1 slab, 2 long cylinder, 3 sphere; 0 for liquids [-].
constexpr int dimensions(Shape shape) { return static_cast<int>(shape); }

/// Surface per volume of a piece [1/m].
///
///     A/V = 2 d / D,   d = 1 slab heated on both faces, 2 long cylinder, 3 sphere
///
/// Source: geometry.
/// Range:  D > 0.
///
/// @param shape  not `none`
/// @param size   thickness of a slab or diameter D [m]
template <class T>
T surface_per_volume(Shape shape, const T& size) {
  return 2.0 * dimensions(shape) / size;
}

}  // namespace kettlecast
