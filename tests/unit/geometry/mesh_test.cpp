// Meshes: what is mended, what is told, volumes and insides in closed form.
#include "geometry/mesh.h"

#include "support/check_mm.h"
#include "support/random_turn.h"
#include "unit/geometry/mesh_shapes.h"

#include <algorithm>
#include <doctest/doctest.h>

using namespace baywright::geometry;
using namespace baywright::geometry::scenes;
using baywright::test::check_mm;
using baywright::test::Random;
using baywright::test::uniform;
using Kind = MeshFlaw::Kind;

namespace {

int count(const Mesh& mesh, Kind kind) {
  for (const MeshFlaw& flaw : mesh.flaws()) {
    if (flaw.kind == kind) return flaw.count;
  }
  return 0;
}

/// Every triangle with its own three points, as STL gives it.
Surface loose(const Surface& surface) {
  Surface made;
  for (const Mesh::Triangle& t : surface.triangles) {
    const int first = static_cast<int>(made.vertices.size());
    for (const int corner : t) made.vertices.push_back(surface.vertices[static_cast<std::size_t>(corner)]);
    made.triangles.push_back({first, first + 1, first + 2});
  }
  return made;
}

}  // namespace

TEST_CASE("volumes of meshes in closed form") {
  const Surface tetrahedron{{{0, 0, 0}, {3, 0, 0}, {0, 4, 0}, {0, 0, 5}}, {{0, 2, 1}, {0, 1, 3}, {1, 2, 3}, {0, 3, 2}}};
  check_mm(tetrahedron.mesh().volume(), 3.0 * 4.0 * 5.0 / 6.0, 1e-12);
  check_mm(box_surface({2, 3, 7}).mesh().volume(), 42.0, 1e-12);
  // Area of a regular n-gon: n / 2 r^2 sin(2 pi / n).
  Outline base;
  for (int i = 0; i < 11; ++i) {
    base.push_back({6 * std::cos(2 * std::numbers::pi * i / 11), 6 * std::sin(2 * std::numbers::pi * i / 11)});
  }
  const Mesh gon = prism_surface(base, 2.5).mesh();
  check_mm(gon.volume(), 5.5 * 36 * std::sin(2 * std::numbers::pi / 11) * 2.5, 1e-9);
  CHECK(gon.closed());
  CHECK(gon.flaws().empty());
  // A torus tends to 2 pi^2 R r^2; its polygons: cross-section m / 2 r^2 sin(2 pi / m).
  const Mesh torus = torus_surface(10, 3, 400, 300).mesh();
  CHECK(torus.closed());
  check_mm(torus.volume(), 2 * std::numbers::pi * std::numbers::pi * 10 * 9, 0.3);
  check_mm(sphere_surface(5, 6).mesh().volume(), 4.0 / 3.0 * std::numbers::pi * 125, 0.5);
}

TEST_CASE("loose triangles are joined, doubles and triangles without area left out") {
  Surface made = loose(box_surface({2, 3, 7}));
  made.vertices[0].x = -0.0;
  const Mesh joined = made.mesh();
  CHECK(joined.closed());
  CHECK(joined.vertices().size() == 8);
  CHECK(count(joined, Kind::split_vertices) == 28);
  Surface twice = box_surface({2, 3, 7});
  twice.triangles.push_back({twice.triangles[3][1], twice.triangles[3][0], twice.triangles[3][2]});
  twice.triangles.push_back(twice.triangles[5]);
  twice.triangles.push_back({2, 2, 4});
  const Mesh once = twice.mesh();
  CHECK(count(once, Kind::duplicate) == 2);
  CHECK(count(once, Kind::degenerate) == 1);
  CHECK(once.closed());
  check_mm(once.volume(), 42, 1e-12);
}

TEST_CASE("a seam of triangles without height does not open the surface") {
  // The top's diagonal gets a point in its middle on one side only, and a triangle of height 0 between.
  Surface made = box_surface({2, 2, 1});
  auto& t = made.triangles;
  const auto top = std::find_if(t.begin(), t.end(), [](const Mesh::Triangle& one) {
    return one == Mesh::Triangle{4, 5, 6};
  });
  REQUIRE(top != t.end());
  *top = {4, 5, 8};  // 4, 6 was the diagonal
  t.push_back({5, 6, 8});
  t.push_back({4, 8, 6});
  made.vertices.push_back({1, 1, 1});
  const Mesh mesh = made.mesh();
  CHECK(count(mesh, Kind::degenerate) == 1);
  CHECK(mesh.closed());
  CHECK(mesh.triangles().size() == 14);
  check_mm(mesh.volume(), 4, 1e-12);
  // Without the seam the surface is open there.
  made.triangles.pop_back();
  CHECK(count(made.mesh(), Kind::open_edge) == 3);
  CHECK_FALSE(made.mesh().closed());
}

TEST_CASE("triangles wound against their neighbours and shells inside out are turned") {
  Surface made = box_surface({2, 3, 7});
  std::swap(made.triangles[2][0], made.triangles[2][1]);
  std::swap(made.triangles[7][0], made.triangles[7][1]);
  const Mesh mended = made.mesh();
  CHECK(count(mended, Kind::turned) == 2);
  CHECK(count(mended, Kind::inside_out) == 0);
  check_mm(mended.volume(), 42, 1e-12);
  const Mesh outward = box_surface({2, 3, 7}).inverted().mesh();
  CHECK(count(outward, Kind::inside_out) == 1);
  CHECK(outward.closed());
  check_mm(outward.volume(), 42, 1e-12);
}

TEST_CASE("a shell within a shell is a cavity, and one within that is solid again") {
  for (const bool turned : {false, true}) {
    Surface made = box_surface({10, 10, 10});
    const Surface hollow = box_surface({6, 6, 6});
    made.add(turned ? hollow.inverted() : hollow, {2, 2, 2});
    made.add(box_surface({2, 2, 2}), {4, 4, 4});
    const Mesh mesh = made.mesh();
    CHECK(mesh.closed());
    CHECK(count(mesh, Kind::inside_out) == (turned ? 0 : 1));
    check_mm(mesh.volume(), 1000 - 216 + 8, 1e-9);
    CHECK(mesh.contains({1, 5, 5}));
    CHECK_FALSE(mesh.contains({3, 5, 5}));
    CHECK(mesh.contains({5, 5, 5}));
    CHECK_FALSE(mesh.contains({11, 5, 5}));
  }
}

TEST_CASE("what has no inside says why") {
  Surface open = box_surface({2, 3, 7});
  open.triangles.pop_back();
  CHECK(count(open.mesh(), Kind::open_edge) == 3);
  CHECK_FALSE(open.mesh().closed());
  CHECK(open.mesh().volume() == 0.0);
  // Two boxes that share an edge: four triangles on it.
  Surface touching = box_surface({1, 1, 1});
  touching.add(box_surface({1, 1, 1}), {1, 1, 0});
  CHECK(count(touching.mesh(), Kind::crowded_edge) == 1);
  CHECK_FALSE(touching.mesh().closed());
  // A Moebius strip of 12 quadrangles.
  Surface strip;
  const int n = 12;
  for (int i = 0; i < n; ++i) {
    const double u = 2 * std::numbers::pi * i / n;
    for (const double side : {-1.0, 1.0}) {
      const double r = 5 + side * std::cos(u / 2);
      strip.vertices.emplace_back(r * std::cos(u), r * std::sin(u), side * std::sin(u / 2));
    }
  }
  for (int i = 0; i < n; ++i) {
    const bool last = i + 1 == n;
    const int low = last ? 1 : 2 * i + 2;
    const int high = last ? 0 : 2 * i + 3;
    strip.triangles.push_back({2 * i, low, high});
    strip.triangles.push_back({2 * i, high, 2 * i + 1});
  }
  CHECK(count(strip.mesh(), Kind::one_sided) >= 1);
  CHECK_FALSE(strip.mesh().closed());
}

TEST_CASE("surfaces that run through themselves are found, those that only touch are not") {
  Surface crossed = box_surface({4, 4, 4});
  crossed.add(box_surface({4, 4, 4}), {1, 2, 3});
  CHECK(count(crossed.mesh(), Kind::crossing) >= 3);
  CHECK_FALSE(crossed.mesh().closed());
  // Faces in one plane that look the same way.
  Surface aligned = box_surface({4, 4, 4});
  aligned.add(box_surface({4, 4, 4}), {2, 0, 0});
  CHECK(count(aligned.mesh(), Kind::crossing) >= 1);
  // Face to face, not corner to corner.
  Surface stacked = box_surface({4, 4, 4});
  stacked.add(box_surface({2, 2, 2}), {0.5, 1, 4});
  CHECK(stacked.mesh().closed());
  check_mm(stacked.mesh().volume(), 72, 1e-12);
  // A flap that lies flat on its neighbour.
  const Surface flap{{{0, 0, 0}, {4, 0, 0}, {0, 4, 0}, {1, 3, 0}}, {{0, 1, 2}, {1, 0, 3}}};
  CHECK(count(flap.mesh(), Kind::crossing) == 1);
  const Surface flat{{{0, 0, 0}, {4, 0, 0}, {0, 4, 0}, {1, -3, 0}}, {{0, 1, 2}, {1, 0, 3}}};
  CHECK(count(flat.mesh(), Kind::crossing) == 0);
}

TEST_CASE("what is refused as a mesh") {
  const auto refused = [](const Surface& s) {
    return std::holds_alternative<Refusal>(Mesh::make(s.vertices, s.triangles));
  };
  CHECK(refused({}));
  CHECK(refused({{{0, 0, 0}, {1, 0, 0}, {2, 0, 0}}, {{0, 1, 2}}}));
  CHECK(refused({{{0, 0, 0}, {1, 0, 0}, {0, 1, 0}}, {{0, 1, 3}}}));
  CHECK(refused({{{0, 0, 0}, {1, 0, 0}, {0, 1, 0}}, {{0, 1, -1}}}));
  CHECK(refused({{{0, 0, 0}, {1, 0, 0}, {0, 1, std::nan("")}}, {{0, 1, 2}}}));
  CHECK(refused({{{0, 0, 0}, {1, 0, 0}, {0, 100001, 0}}, {{0, 1, 2}}}));
  CHECK_FALSE(refused({{{0, 0, 0}, {1, 0, 0}, {0, 1, 0}}, {{0, 1, 2}}}));
}

TEST_CASE("inside and outside of a torus and of a box, also on lines through edges and corners") {
  const Mesh torus = torus_surface(10, 3, 120, 90).mesh();
  Random random(21);
  int inside = 0;
  for (int i = 0; i < 20000; ++i) {
    const Vec3 p{uniform(random, -14, 14), uniform(random, -14, 14), uniform(random, -4, 4)};
    const double off = std::hypot(std::hypot(p.x, p.y) - 10, p.z) - 3;
    if (std::abs(off) < 0.03) continue;  // the polygons' sagitta
    if (off < 0) ++inside;
    if (torus.contains(p) != (off < 0)) FAIL_CHECK("at ", p.x, " ", p.y, " ", p.z);
  }
  CHECK(inside > 4000);
  // A lattice whose lines run through corners, edges and along faces.
  const Mesh box = box_surface({4, 4, 4}).mesh();
  int wrong = 0;
  for (int x = -1; x <= 9; ++x) {
    for (int y = -1; y <= 9; ++y) {
      for (int z = -1; z <= 9; ++z) {
        if (x == 0 || x == 8 || y == 0 || y == 8 || z == 0 || z == 8) continue;
        const bool want = x > 0 && x < 8 && y > 0 && y < 8 && z > 0 && z < 8;
        if (box.contains({0.5 * x, 0.5 * y, 0.5 * z}) != want) ++wrong;
      }
    }
  }
  // Beside the box at the height of its faces.
  for (const double y : {0.0, 2.0, 4.0}) {
    for (const double z : {0.0, 2.0, 4.0}) {
      if (box.contains({-1, y, z}) || box.contains({5, y, z})) ++wrong;
    }
  }
  CHECK(wrong == 0);
}
