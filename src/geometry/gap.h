#pragma once
// The signed gap between two solids, with witness points.
#include "geometry/solid.h"

#include <span>

namespace baywright::geometry {

/// What a measurement says of touching. `undecided`: the gap is within `touch_mm` of zero, or could not be told from
/// it.
enum class Relation { apart, overlapping, undecided };

/// What the figure is, when it is not exact to `Gap::error`.
enum class Bound {
  exact,     // |true gap - mm| <= error
  at_least,  // the true gap is mm - error or more: what an overlap of non-convex solids gives, since the way out that
             // was found is sure, but a shorter one may exist
  surface,  // one of the two is a mesh without an inside: mm is the distance of its surface, and whether the other lies
            // within it cannot be told. Only where their boxes meet; else the answer is as for any solid
};

struct Gap {
  Relation relation = Relation::undecided;
  double mm = 0.0;     // > 0 apart: the distance. < 0 overlapping: minus the shortest way out
  double error = 0.0;  // mm, >= 0: certified half width of what is known
  Bound bound = Bound::exact;
  Vec3 on_a{
      0.0};  // world. Apart: the closest points. Overlapping: on_b - on_a = direction * mm (so it points backward),
  Vec3 on_b{0.0};       // both on the boundary of their piece
  Vec3 direction{0.0};  // unit, from a toward b: moving b along it opens the gap (or shortens the overlap)
  int piece_a = 0;      // which pieces of the two solids decided
  int piece_b = 0;
};

/// Never throws, never loops without end; touching, nearly parallel, contained and coincident solids are ordinary
/// input. Convex pairs are exact apart and overlapping. With a ring, a non-convex prism or a mesh the distance is exact
/// where solids are apart, unless `bound` says otherwise; the overlap is a sure way out. A mesh that holds the other
/// whole, or is held by it, overlaps it. For a mesh the `piece` is the triangle.
[[nodiscard]] Gap gap(const Placed& a, const Placed& b);

/// The same for one piece of each.
[[nodiscard]] Gap gap(const Piece& a, const Pose& pose_a, const Piece& b, const Pose& pose_b);

/// How far b is from a along the unit direction `n` only: least of b minus most of a, mm. Negative where their shadows
/// on `n` overlap. Always a lower bound of the gap. A ring counts as its outer disc.
[[nodiscard]] double separation(const Piece& a, const Pose& pose_a, const Piece& b, const Pose& pose_b, const Vec3& n);

}  // namespace baywright::geometry
