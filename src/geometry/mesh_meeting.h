#pragma once
// How a mesh and another solid meet: apart, touching or surely overlapping. Internal.
#include "geometry/gap.h"

#include <vector>

namespace baywright::geometry {

struct Meeting {
  /// Apart or touching: the distance of the surfaces, where and between what. Not whether one holds the other.
  Gap surfaces;
  bool overlapping = false;  // surely, by more than `touch_mm`
  /// Triangles and pieces (or triangles) that cross by more than `touch_mm`, each with its gap, the deepest first;
  /// not all of them.
  std::vector<Gap> crossing;
  /// A point within both, when `within`; `depth` mm from the surface of either.
  bool within = false;
  Vec3 point{0.0};
  double depth = 0.0;
};

/// `a` is a mesh, `b` anything. `first`: the first sure sign of an overlap is enough.
[[nodiscard]] Meeting meeting(const Placed& a, const Placed& b, bool first);

}  // namespace baywright::geometry
