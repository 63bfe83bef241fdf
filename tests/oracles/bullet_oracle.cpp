// Our gap against Bullet (btGjkPairDetector with its expanding polytope, built in double precision) on the scenes of
// the exact oracle whose solids are convex. Bullet's answer is an iteration, and where it stops is nowhere promised, so
// it is no judge: each scene on which the two differ by more than `allowed` is put to exact arithmetic. Usage:
// bullet_oracle [SCENES]. Ends with 0 if exact arithmetic never sides with Bullet, and if the two mostly agree.
#include "exact_measure.h"
#include "exact_scenes.h"
#include "geometry/gap.h"
#include "support/bullet_place.h"

#include <BulletCollision/CollisionShapes/btConvexHullShape.h>
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>

namespace {

using namespace baywright::oracle;
using baywright::geometry::Gap;
using baywright::geometry::gap;
using baywright::geometry::Relation;

constexpr double allowed = 1e-6;

btConvexHullShape hull(const Body& body) {
  btConvexHullShape shape;
  for (const Vec3& c : body.corners) shape.addPoint({c.x, c.y, c.z}, false);
  shape.recalcLocalAabb();
  shape.setMargin(0.0);
  return shape;
}

struct Tally {
  int apart = 0;
  int overlapping = 0;
  int undecided = 0;
  int agreed = 0;
  int silent = 0;  // Bullet gave no distance
  int off = 0;     // Bullet was, by exact arithmetic
  int faults = 0;  // we were
  double worst_off = 0.0;
};

void compare(const Scene& scene, std::uint64_t number, Tally& tally) {
  const Gap ours = gap({scene.a.solid, scene.pose_a}, {scene.b.solid, scene.pose_b});
  ++(ours.relation == Relation::apart         ? tally.apart
     : ours.relation == Relation::overlapping ? tally.overlapping
                                              : tally.undecided);
  const auto shape_a = hull(scene.a);
  const auto shape_b = hull(scene.b);
  const auto theirs = baywright::test::bullet_gap(shape_a, baywright::test::bullet_place(scene.pose_a), shape_b,
                                                  baywright::test::bullet_place(scene.pose_b));
  if (!theirs) {
    ++tally.silent;
    return;
  }
  if (std::abs(*theirs - ours.mm) <= allowed) {
    ++tally.agreed;
    return;
  }
  const Truth truth = measure(scene.a, scene.pose_a, scene.b, scene.pose_b);
  const double exact = (truth.sign < 0 ? -1.0 : 1.0) * 0.5 * (truth.low + truth.high);
  const double wrong = std::abs(*theirs - exact);
  if (std::abs(ours.mm - exact) <= 1e-9) {
    ++tally.off;
    tally.worst_off = std::max(tally.worst_off, wrong);
    return;
  }
  ++tally.faults;
  std::printf("scene %llu: ours %.17g, Bullet's %.17g, exact %.17g\n%s", static_cast<unsigned long long>(number),
              ours.mm, *theirs, exact, code(scene).c_str());
}

}  // namespace

int main(int count, char** words) {
  const std::uint64_t scenes = count > 1 ? std::strtoull(words[1], nullptr, 10) : 20000;
  bool good = true;
  for (const Family& family : families()) {
    const auto convex = [](const std::vector<Shape>& shapes) {
      return std::all_of(shapes.begin(), shapes.end(),
                         [](Shape s) { return s == Shape::box || s == Shape::convex_prism; });
    };
    if (!convex(family.a) || !convex(family.b)) continue;
    Tally tally;
    for (std::uint64_t number = 0; number < scenes / 2; ++number) compare(any_scene(family, number), number, tally);
    std::printf(
        "%-16s apart %d, overlapping %d, undecided %d; agreed within %.1g mm on %d; Bullet off on %d, by %.2g mm "
        "at most; no answer on %d; faults of ours %d\n",
        family.name, tally.apart, tally.overlapping, tally.undecided, allowed, tally.agreed, tally.off, tally.worst_off,
        tally.silent, tally.faults);
    const auto half = static_cast<int>(scenes / 4);
    if (tally.agreed < half || tally.apart * 5 < half || tally.overlapping * 5 < half) {
      std::printf("too few agree, or too few of a kind\n");
      good = false;
    }
    good = good && tally.faults == 0;
  }
  return good ? EXIT_SUCCESS : EXIT_FAILURE;
}
