#pragma once
// The distance of two triangles. Internal.
#include "geometry/triangle_tree.h"

namespace baywright::geometry {

/// The nearest points of two triangles. Good to a few roundings of the largest coordinate, parallel edges and slivers
/// included.
struct TrianglesNear {
  double square = 0.0;  // of the distance; 0 where they cross
  Vec3 on_a{0.0};
  Vec3 on_b{0.0};
  Vec3 normal{0.0};  // of the face, or square to the two edges, that the points lie on, either way round; zero where
                     // one of them is a corner against an edge or corner
};

[[nodiscard]] TrianglesNear nearest(const Corners& a, const Corners& b);

[[nodiscard]] Vec3 nearest_on(const Corners& triangle, const Vec3& p);

}  // namespace baywright::geometry
