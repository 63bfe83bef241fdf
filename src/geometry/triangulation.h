#pragma once
// A flat area with holes as triangles.
#include "geometry/solid.h"

#include <vector>

namespace baywright::geometry {

/// Triangles of an area with holes: three corners a triangle, counter-clockwise, only corners of the outlines, none
/// without area. Each side of an outline is a side of one triangle, or of as many as there are corners on it; each
/// other side of a triangle is one of two: so walls that stand on the outlines meet the area without a gap. Outlines in
/// either sense; repeated points are passed over, and those of which a figure is no number, beyond 1e100 or, but for
/// zero, below 1e-100. Outlines that are no areas give none; a hole outside the outline is left out. Where outlines
/// cross, the result covers about the area, and none of that holds. Never refuses, never hangs.
[[nodiscard]] std::vector<Vec2> triangles(const Outline& outline, const std::vector<Outline>& holes);

}  // namespace baywright::geometry
