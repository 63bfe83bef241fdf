#pragma once
// The nearest triangles of two meshes, and of a mesh and a piece. Internal.
#include "geometry/mesh_data.h"
#include "geometry/solid.h"

#include <limits>
#include <vector>

namespace baywright::geometry {

/// The nearest points found, in world coordinates.
struct SurfaceNear {
  double mm = std::numeric_limits<double>::infinity();  // 0 where triangles cross
  double error = 0.0;
  Vec3 on_a{0.0};
  Vec3 on_b{0.0};
  Vec3 normal{0.0};  // square to what the points lie on, either way round, any length; zero: none
  int a = 0;         // triangles
  int b = 0;
};

/// Nothing farther than `reach` mm is looked for.
[[nodiscard]] SurfaceNear nearest(const Placed& a, const Placed& b, double reach);

/// A pair of triangles, of the two meshes.
struct TrianglePair {
  int a;
  int b;
};

/// All pairs within `reach` mm, at most `most` of them.
[[nodiscard]] std::vector<TrianglePair> pairs_within(const Placed& a, const Placed& b, double reach, std::size_t most);

/// The distance of a point (mesh coordinates) from the surface, mm; infinite if it is more than `reach`.
[[nodiscard]] double distance(const Mesh::Data& mesh, const Vec3& p, double reach);

/// The most of the mesh along a direction (mesh coordinates, any length), times that length.
[[nodiscard]] double most_along(const TriangleTree& tree, const Vec3& d);

}  // namespace baywright::geometry
