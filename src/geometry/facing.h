#pragma once
// Where two convex pieces face each other: the points at which a small motion could bring them closest.
#include "geometry/solid.h"

#include <vector>

namespace baywright::geometry {

/// One line along the direction: where it leaves a and where it enters b.
struct Facing {
  Vec3 on_a;
  Vec3 on_b;
  double gap = 0.0;  // (on_b - on_a) along the direction, mm; negative in an overlap
};

/// Looks along the unit `direction` from a to b. Takes of each the boundary that lies within `band` mm (>= 0) of its
/// extreme along the direction, casts both as shadows on the plane square to it, and returns the corners of what the
/// two shadows share: between parallel faces the corners of the common area, and for tilted or edge contacts the ends
/// of the common line or the point. Where either boundary is a roof over the common area, also the ends of its ridges
/// there and the points at which ridges of the two cross. Every motion field that is linear in the position has its extremes over the contact
/// there. Shadows that come within `touch_mm` of each other meet. Empty where they do not. A rim is taken at 32
/// directions, at its extremes, and where it leaves the band, all exact; between two directions its shadow is short of
/// the true one by at most 0.0049 of the radius. A ring counts as its outer disc.
[[nodiscard]] std::vector<Facing> facing(const Piece& a, const Pose& pose_a, const Piece& b, const Pose& pose_b,
                                         const Vec3& direction, double band);

}  // namespace baywright::geometry
