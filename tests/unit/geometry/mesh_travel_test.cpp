// First touches of meshes along a line: by hand, and against the same shape as a prism.
#include "geometry/travel.h"
#include "support/check_mm.h"
#include "unit/geometry/gap_scenes.h"
#include "unit/geometry/mesh_shapes.h"

#include <doctest/doctest.h>

using namespace baywright::geometry;
using namespace baywright::geometry::scenes;
using baywright::test::check_mm;

namespace {

Travel one(const Placed& moving, const Placed& fixed, const Vec3& d) {
  return travel({&moving, 1}, {&fixed, 1}, d);
}

Pose at(double x, double y, double z) {
  return {Mat3(1.0), {x, y, z}};
}

}  // namespace

TEST_CASE("cubes of triangles travel until they meet, and do not meet where they only graze") {
  const Solid cube = box_surface({10, 10, 10}).solid();
  for (const Solid& other : {box(10, 10, 10), box_surface({10, 10, 10}).solid()}) {
    for (const bool mesh_moves : {true, false}) {
      const Solid& mover = mesh_moves ? cube : other;
      const Solid& stays = mesh_moves ? other : cube;
      const Placed fixed{stays, at(25, 0, 0)};
      const Travel met = one({mover, at(0, 0, 0)}, fixed, {1, 0, 0});
      CHECK(met.meets);
      check_mm(met.mm, 15, 1e-9);
      check_mm(met.on_fixed - met.on_moving, {15, 0, 0}, 1e-9);
      check_mm(one({mover, at(0, 3, 4)}, fixed, {1, 0, 0}).mm, 15, 1e-9);
      check_mm(one({mover, at(22, 3, 4)}, fixed, {1, 0, 0}).mm, -7, 1e-9);   // must back off
      check_mm(one({mover, at(50, 3, 4)}, fixed, {1, 0, 0}).mm, -35, 1e-9);  // from far behind
      CHECK_FALSE(one({mover, at(0, 10, 0)}, fixed, {1, 0, 0}).meets);
      CHECK_FALSE(one({mover, at(0, 10, 10)}, fixed, {1, 0, 0}).meets);
      CHECK_FALSE(one({mover, at(0, 30, 0)}, fixed, {1, 0, 0}).meets);
    }
  }
}

TEST_CASE("what is held by a mesh backs out of the whole of it, from a cavity too") {
  Surface hollow = box_surface({20, 20, 20});
  hollow.add(box_surface({10, 10, 10}).inverted(), {5, 5, 5});
  const Placed shell{hollow.solid(), at(0, 0, 0)};
  for (const Solid& small : {box(2, 2, 2), box_surface({2, 2, 2}).solid(), cylinder(2, 2), tube(2, 1, 2)}) {
    const Vec3 low = bounds(Placed{small, at(0, 0, 0)}).low;
    const Placed inside{small, {Mat3(1.0), Vec3{9, 9, 9} - low}};
    check_mm(one(inside, shell, {0, 0, 1}).mm, -11, 1e-9);
    check_mm(one(inside, shell, {-1, 0, 0}).mm, -11, 1e-8);
  }
}

TEST_CASE("a mesh travels as far as the prism that it is equal to") {
  Random random(41);
  int met = 0;
  int missed = 0;
  for (int round = 0; round < 1500; ++round) {
    const Solid shape = any_convex(random);
    if (shape.diameter() > 0) continue;
    const Pose pose = any_pose(random, 30);
    const Placed mesh{prism_surface(shape.outline(), shape.height()).solid(), pose};
    const Solid other = any_convex(random);
    Placed beside{other, any_pose(random, 30)};
    const Vec3 d = any_direction(random);
    const Travel want = one({shape, pose}, beside, d);
    const Travel back = one(beside, {shape, pose}, d);
    if (other.diameter() == 0 && round % 2 == 0) {
      beside = {prism_surface(other.outline(), other.height()).solid(), beside.pose};
    }
    const Travel found = one(mesh, beside, d);
    const Travel found_back = one(beside, mesh, d);
    CHECK(found.meets == want.meets);
    CHECK(found_back.meets == back.meets);
    if (!want.meets) ++missed;
    if (!want.meets || !found.meets || !back.meets || !found_back.meets) continue;
    ++met;
    check_mm(found.mm, want.mm, 1e-9 + found.error + want.error);
    check_mm(found_back.mm, back.mm, 1e-9 + found_back.error + back.error);
    CHECK(found.error < 1e-7);
    check_mm(found.on_fixed - found.on_moving, d * found.mm, 1e-7);
  }
  CAPTURE(met);
  CHECK(met > 200);
  CHECK(missed > 200);
}
