#pragma once
// How a gap between two elements gets its limits: every dimension moves solids by a small affine motion; the
// sensitivity of a gap at a point is the contact normal times the relative motion of that point. Limits are taken over
// every corner of the area in which the two face each other, and the least counts.
#include "fit/scene.h"
#include "geometry/gap.h"
#include "tolerance/stack.h"

#include <limits>
#include <utility>
#include <vector>

namespace baywright::fit {

struct GapLimits {
  double nominal = 0.0;  // mm, along `direction`
  double min = 0.0;      // -infinity where an open side leaves it open
  double max = 0.0;
  double error = 0.0;  // mm: how well the nominal gap itself is known
  geometry::Vec3 on_a{0.0};
  geometry::Vec3 on_b{0.0};
  geometry::Vec3 direction{0.0};              // from a to b
  std::vector<std::pair<int, double>> terms;  // dimension and sensitivity at the deciding point
  double nominal_there = 0.0;  // mm: the nominal gap at that point; differs from `nominal` where a part stands tilted
  bool surface =
      false;  // one is a mesh without an inside, whose box the other meets: it may lie within; see geometry::Bound
};

/// Limits of the gap between two elements of a scene. Solids of several convex pieces: over every pair of pieces, the
/// one with the least minimum decides; so the figure of an overlap is the deepest piece's. Where solids pass each other
/// diagonally, the direction with the largest sure minimum is taken: its nominal figure is then a lower bound of the
/// distance. The search for a better direction ends once a minimum of `enough` mm is sure. Of a mesh every triangle is
/// a piece while the two are apart; an overlap is measured along the way out that geometry::gap finds.
[[nodiscard]] GapLimits limits(const Scene& scene, const Element& a, const Element& b, tolerance::Method method,
                               double enough = std::numeric_limits<double>::infinity());

}  // namespace baywright::fit
