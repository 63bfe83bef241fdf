#pragma once
// A mesh put together from flat faces.
#include "geometry/mesh.h"
#include "geometry/solid.h"

#include <vector>

namespace baywright::geometry {

class FlatFaces {
 public:
  using Loop = std::vector<Vec3>;  // mm, closed, its corners in one plane

  /// The outline counter-clockwise seen from outside, holes in either sense. Faces side by side need the same corners
  /// along the line where they meet: a corner of one alone on the other's side leaves a gap. A loop without area adds
  /// nothing.
  void add(const Loop& outline, const std::vector<Loop>& holes = {});

  /// What was added. `Mesh::closed` says whether it has an inside. Refused as `Mesh::make` does.
  [[nodiscard]] std::variant<Mesh, Refusal> mesh() const;

 private:
  std::vector<Vec3> corners_;  // three a triangle
};

}  // namespace baywright::geometry
