#pragma once
// Solids on the move: how near a moving one comes to one that stays, all along a rigid motion.
#include "geometry/solid.h"

#include <limits>

namespace baywright::geometry {

/// A rigid motion over t from 0 to 1, in world coordinates: turned about a line by an angle that grows with t, then
/// shifted along a straight line.
struct Movement {
  Vec3 shift{0.0};           // mm, at t = 1
  Vec3 pivot{0.0};           // a point of the line, where it is at t = 0
  Vec3 axis{0.0, 0.0, 1.0};  // unit, along the line; right-handed
  double degrees = 0.0;      // at t = 1, 0..180 in size

  /// Takes points from where they are at t = 0 to where they are at t.
  [[nodiscard]] Pose at(double t) const;
};

/// The box that holds the solid at every t.
[[nodiscard]] Bounds swept(const Bounds& box, const Movement& movement);

struct Closest {
  double mm = 0.0;   // the least gap on the way (negative: an overlap), or the cutoff
  double t = 0.0;    // where it was met
  bool met = false;  // whether anything below the cutoff was
  bool sure = true;  // false: the search was given up, and something nearer may have been missed
};

/// The least signed gap of the moving solid to the fixed one over all of the motion, found by conservative advancement
/// (B. Mirtich, "Impulse-based Dynamic Simulation of Rigid Body Systems", PhD thesis, Berkeley 1996, section 2.3): from
/// a gap and a bound on how fast it can shrink follows how far one may step. No t is left out, so no wall is thin
/// enough to be stepped over. Only gaps below `cutoff` mm are looked for. The figure is at most `fine_mm` (and 2 % of
/// an overlap's depth) above the true least one. Solids of several pieces: the least over the pairs of pieces. A mesh
/// without an inside is taken as its surface; where a mesh overlaps, the figure is only sure to be no less deep than
/// said.
///
/// Once a gap below `deep` mm is met the search ends: that one is then returned, not the least; and what is not that
/// deep is told to a quarter of it only.
[[nodiscard]] Closest closest(const Placed& moving, const Placed& fixed, const Movement& movement, double cutoff,
                              double deep = -std::numeric_limits<double>::infinity());

/// Whether the gap stays at `least` mm or above (by 1e-6) on all of the motion. False also where that could not be made
/// sure.
[[nodiscard]] bool stays_clear(const Placed& moving, const Placed& fixed, const Movement& movement, double least);

/// The box about a solid, its edges along the solid's own axes: what is clear of it is clear of the solid, and it is
/// quicker to follow.
[[nodiscard]] Placed box_about(const Placed& placed);

/// How finely `closest` tells the least gap.
inline constexpr double fine_mm = 0.01;

}  // namespace baywright::geometry
