// What public issue trackers record of other distance libraries, as scenes of our own whose answers are plain
// arithmetic. Each case names the thread (owner/repository#number) that describes the failure; scenes, sizes and values
// are ours.
#include "gap_scenes.h"
#include "geometry/limits.h"
#include "support/check_mm.h"

#include <algorithm>
#include <array>
#include <doctest/doctest.h>

namespace baywright::geometry {
namespace {

using namespace scenes;
using test::check_mm;

constexpr double allowed = 1e-9;

Gap check_gap(const Placed& a, const Placed& b, double want) {
  CAPTURE(want);
  const Gap found = gap(a, b);
  check_mm(found.mm, want, allowed);
  CHECK(found.bound == Bound::exact);
  check_mm(glm::length(found.direction), 1.0, 1e-12);
  if (want > 2.5 * touch_mm) CHECK(found.relation == Relation::apart);
  if (want < -2.5 * touch_mm) CHECK(found.relation == Relation::overlapping);
  if (std::abs(want) < 0.5 * touch_mm) CHECK(found.relation == Relation::undecided);
  return found;
}

/// The rotation of the quaternion (1, 2, 2, 4) / 5.
const Mat3 tilted{Vec3{-0.6, 0.64, 0.48}, Vec3{0.0, -0.6, 0.8}, Vec3{0.8, 0.48, 0.36}};

const std::array around_zero{0.0,  1e-16, -1e-16, 1e-13, -1e-13, 1e-11, -1e-11, 1e-10, -1e-10,
                             4e-9, -4e-9, 1e-8,   -1e-8, 1e-7,   -1e-7, 1e-6,   -1e-6};

// flexible-collision-library/fcl#493, #495, RobotLocomotion/drake#21673: cubes with one rotation that touch up to
// rounding; the overlap test says they meet, the depth search that they do not, and the query throws.
TEST_CASE("known failures: cubes of one rotation that kiss") {
  for (const Vec3& beside : {Vec3{0, 0, 0}, Vec3{0, 3.25, -1.5}, Vec3{0, 8, 0}, Vec3{0, 8, 8}}) {
    for (const double mm : around_zero) {
      const Placed a{box(8, 8, 8), {tilted, {2.5, -1.0, 4.0}}};
      const Placed b = shifted(a, tilted * (beside + Vec3{8.0 + mm, 0, 0}));
      // Beside by a whole side: edge on edge or corner on corner, which no overlap along x alone can make.
      const bool edges_only = beside.y == 8.0;
      if (edges_only && mm <= 0.0) continue;
      check_gap(a, b, mm);
    }
  }
}

// flexible-collision-library/fcl#445: boxes whose facing faces are parallel to 1e-8.
TEST_CASE("known failures: faces that are nearly parallel") {
  const Placed table{box(60, 60, 10), {tilted, {0, 0, 0}}};
  for (const double degrees : {1e-13, 1e-10, 1e-8, 6e-7, 1e-5, 1e-3, 0.1}) {
    for (const double mm : around_zero) {
      CAPTURE(degrees);
      // On its edge along y, the rest of it higher: what decides is that edge.
      const Placed box_on_it{box(20, 30, 5),
                             {tilted * rotation({0, 1, 0}, -degrees), tilted * Vec3{10, 15, 10.0 + mm}}};
      check_gap(table, box_on_it, mm);
    }
  }
}

// flexible-collision-library/fcl#508: right along x, wrong along y and z (3.16 for 3).
TEST_CASE("known failures: cubes side by side along each axis") {
  const Placed cube{box(1, 1, 1), {}};
  for (const double mm : {1e-6, 0.5, 0.99, 1.01, 3.0, 500.0}) {
    check_gap(cube, shifted(cube, {1.0 + mm, 0, 0}), mm);
    check_gap(cube, shifted(cube, {0, 1.0 + mm, 0}), mm);
    check_gap(cube, shifted(cube, {0, 0, 1.0 + mm}), mm);
    check_gap(cube, shifted(cube, {0, -1.0 - mm, 0}), mm);
    check_gap(cube, shifted(cube, {0, 0, -1.0 - mm}), mm);
  }
}

// flexible-collision-library/fcl#398, #415: a strip flush with a block, so that edges lie on one line and a new corner
// of the search adds no volume.
TEST_CASE("known failures: a thin strip flush with a block") {
  const Placed block{box(450, 270, 420), {}};
  for (const double mm : around_zero) {
    for (const double flush : {0.0, 5e-17, 1e-12}) {
      check_gap(block, {box(0.5, 270, 0.5), {Mat3{1.0}, {450.0 + mm, flush, 419.5 + flush}}}, mm);
      check_gap(block, {box(450, 0.5, 0.5), {Mat3{1.0}, {flush, 100, 420.0 + mm}}}, mm);
    }
  }
}

// flexible-collision-library/fcl#293: apart along a diagonal, where the search holds points on one line and divides
// nothing by nothing.
TEST_CASE("known failures: corners on one line") {
  const Placed cube{box(6, 6, 6), {}};
  for (const double mm : {1e-7, 0.01, 4.0, 900.0}) {
    check_gap(cube, shifted(cube, Vec3{6.0 + mm}), std::sqrt(3.0) * mm);
    check_gap(cube, shifted(cube, {0, 6.0 + mm, -6.0 - mm}), std::sqrt(2.0) * mm);
  }
}

// danfis/libccd#25: two cubes one above the other, sunk by a twentieth: "apart", with no numbers in the direction.
// danfis/libccd#68: boxes that touch, and a square root of less than nothing.
TEST_CASE("known failures: cubes that stand on each other") {
  const Placed cube = centred(box(6, 6, 6), {0, 0, 0});
  for (const double sunk : {0.3, 1e-3, 1e-6, 2.9, 0.0}) {
    const Gap found = check_gap(cube, shifted(cube, {0, 0, 6.0 - sunk}), -sunk);
    check_mm(found.direction.z, 1.0, 1e-12);
  }
}

// danfis/libccd#17: the place of the contact is off when one box is far larger than the other.
TEST_CASE("known failures: a small box sunk into a large one") {
  const Placed floor{box(5000, 5000, 5000), {}};
  const Vec3 corner{4321.0, 17.25, 5000.0 - 0.05};
  const Gap found = check_gap(floor, {box(0.2, 0.2, 0.2), {Mat3{1.0}, corner}}, -0.05);
  for (const Vec3& p : {found.on_a, found.on_b}) {
    CHECK(p.x >= corner.x - 1e-9);
    CHECK(p.x <= corner.x + 0.2 + 1e-9);
    CHECK(p.y >= corner.y - 1e-9);
    CHECK(p.y <= corner.y + 0.2 + 1e-9);
  }
  check_mm(found.on_a.z, 5000.0, 1e-9);
  check_mm(found.on_b.z, 5000.0 - 0.05, 1e-9);
}

// danfis/libccd#7: cylinders in a heap, and the depth search never ends.
TEST_CASE("known failures: cylinders in and on each other") {
  const Placed a{cylinder(10, 20), {}};
  check_gap(a, a, -10.0);                      // sideways, the diameter
  check_gap(a, shifted(a, {0, 0, 14}), -6.0);  // on the same axis: lift it
  check_gap(a, shifted(a, {7, 0, 0}), -3.0);   // side by side
  check_gap(a, shifted(a, {0, 0, 20}), 0.0);   // stacked
  check_gap(a, shifted(a, {10, 0, 0}), 0.0);   // along a line
  check_gap(a, shifted(a, {8, 6, 20}), 0.0);   // at one point of two rims
  check_gap(a, {cylinder(10, 20), put({0, 0, 10}, {0, 0, 10}, rotation({1, 0, 0}, 90.0))}, -10.0);  // crossed
}

// bulletphysics/bullet3#1703: a box on a wide flat floor, without margin: the depth has the wrong sign, which depends
// on how wide the floor is.
TEST_CASE("known failures: a box on a floor of any width") {
  for (const double wide : {1.0, 16.0, 128.0, 2048.0, 50000.0}) {
    const Placed floor = centred(box(wide, wide, 1), {0, 0, -0.5});
    for (const double mm : {-0.2, -1e-3, -1e-6, 1e-6, 1e-3, 0.2}) {
      CAPTURE(wide);
      const Gap found = check_gap(floor, centred(box(1, 1, 1), {0, 0, 0.5 + mm}), mm);
      check_mm(found.direction.z, 1.0, 1e-12);
    }
  }
}

// bulletphysics/bullet3#889, jrouwe/JoltPhysics#671: the nearer they are, the likelier the normal points the other way.
TEST_CASE("known failures: the direction while they come near") {
  const Outline hexagon{{5, 0}, {2.5, 4}, {-2.5, 4}, {-5, 0}, {-2.5, -4}, {2.5, -4}};
  Random random(671);
  for (int i = 0; i < 200; ++i) {
    const Pose motion = any_pose(random, 100.0);
    for (const double mm : {0.25, 0.1, 0.01, 1e-3, 1e-5, 1e-7, 5e-9}) {
      const Placed hull = moved(Placed{prism(hexagon, {}, 3), {}}, motion);
      const Placed over = moved({box(4, 4, 4), {rotation({0, 0, 1}, 7.0 * i), {0, 0, 3.0 + mm}}}, motion);
      check_gap(hull, over, mm);
      check_mm(glm::dot(gap(hull, over).direction, motion.direction({0, 0, 1})), 1.0, mm > 1e-6 ? 1e-9 : 1e-6);
    }
  }
}

// flexible-collision-library/fcl#366: at its limit of steps a search says "no intersection". Two round prisms of 720
// sides have hundreds of nearly equal candidates.
TEST_CASE("known failures: more sides than a search has steps") {
  constexpr int sides = 720;
  Outline outline;
  for (int i = 0; i < sides; ++i) {
    const double angle = (i + 0.5) * 2.0 * std::numbers::pi / sides;
    outline.push_back({20.0 * std::cos(angle), 20.0 * std::sin(angle)});
  }
  const double to_side = 20.0 * std::cos(std::numbers::pi / sides);
  const Placed a{prism(outline, {}, 5), {tilted, {0, 0, 0}}};
  for (const double mm : {10.0, 1e-3, 1e-7, -1e-7, -1e-3, -2.0}) {
    check_gap(a, shifted(a, tilted * Vec3{2.0 * to_side + mm, 0, 0}), mm);  // side on side
    check_gap(a, shifted(a, tilted * Vec3{0, 0, 5.0 + mm}), mm);            // one on the other
  }
}

// CGAL/cgal#4189, davideberly/GeometricTools#40: edges that are parallel up to rounding meet "at" any point.
TEST_CASE("known failures: edges that are nearly parallel") {
  const Placed bar{box(200, 1, 1), {}};
  for (const double degrees : {0.0, 1e-14, 1e-12, 1e-10, 1e-8, 1e-6, 1e-3}) {
    for (const double mm : around_zero) {
      CAPTURE(degrees);
      // Beside it and turned away about its corner over the middle of the bar.
      check_gap(bar, {box(80, 1, 1), {rotation({0, 0, 1}, degrees), {100, 1.0 + mm, 0}}}, mm);
      // Diagonally off two edges, turned about the same corner.
      if (mm > 0.0) {
        check_gap(bar, {box(80, 1, 1), {rotation({0, 0, 1}, degrees), {100, 1.0 + mm, 1.0 + mm}}}, std::sqrt(2.0) * mm);
      }
    }
  }
}

// flexible-collision-library/fcl#407, #570, RobotLocomotion/drake#21234: a box on the side of a cylinder, or a cylinder
// on a box: crashes, and distances that are off.
TEST_CASE("known failures: a box on a cylinder's side") {
  const Placed pipe{cylinder(12, 50), {rotation({0, 1, 0}, 90.0), {0, 0, 0}}};  // along x from 0 to 50
  for (const double degrees : {0.0, 30.0, 33.3, 90.0, 121.7}) {
    const Mat3 about = rotation({1, 0, 0}, degrees);
    for (const double mm : around_zero) {
      CAPTURE(degrees);
      // The face lies on the side along a line; so it does with its edge just there.
      check_gap(pipe, {box(10, 14, 9), {about, about * Vec3{20, -5, 6.0 + mm}}}, mm);
      check_gap(pipe, {box(80, 14, 9), {about, about * Vec3{-5, 0, 6.0 + mm}}}, mm);
      // Turned about the contact: at one point of a corner, of an edge.
      check_gap(pipe, {box(10, 14, 9), {about * rotation({0, 0, 1}, 40.0), about * Vec3{20, 0, 6.0 + mm}}}, mm);
    }
  }
}

// Open-Cascade-SAS/OCCT#588: circles in planes at right angles, one through the middle of the other.
TEST_CASE("known failures: a wheel on the middle of a drum") {
  const Placed drum{cylinder(20, 4), {tilted, {0, 0, 0}}};
  for (const double mm : around_zero) {
    // Upright, its rim down to the drum's axis.
    const Mat3 upright = rotation({1, 0, 0}, 90.0);
    check_gap(drum, {cylinder(20, 2), {tilted * upright, tilted * Vec3{0, 1, 14.0 + mm}}}, mm);
  }
}

// Open-Cascade-SAS/OCCT#1123: of four pins that stick in a part two are said to be 6e-5 and 0.08 away from it.
TEST_CASE("known failures: pins that stick in a plate") {
  const Placed plate{box(60, 40, 3), {tilted, {0, 0, 0}}};
  int pins = 0;
  for (const double x : {4.0, 29.9, 56.0}) {
    for (const double sunk : {6e-5, 0.08, 1.4}) {
      check_gap(plate, {cylinder(5, 12), {tilted, tilted * Vec3{x, 20, 3.0 - sunk}}}, -sunk);
      check_gap(plate, {cylinder(5, 12), {tilted * rotation({1, 0, 0}, 180.0), tilted * Vec3{x, 20, sunk}}}, -sunk);
      pins += 2;
    }
  }
  CHECK(pins == 18);
}

/// A box from corner to corner as a mesh; its lower face is cut at `cut` (0..1 along x), which makes two slivers when
/// it is near an end.
Solid box_mesh(const Vec3& low, const Vec3& high, double cut = 0.5, bool inward = false) {
  const double at = low.x + cut * (high.x - low.x);
  std::vector<Vec3> v{low, {high.x, low.y, low.z}, {high.x, high.y, low.z}, {low.x, high.y, low.z}};
  for (std::size_t i = 0; i < 4; ++i) v.emplace_back(v[i].x, v[i].y, high.z);
  v.emplace_back(at, low.y, low.z);
  v.emplace_back(at, high.y, low.z);
  std::vector<Mesh::Triangle> t{{0, 9, 8}, {0, 3, 9}, {8, 2, 1}, {8, 9, 2}, {4, 5, 6}, {4, 6, 7}, {0, 8, 4}, {8, 5, 4},
                                {8, 1, 5}, {1, 2, 6}, {1, 6, 5}, {2, 9, 6}, {9, 7, 6}, {9, 3, 7}, {3, 0, 4}, {3, 4, 7}};
  if (inward) {
    for (Mesh::Triangle& one : t) std::swap(one[1], one[2]);
  }
  return Solid::mesh(std::get<Mesh>(Mesh::make(std::move(v), std::move(t))));
}

// flexible-collision-library/fcl#492, #641: a mesh within a mesh "does not collide", since their surfaces do not meet.
TEST_CASE("known failures: a mesh within a mesh") {
  const Placed outer{box_mesh({0, 0, 0}, {40, 30, 20}), {tilted, {5, 6, 7}}};
  const Placed inner{box_mesh({18, 13, 16}, {20, 15, 18}), {tilted, {5, 6, 7}}};
  const Placed solid_inner{box(2, 2, 2), {tilted, tilted * Vec3{18, 13, 16} + Vec3{5, 6, 7}}};
  for (const Placed& b : {inner, solid_inner}) {
    for (const Gap& found : {gap(outer, b), gap(b, outer)}) {
      CHECK(found.relation == Relation::overlapping);
      CHECK(found.bound != Bound::surface);
      CHECK(found.mm <= -4.0 + allowed);  // up through the lid: 20 - 16
    }
  }
}

// CGAL/cgal#6359: the distance to a triangle taken from the wrong side of it; worst where triangles are slivers.
TEST_CASE("known failures: slivers in a mesh") {
  for (const double cut : {0.5, 0.1, 1e-3, 1e-6, 1e-7, 1.0 - 1e-6}) {
    CAPTURE(cut);
    const Placed plate{box_mesh({0, 0, 0}, {50, 40, 5}, cut), {tilted, {1, 2, 3}}};
    for (const double mm : {3.0, 1e-3, 1e-6, 1e-8, -1e-8, -1e-6, -1e-3, -1.0}) {
      // From below, across the slivers, over their edge, and at a corner.
      for (const Vec2& at : {Vec2{-1, 10}, {20, 10}, {47, 10}, {-1.5, 38}}) {
        const Placed block{box(3, 3, 3), {tilted, tilted * Vec3{at, -3.0 - mm} + Vec3{1, 2, 3}}};
        const Gap found = gap(plate, block);
        CAPTURE(mm);
        check_mm(found.mm, mm, allowed);
        CHECK(found.relation == (mm > 0.0 ? Relation::apart : Relation::overlapping));
      }
    }
  }
}

}  // namespace
}  // namespace baywright::geometry
