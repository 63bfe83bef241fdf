// Triangles as pieces without thickness. Distances are plane and line geometry by hand.
#include "geometry/sheet.h"

#include "geometry/facing.h"
#include "geometry/gap.h"
#include "support/check_mm.h"
#include "unit/geometry/gap_scenes.h"

#include <algorithm>
#include <doctest/doctest.h>

using namespace baywright::geometry;
using namespace baywright::geometry::scenes;
using baywright::test::check_mm;

namespace {

Gap between(const Sheet& a, const Sheet& b) {
  return gap(a.piece, a.pose, b.piece, b.pose);
}

Gap against(const Sheet& a, const Placed& b) {
  return gap(a.piece, a.pose, b.solid.pieces()[0], b.pose);
}

Placed surface(const std::vector<Vec3>& vertices, const std::vector<Mesh::Triangle>& triangles, const Pose& pose) {
  return {Solid::mesh(std::get<Mesh>(Mesh::make(vertices, triangles))), pose};
}

/// The nearest point of a triangle by barycentric coordinates or its edges: an independent and slower way.
double by_sampling(const std::array<Vec3, 3>& t, const Vec3& p) {
  const Vec3 n = glm::normalize(glm::cross(t[1] - t[0], t[2] - t[0]));
  bool inside = true;
  double best = 1e300;
  for (std::size_t i = 0; i < 3; ++i) {
    const Vec3 e = t[(i + 1) % 3] - t[i];
    inside = inside && glm::dot(glm::cross(e, p - t[i]), n) >= 0;
    const double s = std::clamp(glm::dot(p - t[i], e) / glm::dot(e, e), 0.0, 1.0);
    best = std::min(best, glm::distance(p, t[i] + e * s));
  }
  return inside ? std::abs(glm::dot(p - t[0], n)) : best;
}

}  // namespace

TEST_CASE("a triangle stands as a sheet where its corners are, normal outward") {
  const Pose pose{rotation({0, 0, 1}, 90), {10, 20, 30}};
  const Placed mesh = surface({{0, 0, 0}, {4, 0, 0}, {0, 3, 0}, {0, 0, 2}}, {{0, 1, 2}, {0, 1, 3}}, pose);
  const Sheet first = sheet(mesh, 0);
  REQUIRE(first.piece.corners.size() == 3);
  CHECK(first.piece.height == 0.0);
  std::vector<Vec3> corners;
  for (const Vec2& c : first.piece.corners) corners.push_back(first.pose.point(Vec3{c, 0.0}));
  for (const Vec3& want : {Vec3{10, 20, 30}, Vec3{10, 24, 30}, Vec3{7, 20, 30}}) {
    const auto nearest = std::min_element(corners.begin(), corners.end(), [&](const Vec3& p, const Vec3& q) {
      return glm::distance(p, want) < glm::distance(q, want);
    });
    check_mm(*nearest, want, 1e-12);
  }
  const auto& c = first.piece.corners;
  CHECK((c[1].x - c[0].x) * (c[2].y - c[0].y) - (c[1].y - c[0].y) * (c[2].x - c[0].x) > 11.99);
  check_mm(first.pose.turn[2], {0, 0, 1}, 1e-12);
}

TEST_CASE("sheets that are apart: face, edge and corner") {
  const Sheet floor = sheet(std::array<Vec3, 3>{Vec3{0, 0, 0}, Vec3{10, 0, 0}, Vec3{0, 10, 0}});
  const Sheet over = sheet(std::array<Vec3, 3>{Vec3{1, 1, 3}, Vec3{3, 1, 3}, Vec3{1, 3, 4}});
  check_mm(between(floor, over).mm, 3.0, 1e-12);
  const Sheet beside = sheet(std::array<Vec3, 3>{Vec3{13, 0, 4}, Vec3{20, 0, 4}, Vec3{20, 5, 9}});
  check_mm(between(floor, beside).mm, 5.0, 1e-12);  // corner to corner: 3, 4
  const Sheet standing = sheet(std::array<Vec3, 3>{Vec3{2, -4, -5}, Vec3{2, -4, 5}, Vec3{2, -9, 0}});
  check_mm(between(floor, standing).mm, 4.0, 1e-12);  // edge to edge
  const Sheet level = sheet(std::array<Vec3, 3>{Vec3{0, -6, 0}, Vec3{5, -2, 0}, Vec3{9, -6, 0}});
  check_mm(between(floor, level).mm, 2.0, 1e-12);  // one plane
  check_mm(between(floor, over).on_b - between(floor, over).on_a, {0, 0, 3}, 1e-12);
}

TEST_CASE("a sheet in a solid has a negative gap, and so have sheets that cross") {
  const Sheet floor = sheet(std::array<Vec3, 3>{Vec3{0, 0, 0}, Vec3{10, 0, 0}, Vec3{0, 10, 0}});
  const Gap through = against(floor, {box(2, 2, 2), {Mat3(1.0), {1, 1, -0.5}}});
  CHECK(through.relation == Relation::overlapping);
  check_mm(through.mm, -0.5, 1e-12);
  const Gap round = against(floor, {cylinder(2, 2), {Mat3(1.0), {2, 2, -0.25}}});
  CHECK(round.relation == Relation::overlapping);
  check_mm(round.mm, -0.25, 1e-12);
  const Sheet crossing = sheet(std::array<Vec3, 3>{Vec3{2, 2, -0.5}, Vec3{4, 2, 3}, Vec3{2, 4, 3}});
  const Gap crossed = between(floor, crossing);
  CHECK(crossed.relation == Relation::overlapping);
  check_mm(crossed.mm, -0.5, 1e-12);
  const Gap touching = against(floor, {box(2, 2, 2), {Mat3(1.0), {1, 1, 0}}});
  CHECK(touching.relation == Relation::undecided);
}

TEST_CASE("random sheets: no vertex is nearer than the gap, and the points are that far apart") {
  Random random(11);
  int apart = 0;
  int crossing = 0;
  for (int round = 0; round < 4000; ++round) {
    std::array<Vec3, 3> p;
    std::array<Vec3, 3> q;
    for (Vec3& corner : p) corner = any_sides(random, -5, 5);
    for (Vec3& corner : q) corner = any_sides(random, -5, 5) + Vec3{uniform(random, 0, 6), 0, 0};
    const Sheet a = sheet(p);
    const Sheet b = sheet(q);
    const Gap found = between(a, b);
    double vertices = 1e300;
    for (std::size_t i = 0; i < 3; ++i) vertices = std::min({vertices, by_sampling(p, q[i]), by_sampling(q, p[i])});
    if (found.relation == Relation::apart) {
      ++apart;
      CHECK(found.mm <= vertices + 1e-9);
      check_mm(glm::distance(found.on_a, found.on_b), found.mm, 1e-9);
      check_mm(by_sampling(p, found.on_a), 0.0, 1e-9);
      check_mm(by_sampling(q, found.on_b), 0.0, 1e-9);
      check_mm(separation(a.piece, a.pose, b.piece, b.pose, found.direction), found.mm, 1e-9);
      CHECK_FALSE(facing(a.piece, a.pose, b.piece, b.pose, found.direction, 1e-6).empty());
    } else {
      ++crossing;
    }
    CHECK(found.error < 1e-9);
  }
  CAPTURE(apart);
  CHECK(apart > 1200);
  CHECK(crossing > 200);
}

TEST_CASE("triangles near a box are those that a plain scan finds") {
  Random random(12);
  std::vector<Vec3> vertices;
  std::vector<Mesh::Triangle> triangles;
  for (int i = 0; i < 500; ++i) {
    const Vec3 at = any_sides(random, -50, 50);
    for (int k = 0; k < 3; ++k) vertices.push_back(at + any_sides(random, -4, 4));
    triangles.push_back({3 * i, 3 * i + 1, 3 * i + 2});
  }
  int none = 0;
  int some = 0;
  for (int round = 0; round < 200; ++round) {
    const Placed mesh = surface(vertices, triangles, any_pose(random, 10));
    const Vec3 low = any_sides(random, -50, 50);
    const Bounds asked{low, low + any_sides(random, 0.1, 8)};
    const double reach = uniform(random, 0, 5);
    std::vector<int> found;
    triangles_near(mesh, asked, reach, found);
    std::vector<int> want;
    const auto count = static_cast<int>(mesh.solid.mesh()->triangles().size());
    for (int i = 0; i < count; ++i) {
      const Sheet one = sheet(mesh, i);
      if (bounds(one.piece, one.pose).distance(asked) <= reach) want.push_back(i);
    }
    CHECK(std::includes(found.begin(), found.end(), want.begin(), want.end()));
    CHECK(found.size() <= want.size() + 2);
    ++(want.empty() ? none : some);
  }
  CHECK(none > 5);
  CHECK(some > 100);
}
