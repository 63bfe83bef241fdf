#pragma once
// The directional gap: how far solids can move along a direction before they touch.
#include <span>

#include "geometry/solid.h"

namespace baywright::geometry {

struct Travel {
  bool meets = false;  // false: they never touch on that line, in either sense; the rest is then zero
  double mm = 0.0;     // >= 0: free way before the first touch. < 0: how far they must back off until nothing overlaps
  double error = 0.0;  // mm, certified half width
  Vec3 on_moving{0.0};  // where they first touch, in world coordinates: on the moving solid before it moves, ...
  Vec3 on_fixed{0.0};   // ... and on the fixed one
};

/// `direction` is a unit vector. The moving solids come along the line from far behind: `mm` is where they first touch,
/// counted from where they stand now. So a solid in a pocket of a non-convex one must back out of the whole pocket.
/// Solids that only graze (slide along a face) do not meet. Empty lists never meet.
[[nodiscard]] Travel travel(std::span<const Placed> moving, std::span<const Placed> fixed, const Vec3& direction);

}  // namespace baywright::geometry
