#pragma once
// On which side of a plane a point lies, without rounding, and what follows for triangles. Internal to the room.
#include "geometry/triangle_tree.h"

namespace baywright::geometry {

/// +1: p lies on the side of the plane from which a, b, c run counter-clockwise. -1: on the other. 0: exactly on it.
/// Correct for every input whose products neither overflow nor underflow: coordinates up to `largest_mm`, and none but
/// zero below 1e-90 mm.
[[nodiscard]] int side_of(const Vec3& a, const Vec3& b, const Vec3& c, const Vec3& p);

/// Whether the segment from p to q passes through the inside of the triangle: not where it only touches it, its edges
/// or its corners.
[[nodiscard]] bool pierces(const Vec3& p, const Vec3& q, const Corners& triangle);

/// Whether an edge of either passes through the inside of the other, or both lie in one plane, look the same way and
/// share an area. Triangles that only touch, along an edge or face to face, do not cross.
[[nodiscard]] bool cross(const Corners& a, const Corners& b);

/// Whether the ray from p along +x meets the triangle. A ray through an edge or a corner is taken beside it, always to
/// the same side, so that it passes each closed surface an even number of times. On the triangle either answer.
[[nodiscard]] bool ray_meets(const Vec3& p, const Corners& triangle);

}  // namespace baywright::geometry
