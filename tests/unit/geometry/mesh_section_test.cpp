// Cuts and shadows of meshes, against areas known by hand and against the same shapes as prisms.
#include "cuts.h"
#include "geometry/section.h"
#include "mesh_shapes.h"
#include "support/check_mm.h"

#include <cmath>
#include <doctest/doctest.h>
#include <numbers>
#include <random>

using namespace baywright::geometry;
using namespace baywright::geometry::cuts;
using namespace baywright::geometry::scenes;
using baywright::test::check_mm;

namespace {

const double root2 = std::sqrt(2.0);
const double root3 = std::sqrt(3.0);

Vec3 random_direction(std::mt19937_64& random) {
  std::normal_distribution<double> normal;
  return glm::normalize(Vec3{normal(random), normal(random), normal(random)});
}

Pose random_pose(std::mt19937_64& random) {
  std::uniform_real_distribution<double> angle(0, 360);
  return {rotation(random_direction(random), angle(random)), 100.0 * random_direction(random)};
}

Solid cube() {
  return box_surface({20, 20, 20}).solid();
}

/// An L, all of which its first corner sees, so that a fan about it makes the caps.
const Outline ell{{2, 2}, {2, 6}, {0, 6}, {0, 0}, {6, 0}, {6, 2}};

Solid ell_mesh() {
  return prism_surface(ell, 5).solid();
}
Solid ell_prism() {
  return std::get<Solid>(Solid::prism(ell, {}, 5));
}

/// A cube of 20 mm about the z axis, on z = 0, with a bore of `corners` (a multiple of eight) and radius 5.
Surface bored_cube(int corners) {
  Surface made;
  const auto turn = [](double share) { return 2.0 * std::numbers::pi * share + 0.25 * std::numbers::pi; };
  for (const double z : {0.0, 20.0}) {
    for (int i = 0; i < 4; ++i)
      made.vertices.emplace_back(std::round(14.0 * std::cos(turn(i / 4.0))), std::round(14.0 * std::sin(turn(i / 4.0))),
                                 z);
    for (int i = 0; i < corners; ++i)
      made.vertices.emplace_back(5.0 * std::cos(turn(double(i) / corners)), 5.0 * std::sin(turn(double(i) / corners)),
                                 z);
  }
  const int top = 4 + corners;
  const auto add = [&](int a, int b, int c) { made.triangles.push_back({a, b, c}); };
  for (int i = 0; i < corners; ++i) {
    const int near = (i * 8 / corners + 1) / 2 % 4;  // the corner of the cube that is nearest
    const int p = 4 + i;
    const int q = 4 + (i + 1) % corners;
    add(near, p, q), add(top + near, top + q, top + p);
    add(p, top + p, top + q), add(p, top + q, q);
  }
  for (int i = 0; i < 4; ++i) {
    const int next = (i + 1) % 4;
    const int middle = 4 + (2 * i + 1) * corners / 8;
    add(i, middle, next), add(top + i, top + next, top + middle);
    add(i, next, top + next), add(i, top + next, top + i);
  }
  return made;
}

/// By the area of a regular polygon, 1/2 n r² sin(2 pi / n).
double bore_area(int corners) {
  return 12.5 * corners * std::sin(2.0 * std::numbers::pi / corners);
}

}  // namespace

TEST_CASE("a cube as a mesh, at every height and through its corners") {
  const Solid solid = cube();
  for (const double z : {1e-6, 0.1, 10.0, 13.37, 20 - 1e-6}) check_mm(area_cut(solid, {3, 4, z}, {0, 0, 1}), 400, 1e-9);
  CHECK(section({solid, {}}, facing_plane({0, 0, 7}, {0, 0, 1})).front().outline.size() ==
        4);                                                               // no corner of diagonals
  check_mm(area_cut(solid, {0, 0, 0}, {1, 0, -1}), 400 * root2, 1e-9);    // through two opposite edges
  check_mm(area_cut(solid, {10, 10, 10}, {1, 1, 1}), 300 * root3, 1e-9);  // a regular hexagon of side 10 sqrt(2)
  check_mm(area_cut(solid, {20, 0, 0}, {1, 1, 1}), 200 * root3, 1e-9);    // a regular triangle of side 20 sqrt(2)
  check_mm(area_cut(solid, {20, 0, 0}, {-1, -1, -1}), 200 * root3, 1e-9);
  // A sphere of which a ring of 32 corners lies in the plane: a regular polygon, 1/2 n r² sin(2 pi / n).
  const Solid ball = sphere_surface(10, 3).solid();
  for (const Vec3& normal : {Vec3{0, 0, 1}, Vec3{0, 0, -1}, Vec3{0, 1, 0}, Vec3{-1, 0, 0}}) {
    CHECK(section({ball, {}}, facing_plane({0, 0, 0}, normal)).front().outline.size() == 32);
    check_mm(area_cut(ball, {0, 0, 0}, normal), 1600 * std::sin(std::numbers::pi / 16), 1e-9);
  }
}

TEST_CASE("a face of a mesh in the plane counts when the solid is behind the plane, in any pose") {
  std::mt19937_64 random(20240711);
  for (int round = 0; round < 50; ++round) {
    const Pose pose = round == 0 ? Pose{} : random_pose(random);
    const auto cut = [&pose](const Solid& solid, const Vec3& point, const Vec3& normal) {
      return section({solid, pose}, facing_plane(pose.point(point), pose.direction(normal)));
    };
    for (int axis = 0; axis < 3; ++axis) {
      Vec3 out{0.0};
      out[axis] = 1.0;
      check_mm(area_of(cut(cube(), {20, 20, 20}, out)), 400, 1e-9);
      CHECK(cut(cube(), {20, 20, 20}, -out).empty());
      CHECK(cut(cube(), {0, 0, 0}, out).empty());
      check_mm(area_of(cut(cube(), {0, 0, 0}, -out)), 400, 1e-9);
    }
    // The step of an L: its whole foot from above, the arm that goes on from below.
    check_mm(area_of(cut(ell_mesh(), {0, 2, 0}, {0, 1, 0})), 30, 1e-9);
    check_mm(area_of(cut(ell_mesh(), {0, 2, 0}, {0, -1, 0})), 10, 1e-9);
    // The tip of a notch in the plane splits nothing, from either side.
    const Solid notched = prism_surface({{5, 5}, {0, 10}, {0, 0}, {10, 0}, {10, 10}}, 4).solid();
    for (const double sign : {1.0, -1.0}) {
      CHECK(cut(notched, {0, 5, 0}, {0, sign, 0}).size() == 1);
      check_mm(area_of(cut(notched, {0, 5, 0}, {0, sign, 0})), 40, 1e-9);
    }
  }
}

TEST_CASE("a plane that only touches a mesh cuts nothing") {
  CHECK(section({cube(), {}}, facing_plane({20, 0, 0}, {1, -1, 0})).empty());   // an edge
  CHECK(section({cube(), {}}, facing_plane({20, 0, 0}, {-1, 1, 0})).empty());   // seen from the other side
  CHECK(section({cube(), {}}, facing_plane({20, 20, 20}, {1, 1, 1})).empty());  // a corner
  CHECK(section({cube(), {}}, facing_plane({20, 20, 20}, {-1, -1, -1})).empty());
  CHECK(section({cube(), {}}, facing_plane({0, 0, 20.001}, {0, 0, 1})).empty());
  // The ridge of a roof level with the top of a tower beside it: only the tower is cut.
  Surface village = box_surface({10, 10, 10});
  village.add({{{20, 0, 0}, {30, 0, 0}, {25, 0, 10}, {20, 10, 0}, {30, 10, 0}, {25, 10, 10}},
               {{0, 1, 2}, {3, 5, 4}, {0, 3, 4}, {0, 4, 1}, {1, 4, 5}, {1, 5, 2}, {2, 5, 3}, {2, 3, 0}}});
  REQUIRE(village.mesh().closed());
  const auto tops = section({village.solid(), {}}, facing_plane({0, 0, 10}, {0, 0, 1}));
  CHECK(tops.size() == 1);
  check_mm(area_of(tops), 100, 1e-9);
}

TEST_CASE("a cube with a bore as a mesh") {
  for (const int corners : {8, 64, 200}) {
    const Solid solid = bored_cube(corners).solid();
    REQUIRE(solid.mesh()->closed());
    for (const double z : {0.5, 20.0}) {
      const auto level = section({solid, {}}, facing_plane({0, 0, z}, {0, 0, 1}));
      REQUIRE(level.size() == 1);
      REQUIRE(level.front().holes.size() == 1);
      CHECK(level.front().holes.front().size() == static_cast<std::size_t>(corners));
      check_mm(area_of(level), 400 - bore_area(corners), 1e-9);
    }
    // Through the axis and through corners of the bore: two walls.
    const auto walls = section({solid, {}}, facing_plane({0, 0, 0}, {1, -1, 0}));
    CHECK(walls.size() == 2);
    check_mm(area_of(walls), 20 * (20 * root2 - 10), 1e-9);
    const auto through = shadow({solid, {}}, facing_plane({0, 0, 0}, {0, 0, 1}));
    REQUIRE(through.size() == 1);
    CHECK(through.front().holes.size() == 1);
    check_mm(area_of(through), 400 - bore_area(corners), 1e-6 * 111);  // a grid of 1e-6 mm along the outline
  }
}

TEST_CASE("a body within a hollow body is a region of its own") {
  Surface nest = box_surface({20, 20, 20});
  nest.add(box_surface({10, 10, 10}).inverted(), {5, 5, 5});
  nest.add(box_surface({4, 4, 4}), {8, 8, 8});
  REQUIRE(nest.mesh().closed());
  const auto cut = section({nest.solid(), {}}, facing_plane({0, 0, 10}, {0, 0, 1}));
  CHECK(cut.size() == 2);
  check_mm(area_of(cut), 400 - 100 + 16, 1e-9);
}

TEST_CASE("a sweep of planes through a mesh adds up to its volume") {
  std::mt19937_64 random(20240712);
  // The cube's volume is that of its cap; a torus of 24 by 16 corners is a ring of prisms cut at the mitre, so by
  // Guldin for polygons its volume is the area of its section, 1/2 n r² sin(2 pi / n), along the polygon of its
  // centre's path.
  const double torus_volume = 8.0 * 4.0 * std::sin(std::numbers::pi / 8) * 24 * 2 * 6 *
                              std::sin(std::numbers::pi / 24) * std::cos(std::numbers::pi / 24);
  const std::pair<Solid, double> solids[] = {{bored_cube(64).solid(), 20 * (400 - bore_area(64))},
                                             {torus_surface(6, 2, 24, 16).solid(), torus_volume},
                                             {ell_mesh(), 100.0}};
  for (const auto& [solid, volume] : solids) {
    for (int round = 0; round < 3; ++round) {
      const Placed placed{solid, random_pose(random)};
      const Vec3 normal = random_direction(random);
      const Bounds around = bounds(placed);
      const double reach = 0.5 * glm::length(around.high - around.low);
      const int slices = 1000;
      double sum = 0.0;
      for (int i = 0; i < slices; ++i) {
        const double at = reach * (2.0 * (i + 0.5) / slices - 1.0);
        sum += area_of(section(placed, facing_plane(0.5 * (around.low + around.high) + at * normal, normal)));
      }
      // Between its corners the area is a parabola: a midpoint sum is off by a share of a slice squared on each.
      check_mm(sum * 2.0 * reach / slices / volume, 1.0, 2e-5);
    }
  }
}

TEST_CASE("mesh and prism are cut alike, and cast the same shadow") {
  std::mt19937_64 random(20240713);
  std::uniform_real_distribution<double> unit(0, 1);
  const double levels[] = {0, 2, 6};
  int none = 0;
  int more = 0;
  for (int round = 0; round < 600; ++round) {
    const Pose pose = random_pose(random);
    Vec3 point{6 * unit(random), 6 * unit(random), 5 * unit(random)};
    Vec3 normal = random_direction(random);
    if (round % 3 == 0) {  // in a face of the L
      const std::size_t axis = static_cast<std::size_t>(round / 3) % 2;
      normal = Vec3{0.0};
      normal[static_cast<int>(axis)] = round % 2 == 0 ? 1 : -1;
      point = Vec3{levels[round / 6 % 3]};
    } else if (round % 3 == 1) {  // through corners
      point = {ell[static_cast<std::size_t>(round) % ell.size()], round % 2 == 0 ? 0.0 : 5.0};
    }
    const View view = facing_plane(pose.point(point), pose.direction(normal));
    const auto of_mesh = section({ell_mesh(), pose}, view);
    const auto of_prism = section({ell_prism(), pose}, view);
    CHECK(of_mesh.size() == of_prism.size());
    check_mm(area_of(of_mesh), area_of(of_prism), 1e-9 * std::max(1.0, area_of(of_prism)));
    none += of_mesh.empty();
    more += of_mesh.size() > 1;
    // On a grid of 1e-6 mm; no outline here is longer than 40 mm.
    check_mm(area_of(shadow({ell_mesh(), pose}, view)), area_of(shadow({ell_prism(), pose}, view)), 4e-5);
  }
  CHECK(none > 60);
  CHECK(none < 300);
  CHECK(more > 20);
}

TEST_CASE("a mesh without an inside has lines where it is cut, and a shadow") {
  Surface open = box_surface({20, 20, 20});
  std::erase_if(open.triangles, [&](const Mesh::Triangle& t) {
    return std::all_of(t.begin(), t.end(), [&](int i) { return open.vertices[static_cast<std::size_t>(i)].z == 20; });
  });
  const Placed bowl{open.solid(), {}};
  REQUIRE(!bowl.solid.mesh()->closed());
  const View level = facing_plane({0, 0, 5}, {0, 0, 1});
  CHECK(section(bowl, level).empty());
  double length = 0.0;
  for (const auto& [p, q] : cut_lines(bowl, level)) length += glm::distance(p, q);
  check_mm(length, 80, 1e-9);
  CHECK(cut_lines({cube(), {}}, level).empty());
  check_mm(area_of(shadow(bowl, level)), 400, 1e-4);
  check_mm(area_of(shadow(bowl, facing_plane({0, 0, 0}, {1, 1, 1}))), 400 * root3, 1e-4);
}
