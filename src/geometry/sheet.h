#pragma once
// Triangles of a mesh as pieces without thickness, and which of them are near.
#include "geometry/solid.h"

#include <array>
#include <vector>

namespace baywright::geometry {

/// A polygon piece of height 0 where it stands in the world: local z is the outward normal.
struct Sheet {
  Piece piece;
  Pose pose;
};

/// One triangle of a placed mesh, by its index in `Mesh::triangles()`. Gaps, facing and separation take it like any
/// piece: apart the distance, through a piece a negative gap.
[[nodiscard]] Sheet sheet(const Placed& mesh, int triangle);

/// A triangle by its corners (world, counter-clockwise seen from outside), which must span an area.
[[nodiscard]] Sheet sheet(const std::array<Vec3, 3>& corners);

/// Indices, rising, of the triangles that come within `reach` mm of the world box `asked`; under a turned pose a few
/// more that come near. Replaces what `found` held. Nothing for a solid that is no mesh.
void triangles_near(const Placed& mesh, const Bounds& asked, double reach, std::vector<int>& found);

}  // namespace baywright::geometry
