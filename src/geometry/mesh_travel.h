#pragma once
// The first touch of two solids along a line, at least one of them a mesh. Internal.
#include "geometry/travel.h"

namespace baywright::geometry {

/// As `travel` for one solid of each. Betters `first`, which is infinite while nothing was met.
void mesh_travel(const Placed& moving, const Placed& fixed, const Vec3& direction, Travel& first);

}  // namespace baywright::geometry
