#pragma once
// The shortest way out of an overlap of two convex bodies. Internal.
#include "geometry/body.h"

namespace baywright::geometry {

struct WayOut {
  double
      separation;  // mm, along the direction: the largest there is if the bodies overlap, else a lower bound of the gap
  Vec3 direction;  // unit, from a toward b
};

/// The best of all directions that can be the shortest way out. Bodies in the order disc, rectangle, polygon.
[[nodiscard]] WayOut way_out(const Pair& pair);

}  // namespace baywright::geometry
