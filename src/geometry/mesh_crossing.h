#pragma once
// Whether a surface runs through itself. Internal.
#include "geometry/mesh_data.h"

namespace baywright::geometry {

struct SelfCrossing {
  int count = 0;    // pairs of triangles
  Vec3 where{0.0};  // one of them
};

/// Looks at all pairs of triangles whose boxes meet. Too many to look at (see `most_pairs` there): counts as one more
/// crossing, since a surface of which nothing is known has no inside.
[[nodiscard]] SelfCrossing self_crossing(const Mesh::Data& data);

}  // namespace baywright::geometry
