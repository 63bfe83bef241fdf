#pragma once
// The signed gap where at least one of two pieces is a ring. Internal.
#include "geometry/gap.h"

namespace baywright::geometry {

/// As `gap` for two pieces, of which `ring` is a ring and `other` is any. Overlapping, the way out is sure but may not
/// be the shortest.
[[nodiscard]] Gap ring_gap(const Piece& ring, const Pose& pose_ring, const Piece& other, const Pose& pose_other);

}  // namespace baywright::geometry
