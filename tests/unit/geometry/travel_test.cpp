// Ways along a line, by construction, and what must hold of any.
#include "geometry/travel.h"

#include "gap_scenes.h"
#include "support/check_mm.h"

#include <doctest/doctest.h>

namespace baywright::geometry {
namespace {

using namespace scenes;
using test::check_mm;

constexpr double allowed = 1e-9;

Travel travel_of(const std::vector<Placed>& moving, const std::vector<Placed>& fixed, const Vec3& direction) {
  return travel(moving, fixed, direction);
}

/// As it is, and turned at random; the points must lie on one line along the direction.
void check_way(const Placed& moving, const Placed& fixed, const Vec3& direction, double want) {
  Random random(7);
  for (int i = 0; i < 5; ++i) {
    const Pose motion = i == 0 ? Pose{} : any_pose(random, 100.0);
    const Vec3 way = motion.direction(direction);
    const Travel found = travel_of({moved(moving, motion)}, {moved(fixed, motion)}, way);
    REQUIRE(found.meets);
    check_mm(found.mm, want, allowed);
    CHECK(found.error <= allowed);
    check_mm(found.on_moving + way * found.mm, found.on_fixed, 1e-8);
  }
}

void check_never(const Placed& moving, const Placed& fixed, const Vec3& direction) {
  CHECK(!travel_of({moving}, {fixed}, direction).meets);
  CHECK(!travel_of({moving}, {fixed}, -direction).meets);
  const Pose quarter{rotation({0, 0, 1}, 90.0), {5, 6, 7}};
  CHECK(!travel_of({moved(moving, quarter)}, {moved(fixed, quarter)}, quarter.direction(direction)).meets);
}

TEST_CASE("travel: free way to a face, an edge, a round side") {
  const Placed cube = centred(box(10, 10, 10), {0, 0, 0});
  check_way(centred(box(4, 4, 4), {1, 2, 20}), cube, {0, 0, -1}, 13.0);  // 20 - 5 - 2
  check_way(centred(box(4, 4, 4), {1, 2, 20}), cube, {0, 0, 1}, -27.0);  // coming from below: back by 20 + 5 + 2
  check_way(centred(box(4, 4, 4), {1, 2, 0}), cube, {0, 0, 1}, -7.0);    // inside: back by 5 + 2
  check_way(centred(cylinder(6, 20), {1, 2, 20}, rotation({0, 1, 0}, 90.0)), cube, {0, 0, -1}, 12.0);  // 20 - 5 - 3
  // Poles side by side, 4 off centre: radii 2 and 3 meet where the centres are sqrt(25 - 16) = 3 apart along the way.
  check_way(centred(cylinder(4, 20), {-10, 4, 0}), centred(cylinder(6, 20), {0, 0, 0}), {1, 0, 0}, 7.0);
  // Aslant: 3-4-5 down to a plate.
  check_way(centred(box(2, 2, 2), {0, 0, 9}), centred(box(200, 200, 2), {0, 0, 0}), {0.6, 0, -0.8}, 7.0 / 0.8);
}

TEST_CASE("travel: what only grazes or passes does not meet") {
  const Placed cube = centred(box(10, 10, 10), {0, 0, 0});
  check_never(centred(box(4, 4, 4), {-20, 0, 7}), cube, {1, 0, 0});     // slides along a face
  check_never(centred(box(4, 4, 4), {-20, 7, 7}), cube, {1, 0, 0});     // along an edge
  check_never(centred(cylinder(4, 20), {-20, 7, 0}), cube, {1, 0, 0});  // tangent
  check_never(centred(box(4, 4, 4), {-20, 0, 7.5}), cube, {1, 0, 0});
  CHECK(!travel_of({}, {cube}, {1, 0, 0}).meets);
  CHECK(!travel_of({cube}, {}, {1, 0, 0}).meets);
  // A hair lower and it meets.
  check_way(centred(box(4, 4, 4), {-20, 0, 7 - 1e-6}), cube, {1, 0, 0}, 13.0);
}

TEST_CASE("travel: pockets, holes, bores") {
  // A channel of width 10 and depth 15 along y: a block in it moves down 1 to the floor, and must back out of all of it
  // to come in again from the side.
  const Solid channel = prism({{0, 0}, {30, 0}, {30, 20}, {20, 20}, {20, 5}, {10, 5}, {10, 20}, {0, 20}}, {}, 40);
  const Placed block = centred(box(8, 10, 10), {15, 11, 20});
  check_way(block, {channel, {}}, {0, -1, 0}, 1.0);
  check_way(block, {channel, {}}, {1, 0, 0}, -19.0);
  const Placed washer{tube(20, 10, 3), {}};
  check_never(centred(cylinder(8, 10), {0.5, 0, 30}), washer, {0, 0, -1});
  check_never(centred(box(6, 6, 10), {0, 0, 30}), washer, {0, 0, -1});
  check_way(centred(cylinder(8, 10), {1.5, 0, 30}), washer, {0, 0, -1}, 22.0);  // 30 - 5 - 3
  check_way(centred(cylinder(8, 1), {-30, 0, 1.5}), washer, {1, 0, 0}, 16.0);   // 30 - 10 - 4
  const Solid plate = prism({{-20, -20}, {20, -20}, {20, 20}, {-20, 20}}, {{{-6, -6}, {6, -6}, {6, 6}, {-6, 6}}}, 2);
  check_never(centred(cylinder(10, 10), {0.5, 0, 30}), {plate, {}}, {0, 0, -1});
  check_way(centred(cylinder(10, 10), {1.5, 0, 30}), {plate, {}}, {0, 0, -1}, 23.0);
}

TEST_CASE("travel: several solids move as one, and the first to touch counts") {
  const std::vector<Placed> moving{centred(box(2, 2, 2), {0, 0, 0}), centred(cylinder(2, 2), {10, 0, 3})};
  const std::vector<Placed> fixed{centred(box(4, 4, 2), {0, 0, 10}), centred(box(4, 4, 2), {10, 0, 12})};
  const Travel found = travel(moving, fixed, {0, 0, 1});
  REQUIRE(found.meets);
  check_mm(found.mm, 7.0, allowed);  // the cylinder: 12 - 3 - 2
  check_mm(found.on_fixed.z, 11.0, allowed);
}

TEST_CASE("travel: a touch after the way, free before it") {
  Random random(11);
  int met = 0;
  int missed = 0;
  for (int i = 0; i < 1500; ++i) {
    const Placed moving{any_convex(random), any_pose(random, 20.0)};
    Placed fixed{any_convex(random), any_pose(random, 20.0)};
    if (i % 8 == 0) {
      const Vec3 sides = any_sides(random, 0.0, 1.0);
      fixed.solid = tube(20 + 20 * sides.x, 4 + 14 * sides.y, 1 + 19 * sides.z);
    }
    const Vec3 way = any_direction(random);
    const Travel found = travel_of({moving}, {fixed}, way);
    if (!found.meets) {
      ++missed;
      for (int k = -40; k <= 40; ++k) CHECK(gap(shifted(moving, way * (2.5 * k)), fixed).mm > -2e-9);
      continue;
    }
    ++met;
    CHECK(found.error <= 1e-6);  // grazing incidence stretches the error; it says so
    const double touch = gap(shifted(moving, way * found.mm), fixed).mm;
    check_mm(touch, 0.0, allowed);
    for (const double before : {1e-3, 0.1, 1.0, 10.0, 50.0}) {
      CHECK(gap(shifted(moving, way * (found.mm - before - found.error)), fixed).mm > 0.0);
    }
    const bool deeper = gap(shifted(moving, way * (found.mm + 1e-3)), fixed).mm < 0.0;
    if (fixed.solid.bore() == 0.0) CHECK(deeper);
  }
  const double share = met / static_cast<double>(met + missed);
  CHECK(share > 0.3);
  CHECK(share < 0.7);
}

}  // namespace
}  // namespace baywright::geometry
