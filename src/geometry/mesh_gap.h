#pragma once
// The signed gap where at least one of two solids is a mesh. Internal.
#include "geometry/gap.h"

namespace baywright::geometry {

[[nodiscard]] Gap mesh_gap(const Placed& a, const Placed& b);

}  // namespace baywright::geometry
