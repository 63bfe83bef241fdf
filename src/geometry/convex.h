#pragma once
// The signed gap of two convex bodies, with both of its bounds. Internal.
#include "geometry/body.h"
#include "geometry/gap.h"

namespace baywright::geometry {

/// As `gap` for two pieces; a ring counts as its outer disc.
[[nodiscard]] Gap convex_gap(const Piece& a, const Pose& pose_a, const Piece& b, const Pose& pose_b);

/// The same for bodies that were made ready before: `a` and `b` of the pair in the order of `in_order`.
[[nodiscard]] Gap convex_gap(const Pair& pair);

/// Whether the routines take the two in this order: discs before polygons, and beyond that any fixed order, so that the
/// answer does not depend on which of the two was asked about first.
[[nodiscard]] bool in_order(const Piece& a, const Pose& pose_a, const Piece& b, const Pose& pose_b);

/// The gap from b to a, given that from a to b.
[[nodiscard]] Gap swapped(Gap gap);

/// apart, overlapping or undecided, from mm, error and bound.
[[nodiscard]] Relation relation(double mm, double error, Bound bound);

}  // namespace baywright::geometry
