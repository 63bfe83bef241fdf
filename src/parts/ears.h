#pragma once
// Cutting a flat polygon in space into triangles.
#include "geometry/vectors.h"

#include <array>
#include <span>
#include <vector>

namespace baywright::parts {

/// Triangles (indices into `corners`, in its sense of rotation) that fill a polygon, convex or not; every corner is
/// used, corners on a line too, so that neighbours still meet edge to edge. One that crosses itself, or is not flat,
/// gives some triangles over its corners. `work` counts the steps and is added to: at most the cube of the corners.
[[nodiscard]] std::vector<std::array<int, 3>> cut_ears(std::span<const geometry::Vec3> corners, long& work);

}  // namespace baywright::parts
