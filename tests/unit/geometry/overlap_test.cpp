// What two solids share, against closed forms and against sums over corners and over a grid that know nothing of edges.
#include "geometry/overlap.h"

#include "cuts.h"
#include "geometry/outline.h"
#include "mesh_shapes.h"
#include "support/check_mm.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <numbers>
#include <optional>
#include <random>

using namespace baywright::geometry;
using namespace baywright::geometry::cuts;
using namespace baywright::geometry::scenes;
using baywright::test::check_mm;

namespace {

Solid box(double x, double y, double z) {
  return std::get<Solid>(Solid::box({x, y, z}));
}

Placed at(const Solid& solid, const Vec3& shift) {
  return {solid, {Mat3{1.0}, shift}};
}

Vec3 random_direction(std::mt19937_64& random) {
  std::normal_distribution<double> normal;
  return glm::normalize(Vec3{normal(random), normal(random), normal(random)});
}

Pose random_pose(std::mt19937_64& random, double reach) {
  std::uniform_real_distribution<double> angle(0, 360);
  return {rotation(random_direction(random), angle(random)), reach * random_direction(random)};
}

void check_box(const std::optional<Bounds>& got, const Vec3& low, const Vec3& high, double allowed) {
  REQUIRE(got);
  check_mm(got->low, low, allowed);
  check_mm(got->high, high, allowed);
}

/// The box of what two boxes share, by no other way than their definition: of all points where three of the twelve
/// planes meet those that lie in both, to a hair.
std::optional<Bounds> by_planes(const Placed& a, const Placed& b) {
  struct Plane {
    Vec3 normal;
    double offset;
  };
  std::vector<Plane> planes;
  for (const Placed* placed : {&a, &b}) {
    const Piece& piece = placed->solid.pieces().front();
    const std::vector<Vec3> normals = face_normals(piece, placed->pose);
    for (const Vec3& n : normals) planes.push_back({n, glm::dot(n, farthest(piece, placed->pose, n))});
  }
  Bounds found = Bounds::empty();
  for (std::size_t i = 0; i < planes.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      for (std::size_t k = 0; k < j; ++k) {
        const Mat3 rows{planes[i].normal, planes[j].normal, planes[k].normal};
        if (std::abs(glm::determinant(rows)) < 1e-9) continue;
        const Vec3 p = glm::inverse(glm::transpose(rows)) * Vec3{planes[i].offset, planes[j].offset, planes[k].offset};
        if (std::all_of(planes.begin(), planes.end(),
                        [&](const Plane& plane) { return glm::dot(plane.normal, p) <= plane.offset + 1e-9; }))
          found.add(p);
      }
    }
  }
  if (!(found.low.x <= found.high.x)) return std::nullopt;
  return found;
}

}  // namespace

TEST_CASE("two boxes share a box") {
  const Placed a = at(box(20, 20, 20), {0, 0, 0});
  const Placed b = at(box(10, 8, 6), {15, -3, 19.7});
  for (const bool swap : {false, true}) {
    const Placed& one = swap ? b : a;
    const Placed& other = swap ? a : b;
    check_box(overlap_box(one, other), {15, 0, 19.7}, {20, 5, 20}, 1e-7);
    const auto shared = overlap(one, other, facing_plane({0, 0, 19.9}, {0, 0, 1}));
    REQUIRE(shared.size() == 1);
    CHECK(shared.front().holes.empty());
    check_mm(area_of(shared), 5 * 5, 1e-9);
    check_mm(area_of(overlap(one, other, facing_plane({0, 2, 0}, {0, -1, 0}))), 5 * 0.3, 1e-9);
    CHECK(overlap(one, other, facing_plane({0, 0, 10}, {0, 0, 1})).empty());
  }
}

TEST_CASE("solids that touch share nothing, in any pose") {
  std::mt19937_64 random(20240721);
  for (int round = 0; round < 50; ++round) {
    const Pose pose = round == 0 ? Pose{} : random_pose(random, 100);
    for (const Vec3& shift : {Vec3{20, 0, 0}, Vec3{20, 20, 0}, Vec3{20, 20, 20}, Vec3{5, 5, -20}, Vec3{0, 30, 0}}) {
      const Placed a{box(20, 20, 20), pose};
      const Placed b{box(20, 20, 20), pose.after({Mat3{1.0}, shift})};
      const Placed mesh{box_surface({20, 20, 20}).solid(), b.pose};
      for (const Placed* other : {&b, &mesh}) {
        CHECK(!overlap_box(a, *other));
        CHECK(!overlap_box(*other, a));
        CHECK(overlap(a, *other, facing_plane(pose.point({10, 10, 10}), pose.direction({0.1, 0.2, 1}))).empty());
      }
    }
  }
}

TEST_CASE("a solid within another is shared whole") {
  const Placed outer = at(box(20, 20, 20), {0, 0, 0});
  for (const Solid& solid : {box(4, 5, 6), box_surface({4, 5, 6}).solid()}) {
    const Placed inner = at(solid, {3, 4, 5});
    check_box(overlap_box(outer, inner), {3, 4, 5}, {7, 9, 11}, 1e-9);
    check_box(overlap_box(inner, outer), {3, 4, 5}, {7, 9, 11}, 1e-9);
    check_box(overlap_box(inner, inner), {3, 4, 5}, {7, 9, 11}, 1e-9);
    check_mm(area_of(overlap(outer, inner, facing_plane({0, 0, 7}, {0, 0, 1}))), 20, 1e-9);
  }
}

TEST_CASE("an L and a box: what it only touches is no part of what is shared") {
  const Outline outline{{2, 2}, {2, 6}, {0, 6}, {0, 0}, {6, 0}, {6, 2}};
  const View level = facing_plane({0, 0, 2}, {0, 0, 1});
  for (const Solid& ell : {std::get<Solid>(Solid::prism(outline, {}, 5)), prism_surface(outline, 5).solid()}) {
    const Placed a = at(ell, {0, 0, 0});
    CHECK(!overlap_box(a, at(box(4, 4, 5), {2, 2, 0})));  // fills the notch
    CHECK(overlap(a, at(box(4, 4, 5), {2, 2, 0}), level).empty());
    // 0.3 into the upright arm, and flush with the foot along all of it.
    check_box(overlap_box(a, at(box(4, 3, 3), {1.7, 2, 1})), {1.7, 2, 1}, {2, 5, 4}, 1e-7);
    check_mm(area_of(overlap(a, at(box(4, 3, 3), {1.7, 2, 1}), level)), 0.3 * 3, 1e-5);
    // Across both arms: two areas, one box.
    const Placed across{box(10, 1, 3), {rotation({0, 0, 1}, -45), {-1, 5, 1}}};
    CHECK(overlap(a, across, level).size() == 2);
    const auto both = overlap_box(a, across);
    REQUIRE(both);
    // A strip of 1 mm at 45 degrees, between x + y = 4 and x + y = 4 + sqrt(2): in the upright arm it reaches from x =
    // 0 up to y = 4 + sqrt(2), and in the foot the same the other way round.
    check_mm(both->low, {0, 0, 1}, 1e-7);
    check_mm(both->high, {4 + std::sqrt(2.0), 4 + std::sqrt(2.0), 4}, 1e-7);
  }
}

TEST_CASE("turned boxes: the planes' corners, a grid's count") {
  std::mt19937_64 random(20240722);
  std::uniform_real_distribution<double> size(5, 20);
  int shared = 0;
  int none = 0;
  for (int round = 0; round < 300; ++round) {
    const Vec3 sizes{size(random), size(random), size(random)};
    const Placed a{box(size(random), size(random), size(random)), random_pose(random, 10)};
    const Placed b{box(sizes.x, sizes.y, sizes.z), random_pose(random, 10)};
    const Placed mesh{box_surface(sizes).solid(), b.pose};
    const auto got = overlap_box(a, b);
    const auto want = by_planes(a, b);
    REQUIRE(got.has_value() == want.has_value());
    REQUIRE(overlap_box(b, a).has_value() == got.has_value());
    REQUIRE(overlap_box(mesh, a).has_value() == got.has_value());
    ++(got ? shared : none);
    if (!got) continue;
    check_box(got, want->low, want->high, 1e-6);
    check_box(overlap_box(b, a), got->low, got->high, 1e-6);
    check_box(overlap_box(a, mesh), got->low, got->high, 1e-6);
    for (int axis = 0; axis < 3; ++axis) {
      for (const Placed* each : {&a, &b}) {
        CHECK(got->low[axis] >= bounds(*each).low[axis]);
        CHECK(got->high[axis] <= bounds(*each).high[axis]);
      }
    }
    const View view = facing_plane(0.5 * (got->low + got->high), random_direction(random));
    const double area = area_of(overlap(a, b, view));
    check_mm(area_of(overlap(b, a, view)), area, 1e-4);
    check_mm(area_of(overlap(a, mesh, view)), area, 1e-4);
    CHECK(area <= std::min(area_of(section(a, view)), area_of(section(b, view))) + 1e-4);
    // A grid of 0.1 mm counts a cell for each point that lies in both. Only cells on the outline may be counted wrong,
    // and a convex outline of length l crosses at most 2 l / 0.1 + 4 of them; on average half of that in either sense.
    int count = 0;
    const auto holds = [](const Placed& placed, const Vec3& p) {
      const Vec3 local = placed.pose.inverse().point(p);
      return local.z >= 0 && local.z <= placed.solid.height() && contains(placed.solid.outline(), Vec2{local});
    };
    constexpr double cell = 0.1;
    if (round % 10 != 0) continue;
    for (double x = -20; x < 20; x += cell)
      for (double y = -20; y < 20; y += cell) {
        const Vec3 p = view.point + x * view.right + y * view.up;
        count += holds(a, p) && holds(b, p);
      }
    double length = 0.0;
    for (const Region& region : overlap(a, b, view))
      for (std::size_t i = 0; i < region.outline.size(); ++i)
        length += glm::distance(region.outline[i], region.outline[(i + 1) % region.outline.size()]);
    check_mm(count * cell * cell, area, length * cell + 4 * cell * cell);
  }
  CHECK(shared > 90);
  CHECK(none > 30);
}

TEST_CASE("round solids") {
  const Solid pin = std::get<Solid>(Solid::cylinder(10, 0, 10));
  // Beyond x = 3 a circle of radius 5 is 8 wide. The chord error is 0.001 mm.
  check_box(overlap_box(at(pin, {0, 0, 0}), at(box(10, 20, 4), {3, -10, 8})), {3, -4, 8}, {5, 4, 10}, 2e-3);
  // A wall thinner than the pin: all that is left is where the cylinder meets its faces.
  check_box(overlap_box(at(pin, {0, 0, 0}), at(box(1, 20, 4), {3, -10, 3})), {3, -4, 3}, {4, 4, 7}, 2e-3);
  const Solid tube = std::get<Solid>(Solid::cylinder(10, 6, 10));
  CHECK(!overlap_box(at(tube, {0, 0, 0}), at(box(4, 4, 20), {-2, -2, -5})));  // its corners 2.83 from the axis
  const auto ring =
      overlap(at(tube, {0, 0, 0}), at(box(20, 20, 20), {-10, -10, -5}), facing_plane({0, 0, 5}, {0, 0, 1}));
  REQUIRE(ring.size() == 1);
  CHECK(ring.front().holes.size() == 1);
  check_mm(area_of(ring), 16 * std::numbers::pi, 1e-3 * 16 * std::numbers::pi);
}

TEST_CASE("meshes share as what they were made from does, and a surface shares nothing") {
  const Placed a = at(torus_surface(10, 3, 64, 32).solid(), {0, 0, 0});
  // The torus reaches y = 13 and z = 3; half of the box's 2 mm in x lies at x = 0.
  const auto found = overlap_box(a, at(box_surface({2, 10, 10}).solid(), {-1, 12, -5}));
  REQUIRE(found);
  check_mm(found->high.y, 13, 1e-7);
  check_mm(found->low, {-1, 12, -std::sqrt(5.0)}, 0.02);  // z² = 3² - 2², on true circles
  check_mm(found->high, {1, 13, std::sqrt(5.0)}, 0.02);
  CHECK(!overlap_box(a, at(box_surface({5, 5, 5}).solid(), {-2.5, -2.5, -2.5})));  // in the hole
  Surface open = box_surface({20, 20, 20});
  open.triangles.pop_back();
  CHECK(!overlap_box(at(open.solid(), {0, 0, 0}), at(box(5, 5, 5), {18, 5, 5})));
  CHECK(overlap(at(open.solid(), {0, 0, 0}), at(box(5, 5, 5), {18, 5, 5}), facing_plane({0, 0, 7}, {0, 0, 1})).empty());
}
