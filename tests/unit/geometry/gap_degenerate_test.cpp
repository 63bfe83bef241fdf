// What ordinary distance routines stumble over: touching, nearly parallel, coincident, thin and large. Values by
// construction; the bounds are those of the design (1e-9 mm up to 1000 mm).
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

void check_at(const Placed& a, const Placed& b, double want) {
  CAPTURE(want);
  const Gap found = gap(a, b);
  check_mm(found.mm, want, allowed);
  CHECK(found.error <= allowed);
  check_mm(glm::length(found.direction), 1.0, 1e-9);
  if (want > 2.5 * touch_mm) CHECK(found.relation == Relation::apart);
  if (want < -2.5 * touch_mm) CHECK(found.relation == Relation::overlapping);
  if (std::abs(want) < 1e-11) CHECK(found.relation == Relation::undecided);
  check_mm(gap(b, a).mm, found.mm, 1e-12);
}

/// b from just apart to just overlapping along `way`, with no jump in between, as it stands and turned at random.
void check_kissing(const Placed& a, const Placed& b, const Vec3& way) {
  Random random(99);
  for (int turn = 0; turn < 4; ++turn) {
    const Pose motion = turn == 0 ? Pose{} : any_pose(random, 50.0);
    for (const double mm : {0.0, 1e-16, 1e-13, 1e-11, 1e-10, 3e-9, 1e-8, 1e-7, 1e-6, 1e-4, -1e-16, -1e-13, -1e-11,
                            -1e-10, -3e-9, -1e-8, -1e-7, -1e-6, -1e-4}) {
      check_at(moved(a, motion), moved(shifted(b, way * mm), motion), mm);
    }
  }
}

TEST_CASE("gap: kissing solids") {
  const Placed cube = centred(box(10, 10, 10), {0, 0, 0});
  check_kissing(cube, centred(box(10, 10, 10), {10, 0, 0}), {1, 0, 0});
  check_kissing(cube, centred(box(4, 5, 6), {7, 3, 2}), {1, 0, 0});
  check_kissing(cube, centred(cylinder(6, 30), {8, 1, 2}), {1, 0, 0});   // side on a face
  check_kissing(cube, centred(cylinder(6, 30), {0, 0, 20}), {0, 0, 1});  // end on a face
  check_kissing(centred(cylinder(6, 30), {0, 0, 0}), centred(cylinder(8, 30), {7, 0, 3}), {1, 0, 0});
  check_kissing(centred(cylinder(6, 30), {0, 0, 0}), centred(cylinder(8, 30), {0, 7, 0}, rotation({0, 1, 0}, 70.0)),
                {0, 1, 0});
  // A rim on the edge of a box: the edge runs along y, 45 degrees of the box to each side, the cylinder leans by 45.
  const Placed roof = centred(box(20, 40, 20), {0, 0, -10.0 * std::sqrt(2.0)}, rotation({0, 1, 0}, 45.0));
  const Placed flat = centred(cylinder(10, 20), {1, 0, 10});
  check_kissing(roof, flat, {0, 0, 1});
  const double half = std::sqrt(0.5);
  const Placed leaning = centred(cylinder(10, 20), Vec3{0, 0, 15.0 * half}, rotation({1, 0, 0}, 45.0));
  check_kissing(roof, leaning, {0, 0, 1});
  const Placed washer{tube(20, 10, 3), {}};
  check_kissing(washer, centred(cylinder(4, 30), {3, 0, 1.5}), {-1, 0, 0});  // a pin against the bore
  check_kissing(washer, centred(cylinder(30, 3), {0, 0, 4.5}), {0, 0, 1});   // a disc on the washer
  check_kissing(washer, centred(box(30, 4, 6), {0, 0, 6}), {0, 0, 1});
}

TEST_CASE("gap: a pin that fills a bore to the digit touches it") {
  Random random(3);
  for (int i = 0; i < 5; ++i) {
    const Pose motion = i == 0 ? Pose{} : any_pose(random, 50.0);
    check_at(moved({tube(20, 10, 3), {}}, motion), moved(centred(cylinder(10, 30), {0, 0, 1.5}), motion), 0.0);
  }
}

TEST_CASE("gap: faces that are all but parallel") {
  const Placed plate{box(100, 100, 2), put({0, 0, 2}, {0, 0, 0})};  // top face in z = 0
  for (const double lean : {1e-12, 1e-11, 1e-10, 1e-9, 1e-8, 1e-7, 1e-6}) {
    CAPTURE(lean);
    const double degrees = lean * 180.0 / std::numbers::pi;
    for (const Vec3& axis : {Vec3{1, 0, 0}, Vec3{0, -1, 0}, glm::normalize(Vec3{1, -1, 0})}) {
      // The corner at its own origin stays lowest: the lean lifts the other three.
      for (const double mm : {1.0, 1e-3, 1e-6, -1e-6, -1e-3}) {
        check_at(plate, Placed{box(50, 60, 3), {rotation(axis, degrees), {10, 20, mm}}}, mm);
      }
    }
    // The rim's lowest point is lower than its centre by radius times lean.
    for (const double mm : {1.0, 1e-3, -1e-3}) {
      check_at(plate, Placed{cylinder(30, 10), {rotation({0, 1, 0}, degrees), {40, 50, mm}}},
               mm - 15.0 * std::sin(lean));
    }
    // Poles that are all but parallel: the lean is about the line of centres and does not change their distance.
    check_at(centred(cylinder(6, 100), {0, 0, 0}), centred(cylinder(8, 100), {9, 0, 0}, rotation({1, 0, 0}, degrees)),
             2.0);
    check_at(centred(cylinder(6, 100), {0, 0, 0}), centred(cylinder(8, 100), {6, 0, 0}, rotation({1, 0, 0}, degrees)),
             -1.0);
  }
}

TEST_CASE("gap: thin, large and far away") {
  const Placed sheet{box(1000, 1000, thinnest_mm), {}};
  check_at(sheet, Placed{box(1000, 1000, thinnest_mm), {Mat3{1.0}, {10, 20, 1.0}}}, 1.0 - thinnest_mm);
  check_at(sheet, Placed{box(1000, 1000, 5), {Mat3{1.0}, {10, 20, 0.0}}}, -thinnest_mm);
  check_at(sheet, centred(cylinder(10, 20), {500, 500, 0.0}, rotation({0, 1, 0}, 90.0)), -5.0);  // down
  const Placed foil = centred(cylinder(200, thinnest_mm), {0, 0, 0});
  check_at(foil, centred(cylinder(200, thinnest_mm), {0, 0, 0.5}), 0.5 - thinnest_mm);
  check_at(foil, centred(box(0.01, 0.01, 0.01), {104, 3, 0}), std::hypot(103.995, 2.995) - 100.0);
  const Placed hall{box(largest_mm, largest_mm, 10), {}};
  check_at(hall, Placed{box(10, 10, 10), {Mat3{1.0}, {99000, 99000, 10.5}}}, 0.5);
  check_at(hall, Placed{box(10, 10, 10), {Mat3{1.0}, {100003, 100004, 2}}}, 5.0);
}

TEST_CASE("gap: every relation of two boxes that share a lattice") {
  // 10 mm cubes at multiples of 5 mm: faces, edges and corners coincide everywhere.
  const Placed fixed{box(10, 10, 10), {}};
  int apart = 0;
  int overlapping = 0;
  int touching = 0;
  for (int x = -3; x <= 3; ++x) {
    for (int y = -3; y <= 3; ++y) {
      for (int z = -3; z <= 3; ++z) {
        const std::array<int, 3> at{std::abs(x), std::abs(y), std::abs(z)};
        const int most = std::max({at[0], at[1], at[2]});
        double square = 0.0;
        for (const int i : at) square += i > 2 ? 25.0 * (i - 2) * (i - 2) : 0.0;
        const double want = most > 2 ? std::sqrt(square) : 5.0 * most - 10.0;
        const Gap found = gap(fixed, Placed{box(10, 10, 10), {Mat3{1.0}, {5.0 * x, 5.0 * y, 5.0 * z}}});
        check_mm(found.mm, want, 1e-12);
        apart += found.relation == Relation::apart ? 1 : 0;
        overlapping += found.relation == Relation::overlapping ? 1 : 0;
        touching += found.relation == Relation::undecided ? 1 : 0;
      }
    }
  }
  CHECK(overlapping == 27);     // at -1, 0, 1
  CHECK(touching == 125 - 27);  // the next shell
  CHECK(apart == 343 - 125);
}

TEST_CASE("gap: figures that are no numbers come back as undecided, not as an answer") {
  const double nan = std::nan("");
  const Placed cube{box(10, 10, 10), {}};
  for (const Solid& solid : {box(1, 2, 3), cylinder(4, 5), tube(6, 3, 2)}) {
    const Gap away = gap(cube, Placed{solid, {Mat3{1.0}, {nan, 0, 0}}});
    CHECK(away.relation == Relation::undecided);
    CHECK(away.mm == 0.0);
    const Gap found = gap(Placed{solid, {Mat3{nan}, {1, 2, 3}}}, cube);
    CHECK(found.relation == Relation::undecided);
    CHECK(found.mm == 0.0);
    CHECK(std::isinf(found.error));
  }
}

}  // namespace
}  // namespace baywright::geometry
