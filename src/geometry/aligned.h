#pragma once
// Two boxes whose edges are parallel: the common case in a machine, and one subtraction an axis. Internal.
#include "geometry/body.h"
#include "geometry/gap.h"

#include <optional>

namespace baywright::geometry {

/// Nothing unless both are boxes with parallel edges. Points are about the centre of a.
[[nodiscard]] std::optional<Gap> aligned_gap(const Pair& pair);

}  // namespace baywright::geometry
