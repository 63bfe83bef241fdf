// Gaps of meshes: against closed forms, against the same shape as a prism, and against what must hold of any gap.
#include "geometry/gap.h"
#include "geometry/travel.h"
#include "support/check_mm.h"
#include "unit/geometry/gap_scenes.h"
#include "unit/geometry/mesh_shapes.h"

#include <algorithm>
#include <doctest/doctest.h>

using namespace baywright::geometry;
using namespace baywright::geometry::scenes;
using baywright::test::check_mm;

namespace {

Pose at(double x, double y, double z) {
  return {Mat3(1.0), {x, y, z}};
}

/// The points are as far apart as the gap says, along its direction.
void check_points(const Gap& found) {
  check_mm(found.on_b - found.on_a, found.direction * found.mm, 2e-9);
  check_mm(glm::length(found.direction), 1.0, 1e-12);
}

void check_same(const Gap& one, const Gap& swapped) {
  CHECK(one.relation == swapped.relation);
  check_mm(one.mm, swapped.mm, 1e-11);
}

/// A bumpy but closed lump: a sphere with its corners moved in and out.
Surface lump(Random& random, double radius, int times) {
  Surface made = sphere_surface(1.0, times);
  for (Vec3& v : made.vertices) v *= radius * uniform(random, 0.7, 1.0);
  return made;
}

/// A channel along y: 10 wide, walls 2 thick, 12 high on a floor 2 thick, 20 long, as one closed mesh.
Surface channel() {
  const Outline u{{0, 0}, {14, 0}, {14, 12}, {12, 12}, {12, 2}, {2, 2}, {2, 12}, {0, 12}};
  Surface made;
  for (const double y : {0.0, 20.0}) {
    for (const Vec2& p : u) made.vertices.push_back({p.x, y, p.y});
  }
  for (const Mesh::Triangle& t :
       std::vector<Mesh::Triangle>{{0, 1, 4}, {0, 4, 5}, {1, 2, 3}, {1, 3, 4}, {0, 5, 6}, {0, 6, 7}}) {
    made.triangles.push_back(t);
    made.triangles.push_back({t[0] + 8, t[2] + 8, t[1] + 8});
  }
  for (int i = 0; i < 8; ++i) {
    const int j = (i + 1) % 8;
    made.triangles.push_back({i, i + 8, j + 8});
    made.triangles.push_back({i, j + 8, j});
  }
  return made;
}

}  // namespace

TEST_CASE("a cube mesh against a box, from touching to far, both signs") {
  const Solid mesh = box_surface({10, 10, 10}).solid();
  Random random(31);
  for (const double gap_mm : {1e-12, 1e-10, 5e-10, 2e-9, 1e-8, 1e-6, 1e-3, 1.0, 100.0}) {
    for (const double sign : {1.0, -1.0}) {
      if (sign < 0 && gap_mm > 1.0) continue;
      const Pose world = any_pose(random, 100);
      const Placed a{mesh, world};
      for (const Solid& other : {box(4, 4, 4), box_surface({4, 4, 4}).solid()}) {
        const Placed b{other, world.after(at(3, 2.5, 10 + sign * gap_mm))};
        const Gap found = gap(a, b);
        CAPTURE(gap_mm * sign);
        check_mm(found.mm, sign * gap_mm, 1e-9);
        if (gap_mm >= 2e-9) {
          CHECK(found.relation == (sign > 0 ? Relation::apart : Relation::overlapping));
          CHECK(found.error <= 2e-9);
        }
        if (gap_mm <= 5e-10) CHECK(found.relation == Relation::undecided);
        if (gap_mm > 1e-8) {
          check_mm(found.direction, world.direction({0, 0, 1}), 1e-6);
          check_points(found);
        }
        check_same(found, gap(b, a));
      }
    }
  }
}

TEST_CASE("spheres of triangles: between the gap of the balls and that less what the chords leave") {
  const Surface sphere = sphere_surface(10, 4);
  const Solid mesh = sphere.solid();
  // Corners are on the sphere; the nearest face is no farther within than the longest edge allows.
  double longest = 0;
  for (const Mesh::Triangle& t : sphere.triangles) {
    longest = std::max(longest, glm::distance(sphere.vertices[static_cast<std::size_t>(t[0])],
                                              sphere.vertices[static_cast<std::size_t>(t[1])]));
  }
  const double sagitta = 10 - std::sqrt(100 - longest * longest / 3);
  Random random(32);
  for (int round = 0; round < 40; ++round) {
    const Pose a = any_pose(random, 50);
    const Vec3 d = any_direction(random);
    const double want = uniform(random, 0.01, 5);
    const Gap found = gap({mesh, a}, {mesh, {any_turn(random), a.shift + d * (20 + want)}});
    CHECK(found.relation == Relation::apart);
    CHECK(found.mm >= want - 1e-9);
    CHECK(found.mm <= want + 2.5 * sagitta);
    CHECK(found.error <= 1e-9);
    check_points(found);
  }
}

TEST_CASE("a mesh has the gap of the prism that it is equal to") {
  Random random(33);
  int apart = 0;
  int overlapping = 0;
  int exact = 0;
  double deeper = 0;
  for (int round = 0; round < 3000; ++round) {
    Outline outline;
    const int corners = 3 + static_cast<int>(random() % 6);
    const double size = uniform(random, 2, 15);
    for (int i = 0; i < corners; ++i) {
      const double angle = 2 * std::numbers::pi * (i + uniform(random, 0.0, 0.8)) / corners;
      outline.push_back({1.3 * size * std::cos(angle), 0.7 * size * std::sin(angle)});
    }
    const double height = uniform(random, 0.5, 30);
    const Placed solid{prism(outline, {}, height), any_pose(random, 14)};
    const Placed mesh{prism_surface(outline, height).solid(), solid.pose};
    const Solid other = any_convex(random);
    Placed beside{other, any_pose(random, 14)};
    const Gap want = gap(solid, beside);
    if (round % 2 == 0 && other.diameter() == 0) {
      beside = {prism_surface(other.outline(), other.height()).solid(), beside.pose};
    }
    const Gap found = gap(mesh, beside);
    CHECK(found.relation == want.relation);
    if (want.relation == Relation::apart) {
      ++apart;
      check_mm(found.mm, want.mm, 1e-9);
      CHECK(found.error <= 1e-9);
      check_points(found);
    } else if (want.relation == Relation::overlapping) {
      ++overlapping;
      CHECK(found.mm <= want.mm + 1e-8);
      if (found.bound == Bound::exact) {
        ++exact;
        check_mm(found.mm, want.mm, 1e-8);
      }
      deeper = std::max(deeper, want.mm - found.mm);
      // The way out is one.
      const Gap out = gap(mesh, shifted(beside, found.direction * (-found.mm + 1e-6)));
      CHECK(out.mm >= -2e-9);
    }
    check_same(found, gap(beside, mesh));
  }
  CAPTURE(apart);
  CAPTURE(overlapping);
  CAPTURE(exact);
  CAPTURE(deeper);
  CHECK(apart > 900);
  CHECK(overlapping > 900);
  CHECK(exact > 20);
}

TEST_CASE("aligned and coincident solids overlap though no surface passes through the other") {
  const Solid mesh = box_surface({10, 10, 10}).solid();
  for (const Solid& other : {box(10, 10, 10), box_surface({10, 10, 10}).solid()}) {
    const Gap half = gap({mesh, at(0, 0, 0)}, {other, at(4, 0, 0)});
    CHECK(half.relation == Relation::overlapping);
    check_mm(half.mm, -6, 1e-8);
    const Gap same = gap({mesh, at(0, 0, 0)}, {other, at(0, 0, 0)});
    CHECK(same.relation == Relation::overlapping);
    check_mm(same.mm, -10, 1e-8);
    const Gap barely = gap({mesh, at(0, 0, 0)}, {other, at(10 - 1e-7, 0, 0)});
    CHECK(barely.relation == Relation::overlapping);
    check_mm(barely.mm, -1e-7, 5e-9);
    CHECK(gap({mesh, at(0, 0, 0)}, {other, at(10, 0, 0)}).relation == Relation::undecided);
    CHECK(gap({mesh, at(0, 0, 0)}, {other, at(10, 10, 0)}).relation == Relation::undecided);
    CHECK(gap({mesh, at(0, 0, 0)}, {other, at(10, 10, 10)}).relation == Relation::undecided);
  }
  // A slab whose face runs along the grid lines of the other.
  Surface grid = torus_surface(10, 3, 12, 12);
  CHECK(gap({grid.solid(), at(0, 0, 0)}, {box(40, 40, 20), at(-20, -20, 0)}).relation == Relation::overlapping);
}

TEST_CASE("what is held overlaps, what lies in a cavity does not") {
  Surface hollow = box_surface({20, 20, 20});
  hollow.add(box_surface({10, 10, 10}).inverted(), {5, 5, 5});
  const Placed shell{hollow.solid(), at(0, 0, 0)};
  for (const Solid& small : {box(2, 2, 2), cylinder(2, 2), tube(2, 1, 2), box_surface({2, 2, 2}).solid()}) {
    const Gap free = gap(shell, {small, at(7, 7, 7)});
    CHECK(free.relation == Relation::apart);
    CHECK(free.mm > 0.9);
    const Gap held = gap(shell, {small, at(2, 9, 9)});
    CHECK(held.relation == Relation::overlapping);
    CHECK(held.mm <= -2.9);  // from x = 2 out through the face x = 0 it needs at least 3
    CHECK(held.mm >= -4.1);
    CHECK(gap({small, at(2, 9, 9)}, shell).relation == Relation::overlapping);
    const Placed block{box(60, 60, 60), at(-30, -30, -30)};
    CHECK(gap(block, {box_surface({2, 2, 2}).solid(), at(0, 0, 0)}).relation == Relation::overlapping);
  }
  // A mesh in a mesh, and one around the whole shell.
  const Placed around{box_surface({40, 40, 40}).solid(), at(-10, -10, -10)};
  const Gap within = gap(around, shell);
  CHECK(within.relation == Relation::overlapping);
  check_mm(within.mm, -30, 1e-8);
}

TEST_CASE("a way out of a channel is sideways or up, not through the floor") {
  const Placed u{channel().solid(), at(0, 0, 0)};
  // A bar in the channel that stands 0.4 into one wall: out by 0.4 the other way.
  const Gap side = gap(u, {box(4, 10, 6), at(1.6, 5, 3)});
  CHECK(side.relation == Relation::overlapping);
  check_mm(side.mm, -0.4, 1e-8);
  check_mm(side.direction, {1, 0, 0}, 1e-9);
  // Too wide for the channel by 1 on each side: up, from 3 to 12.
  const Gap wide = gap(u, {box_surface({12, 10, 6}).solid(), at(1, 5, 11)});
  CHECK(wide.relation == Relation::overlapping);
  check_mm(wide.mm, -1, 1e-8);
  const Gap floor = gap(u, {cylinder(4, 6), at(7, 10, 1.75)});
  check_mm(floor.mm, -0.25, 1e-8);
  const Gap clear = gap(u, {box(4, 10, 6), at(3, 5, 2.5)});
  CHECK(clear.relation == Relation::apart);
  check_mm(clear.mm, 0.5, 1e-9);
  check_mm(u.solid.volume(), 14 * 12 * 20 - 10 * 10 * 20, 1e-9);
}

TEST_CASE("an open mesh is a surface: undecided where the boxes meet, else like any") {
  Surface cup = box_surface({10, 10, 10});
  // Without its top.
  std::erase_if(cup.triangles, [&](const Mesh::Triangle& t) {
    return std::all_of(t.begin(), t.end(), [&](int i) { return cup.vertices[static_cast<std::size_t>(i)].z == 10; });
  });
  const Placed open{cup.solid(), {rotation({0, 0, 1}, 45), {0, 0, 0}}};
  const auto beside = [](double x, double y, double z) { return Placed{box(1, 1, 1), at(x, y, z)}; };
  const Gap inside = gap(open, beside(-0.5, 7, 4));
  CHECK(inside.relation == Relation::undecided);
  CHECK(inside.bound == Bound::surface);
  CHECK(inside.mm > 2.0);
  const Gap corner = gap(open, beside(6, 1, 5));  // in the world box, not in the mesh's own
  CHECK(corner.relation == Relation::apart);
  CHECK(corner.bound == Bound::exact);
  const Gap through = gap(open, beside(-0.5, -0.5, 5));
  CHECK(through.relation == Relation::overlapping);
  const Gap around = gap(open, {box(60, 60, 60), at(-30, -30, -30)});
  CHECK(around.relation == Relation::overlapping);
}

TEST_CASE("lumps: symmetric, moved as one the same, one millimetre a millimetre") {
  Random random(35);
  int apart = 0;
  int overlapping = 0;
  for (int round = 0; round < 120; ++round) {
    const Surface surface_a = lump(random, 10, 2);
    const Surface surface_b = lump(random, 8, 2);
    const Placed a{surface_a.solid(), any_pose(random, 9)};
    const Placed b{surface_b.solid(), any_pose(random, 9)};
    const Gap found = gap(a, b);
    check_same(found, gap(b, a));
    const Pose motion = any_pose(random, 100);
    const Gap moved_gap = gap(moved(a, motion), moved(b, motion));
    CHECK(moved_gap.relation == found.relation);
    if (found.relation == Relation::apart) {
      ++apart;
      check_mm(moved_gap.mm, found.mm, 1e-9);
      check_mm(moved_gap.on_a, motion.point(found.on_a), 1e-6);
      const Vec3 step = any_direction(random) * uniform(random, 0, 0.9 * found.mm);
      const Gap stepped = gap(a, shifted(b, step));
      CHECK(std::abs(stepped.mm - found.mm) <= glm::length(step) + 1e-9);
      check_points(found);
    } else {
      ++overlapping;
      const Gap out = gap(a, shifted(b, found.direction * (-found.mm + 1e-6)));
      CHECK(out.mm >= -2e-9);
      CHECK(out.relation != Relation::overlapping);
    }
  }
  CHECK(apart > 20);
  CHECK(overlapping > 20);
}

TEST_CASE("shrinking a star-shaped lump about its middle never makes an overlap") {
  Random random(36);
  int apart = 0;
  for (int round = 0; round < 60; ++round) {
    const Surface surface = lump(random, 9, 2);
    const Placed a{lump(random, 9, 2).solid(), any_pose(random, 9)};
    const Pose pose = any_pose(random, 9);
    double last = -1e9;
    for (const double factor : {1.0, 0.95, 0.7, 0.3}) {
      Surface smaller = surface;
      for (Vec3& v : smaller.vertices) v *= factor;
      const Gap found = gap(a, {smaller.solid(), pose});
      if (last > 0) {
        ++apart;
        CHECK(found.relation == Relation::apart);
        CHECK(found.mm >= last - 1e-9);
      }
      last = found.relation == Relation::apart ? found.mm : -1;
    }
  }
  CHECK(apart > 20);
}

TEST_CASE("corners, edges and faces that all but touch") {
  Random random(37);
  const Solid mesh = box_surface({10, 10, 10}).solid();
  const Mat3 on_corner = rotation(glm::normalize(Vec3{1, -1, 0}), 54.735610317245346);
  const Mat3 on_edge = rotation({1, 0, 0}, 45);
  for (const double gap_mm : {1e-16, 1e-13, 1e-10, 3e-9, 1e-8, 1e-7, 1e-6}) {
    for (const Mat3& turn : {Mat3(1.0), on_corner, on_edge, rotation({1, 0, 0}, 1e-7), rotation({1, 0, 0}, 1e-10)}) {
      Placed b{mesh, {turn, {0, 0, 0}}};
      b.pose.shift = {5 - 1.5, 5 - 2.5, 10 + gap_mm - bounds(b).low.z};
      if (turn[1].z != 0 && std::abs(turn[1].z) < 1e-6) b.pose.shift.y = 2.5;
      const Pose world = any_pose(random, 100);
      const Gap found = gap({mesh, world}, moved(b, world));
      CAPTURE(gap_mm);
      check_mm(found.mm, gap_mm, 1e-9);
      if (gap_mm >= 3e-9) CHECK(found.relation == Relation::apart);
      if (gap_mm <= 1e-10) CHECK(found.relation == Relation::undecided);
    }
  }
}

TEST_CASE("slivers and parallel edges keep the distance to 1e-9") {
  Random random(38);
  for (int round = 0; round < 500; ++round) {
    // Two triangles with edges of 100 mm, almost parallel, and heights down to 1e-6: distance 3 between lines in
    // parallel planes, whatever the turn within them.
    const double height_a = std::pow(10, uniform(random, -6, 1));
    const double height_b = std::pow(10, uniform(random, -6, 1));
    const double angle = std::pow(10, uniform(random, -12, 0));
    const Surface a{{{-50, 0, 0}, {50, 0, 0}, {0, -height_a, -height_a}}, {{0, 1, 2}}};
    const Surface b{{{-50, 0, 0}, {50, 0, 0}, {0, height_b, height_b}}, {{0, 1, 2}}};
    const Pose world = any_pose(random, 100);
    const Placed low{a.solid(), world};
    const Placed high{b.solid(), world.after({rotation({0, 0, 1}, angle), {uniform(random, -20, 20), 0, 3}})};
    check_mm(gap(low, high).mm, 3.0, 1e-9);
  }
}

TEST_CASE("figures that are no numbers leave a mesh undecided") {
  const Solid mesh = box_surface({10, 10, 10}).solid();
  const double nan = std::nan("");
  for (const Solid& other : {box(1, 1, 1), tube(4, 2, 3), mesh}) {
    const Gap found = gap({mesh, at(0, 0, 0)}, {other, at(nan, 0, 0)});
    CHECK(found.relation == Relation::undecided);
    CHECK_FALSE(found.error < 1e9);
    CHECK_FALSE(travel({{Placed{mesh, at(nan, 0, 0)}}}, {{Placed{other, at(0, 0, 0)}}}, {1, 0, 0}).meets);
  }
}

TEST_CASE("a ring about a mesh, clear of it and in it") {
  // A bar of 6 x 6 in a bore of 10: its corners are at 3 sqrt(2), so 5 - 4.2426 from the bore.
  const Placed bar{box_surface({6, 6, 20}).solid(), at(-3, -3, 0)};
  const double clear = 5 - 3 * std::sqrt(2.0);
  const Gap inside = gap(bar, {tube(16, 10, 4), at(0, 0, 8)});
  CHECK(inside.relation == Relation::apart);
  check_mm(inside.mm, clear, 1e-9);
  const Gap aside = gap({tube(16, 10, 4), at(0.5 / std::sqrt(2.0), 0.5 / std::sqrt(2.0), 8)}, bar);
  check_mm(aside.mm, clear - 0.5, 1e-9);
  const Gap into = gap(bar, {tube(16, 10, 4), at(1, 1, 8)});
  CHECK(into.relation == Relation::overlapping);
  const Gap out = gap(bar, shifted({tube(16, 10, 4), at(1, 1, 8)}, into.direction * (-into.mm + 1e-6)));
  CHECK(out.relation != Relation::overlapping);
}
