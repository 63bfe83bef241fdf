#pragma once
// Two boxes, without the general machinery. Internal.
#include "geometry/body.h"
#include "geometry/gap.h"
#include "geometry/penetration.h"

#include <optional>

namespace baywright::geometry {

/// Boxes with parallel edges, the common case in a machine: one subtraction an axis. Nothing for any other pair. Points
/// are about the centre of a.
[[nodiscard]] std::optional<Gap> aligned_gap(const Pair& pair);

/// For two boxes, without the general machinery: the shortest way out if they overlap; if they do not, some direction
/// in which they are apart.
[[nodiscard]] WayOut way_out_of_boxes(const Pair& pair);

}  // namespace baywright::geometry
