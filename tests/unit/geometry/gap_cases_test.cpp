// Gaps that are known by construction: the distance or overlap is written into the coordinates, mostly with Pythagorean
// triples (3-4-5, 2-3-6-7). Each case is asked again in every way that must not change the answer.
#include "gap_scenes.h"
#include "support/check_mm.h"

#include <doctest/doctest.h>

namespace baywright::geometry {
namespace {

using namespace scenes;
using test::check_mm;

constexpr double allowed = 1e-9;  // mm, the promise of the design for coordinates up to 1000 mm

void check_one(const Placed& a, const Placed& b, double want) {
  const Gap found = gap(a, b);
  check_mm(found.mm, want, allowed);
  CHECK(found.error <= allowed);
  CHECK(found.relation == (want > 0.0 ? Relation::apart : Relation::overlapping));
  check_mm(glm::length(found.direction), 1.0, 1e-12);
  if (want > 0.0) check_mm(found.on_b - found.on_a, found.direction * want, 1e-8);
  const Gap back = gap(b, a);
  check_mm(back.mm, found.mm, 1e-12);
}

/// As it is, swapped (in check_one), turned by right angles, turned at random, mirrored, 1000 mm away.
void check_everywhere(const Placed& a, const Placed& b, double want) {
  check_one(a, b, want);
  for (const Vec3& axis : {Vec3{1, 0, 0}, Vec3{0, 1, 0}, Vec3{0, 0, 1}}) {
    const Pose quarter{rotation(axis, 90.0), Vec3{0.0}};
    check_one(moved(a, quarter), moved(b, quarter), want);
  }
  Random random(20240611);
  for (int i = 0; i < 4; ++i) {
    const Pose motion = any_pose(random, 200.0);
    check_one(moved(a, motion), moved(b, motion), want);
  }
  const Pose away{Mat3{1.0}, Vec3{1000.0, -1000.0, 1000.0}};
  check_one(moved(a, away), moved(b, away), want);
  check_one(mirrored(a), mirrored(b), want);
}

const Mat3 along_x = rotation({0, 1, 0}, 90.0);  // local z to world x

TEST_CASE("gap: boxes face to face, edge to edge, corner to corner") {
  // Two boxes of 22 x 80 x 3.5 and 100 x 70 x 15, centres 9.25 + 0.6 apart.
  check_everywhere(centred(box(22, 80, 3.5), {0, 0, 0}), centred(box(100, 70, 15), {0, 0, 9.85}), 0.6);
  check_everywhere(centred(box(10, 10, 10), {0, 0, 0}), centred(box(10, 10, 10), {13, 14, 2}), 5.0);
  check_everywhere(centred(box(10, 10, 10), {0, 0, 0}), centred(box(10, 10, 10), {12, 13, 16}), 7.0);
}

TEST_CASE("gap: a cube on its corner, on its edge, edge across edge") {
  const Placed plate{box(60, 60, 5), put({30, 30, 5}, {0, 0, 0})};  // top face in z = 0
  // A unit cube stands on a corner when a space diagonal is vertical: its centre is half of sqrt(3) up.
  const Vec3 axis = glm::normalize(Vec3{1, -1, 0});
  const Mat3 on_corner = rotation(axis, std::acos(1.0 / std::sqrt(3.0)) * 180.0 / std::numbers::pi);
  check_everywhere(plate, centred(box(1, 1, 1), {3, 4, 2.0}, on_corner), 2.0 - std::sqrt(3.0) / 2.0);
  check_everywhere(plate, centred(box(1, 1, 1), {3, 4, 2.0}, rotation({0, 1, 0}, 45.0)), 2.0 - std::sqrt(2.0) / 2.0);
  // Two bars of 2 x 2, each on edge, one along x and one along y: half diagonals sqrt(2).
  const Placed lower = centred(box(40, 2, 2), {0, 0, 0}, rotation({1, 0, 0}, 45.0));
  const Placed upper = centred(box(2, 40, 2), {1, 2, 5}, rotation({0, 1, 0}, 45.0));
  check_everywhere(lower, upper, 5.0 - 2.0 * std::sqrt(2.0));
  check_everywhere(lower, shifted(upper, {0, 0, -3}), 2.0 - 2.0 * std::sqrt(2.0));
}

TEST_CASE("gap: the shortest way out of nested, crossing and identical solids") {
  check_everywhere(centred(box(10, 12, 14), {0, 0, 0}), centred(box(2, 2, 2), {0, 0, 0}), -6.0);    // 5 + 1
  check_everywhere(centred(box(10, 12, 14), {0, 0, 0}), centred(box(2, 2, 2), {1.5, 0, 6}), -2.0);  // 7 + 1 - 6
  check_everywhere(centred(box(10, 20, 30), {0, 0, 0}), centred(box(10, 20, 30), {0, 0, 0}), -10.0);
  check_everywhere(centred(cylinder(10, 4), {0, 0, 0}), centred(cylinder(10, 4), {0, 0, 0}), -4.0);
  check_everywhere(centred(cylinder(10, 40), {0, 0, 0}), centred(cylinder(10, 40), {0, 0, 0}), -10.0);
  check_everywhere(centred(cylinder(10, 40), {0, 0, 0}), centred(box(6, 6, 50), {0, 0, 0}), -8.0);  // 5 + 3, by a face
  check_everywhere(centred(cylinder(6, 40), {0, 0, 0}), centred(cylinder(8, 40), {0, 1, 0}, along_x),
                   -6.0);  // 3 + 4 - 1
}

TEST_CASE("gap: cylinders side by side, crossed, askew, stacked askew") {
  const Placed pole = centred(cylinder(6, 100), {0, 0, 0});
  check_everywhere(pole, centred(cylinder(8, 100), {12, 5, 20}), 6.0);         // 13 - 3 - 4
  check_everywhere(pole, centred(cylinder(8, 100), {0, 9, 0}, along_x), 2.0);  // 9 - 3 - 4
  check_everywhere(pole, centred(cylinder(8, 100), {0, 9, 0}, rotation({0, 1, 0}, 30.0)), 2.0);
  check_everywhere(pole, centred(cylinder(8, 100), {0, 5, 0}, rotation({0, 1, 0}, 30.0)), -2.0);
  // Rims one above the other: 3 aside and 4 up.
  check_everywhere(centred(cylinder(6, 10), {0, 0, 0}), centred(cylinder(8, 10), {10, 0, 14}), 5.0);
  // Coaxial, end to end.
  check_everywhere(centred(cylinder(6, 10), {0, 0, 0}), centred(cylinder(8, 10), {0, 0, 10.25}), 0.25);
}

TEST_CASE("gap: a cylinder on a plate, leaning, and beside an edge") {
  const Placed plate{box(80, 80, 5), put({40, 40, 5}, {0, 0, 0})};  // top face in z = 0
  check_everywhere(plate, Placed{cylinder(10, 20), put({0, 0, 0}, {3, 4, 0.25})}, 0.25);
  check_everywhere(plate, centred(cylinder(10, 20), {3, 4, 5.75}, along_x), 0.75);
  // Leaning by t: the lowest point of the rim is r sin t + h/2 cos t below the centre (support of a disc).
  for (const double degrees : {0.001, 1.0, 30.0, 89.0}) {
    const double t = degrees * std::numbers::pi / 180.0;
    const double below = 5.0 * std::sin(t) + 10.0 * std::cos(t);
    check_everywhere(plate, centred(cylinder(10, 20), {3, 4, 12.0}, rotation({0, 1, 0}, degrees)), 12.0 - below);
    check_everywhere(plate, centred(cylinder(10, 20), {3, 4, below - 0.5}, rotation({0, 1, 0}, degrees)), -0.5);
  }
  // The upper rim of a cylinder of radius 5, and an edge along y that passes 3 outside of it and 4 above.
  const Placed post{cylinder(10, 20), put({0, 0, 20}, {0, 0, 0})};
  check_everywhere(post, Placed{box(6, 40, 6), put({0, 20, 0}, {8, 0, 4})}, 5.0);
  // The corner of a box 12-5-13 from the axis.
  check_everywhere(post, Placed{box(6, 6, 60), put({0, 0, 50}, {12, 5, 0})}, 8.0);
}

TEST_CASE("gap: tubes and washers") {
  const Placed washer{tube(20, 10, 3), put({0, 0, 0}, {0, 0, 0})};
  check_everywhere(washer, centred(cylinder(8, 40), {0.3, 0, 0}), 0.7);   // 5 - 4 - 0.3
  check_everywhere(washer, centred(cylinder(8, 2), {0, 0.3, 1.5}), 0.7);  // within the thickness
  check_everywhere(washer, centred(box(6, 4, 50), {0, 0, 1}), 5.0 - std::sqrt(13.0));
  check_everywhere(washer, centred(box(60, 6, 4), {0, 0, 1.5}, rotation({0, 1, 0}, 90.0)), 5.0 - std::sqrt(13.0));
  check_everywhere(washer, Placed{box(80, 80, 2), put({40, 40, 2}, {0, 0, -0.5})}, 0.5);
  // A disc of radius 2 over the bore: 3 aside, 4 up.
  check_everywhere(washer, Placed{cylinder(4, 5), put({0, 0, 0}, {0, 0, 7})}, 5.0);
  // One tube in another, and one around another: radii 10 and 6.
  check_everywhere(Placed{tube(30, 20, 5), {}}, centred(tube(12, 6, 9), {0, 1, 2}), 3.0);
  // Beside each other.
  check_everywhere(washer, centred(tube(10, 4, 3), {16, 0, 1.5}), 1.0);
}

/// The least value of a function with one valley between `low` and `high`, by thirds.
template <typename F>
double valley(double low, double high, const F& f) {
  for (int i = 0; i < 90; ++i) {
    const double p = low + (high - low) / 3.0;
    const double q = high - (high - low) / 3.0;
    (f(p) < f(q) ? high : low) = f(p) < f(q) ? q : p;
  }
  return f(0.5 * (low + high));
}

TEST_CASE("gap: a rod that leans in a bore") {
  // The distance from a point to a box is a clamp in the box's own axes; the bore's wall is walked by angle and height.
  const Placed washer{tube(20, 10, 3), {}};
  for (const double degrees : {1e-6, 0.01, 1.0, 5.0, 15.0}) {
    const Placed rod = centred(box(2, 3, 60), {0.7, 0.4, 1.5}, rotation({0.6, 0.8, 0}, degrees));
    const Pose back = rod.pose.inverse();
    const auto off = [&](double angle, double z) {
      const Vec3 p = back.point({5.0 * std::cos(angle), 5.0 * std::sin(angle), z});
      return glm::length(p - glm::clamp(p, Vec3{0.0}, Vec3{2, 3, 60}));
    };
    const auto at_angle = [&](double angle) { return valley(0.0, 3.0, [&](double z) { return off(angle, z); }); };
    double want = 1e9;
    const int steps = 360;
    for (int i = 0; i < steps; ++i) {
      const double step = 2.0 * std::numbers::pi / steps;
      if (at_angle(i * step) > want + 0.2) continue;
      want = std::min(want, valley((i - 1) * step, (i + 1) * step, at_angle));
    }
    check_everywhere(washer, rod, want);
  }
}

TEST_CASE("gap: a tube that is hit gives a way out that frees it") {
  const Placed washer{tube(20, 10, 3), {}};
  // A pin of radius 4 that is 1.4 off centre in a bore of radius 5: back by 0.4.
  check_everywhere(washer, centred(cylinder(8, 40), {1.4, 0, 0}), -0.4);
  check_everywhere(washer, centred(box(60, 60, 2), {0, 0, 3.5}), -0.5);
  const Placed wide = centred(cylinder(12, 40), {0, 0, 0});
  const Gap blocked = gap(washer, wide);  // too wide for the bore: sideways by 10 + 6
  CHECK(blocked.relation == Relation::overlapping);
  check_mm(blocked.mm, -16.0, allowed);
  CHECK(gap(washer, shifted(wide, blocked.direction * (1e-6 - blocked.mm))).mm >= 0.0);
}

TEST_CASE("gap: prisms that are not convex") {
  const Solid corner = prism({{0, 0}, {30, 0}, {30, 10}, {10, 10}, {10, 30}, {0, 30}}, {}, 8);
  const Placed angle{corner, {}};
  check_everywhere(angle, centred(cylinder(8, 30), {16, 15, 4}), 1.0);   // 15 - 10 - 4 down, 16 - 10 - 4 aside
  check_everywhere(angle, centred(cylinder(8, 30), {16, 12, 4}), -2.0);  // up by 10 + 4 - 12
  const Solid plate = prism({{-20, -20}, {20, -20}, {20, 20}, {-20, 20}}, {{{-6, -6}, {6, -6}, {6, 6}, {-6, 6}}}, 2);
  check_everywhere(Placed{plate, {}}, centred(cylinder(10, 30), {0.4, 0, 0}), 0.6);   // 6 - 5 - 0.4
  check_everywhere(Placed{plate, {}}, centred(cylinder(10, 30), {1.4, 0, 0}), -0.4);  // back by 0.4
  // A block that fills a channel of width 10 with 0.1 too much at each side: up, out of the channel of depth 15.
  const Solid channel = prism({{0, 0}, {30, 0}, {30, 20}, {20, 20}, {20, 5}, {10, 5}, {10, 20}, {0, 20}}, {}, 40);
  const Placed block{box(10.2, 10, 10), put({0, 0, 0}, {9.9, 6, 10})};
  const Gap stuck = gap(Placed{channel, {}}, block);
  CHECK(stuck.relation == Relation::overlapping);
  check_mm(stuck.mm, -14.0, allowed);  // 20 - 6
  check_mm(stuck.direction, Vec3{0, 1, 0}, 1e-12);
  CHECK(stuck.bound == Bound::at_least);
}

}  // namespace
}  // namespace baywright::geometry
