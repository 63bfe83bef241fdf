// Bounds, extreme points and face normals of single pieces.
#include "gap_scenes.h"
#include "support/check_mm.h"

#include <doctest/doctest.h>

namespace baywright::geometry {
namespace {

using namespace scenes;
using test::check_mm;

TEST_CASE("piece: bounds are tight for a leaning disc and a turned box") {
  // A disc whose axis leans by 30 degrees reaches r cos 30 sideways and r sin 30 up (by construction).
  const Solid coin = cylinder(20, 2);
  const Mat3 lean = rotation({0, 1, 0}, 30.0);
  const Bounds found = bounds(coin.pieces()[0], {lean, {1, 2, 3}});
  const double cosine = std::sqrt(3.0) / 2.0;
  check_mm(found.low, Vec3{1 - 10 * cosine, 2 - 10, 3 - 5}, 1e-12);
  check_mm(found.high, Vec3{1 + 10 * cosine + 1, 2 + 10, 3 + 5 + 2 * cosine}, 1e-12);
  const Bounds turned = bounds(box(4, 3, 1).pieces()[0], {rotation({0, 0, 1}, 90.0), {10, 0, 0}});
  check_mm(turned.low, Vec3{7, 0, 0}, 1e-12);
  check_mm(turned.high, Vec3{10, 4, 1}, 1e-12);
}

TEST_CASE("piece: no point lies beyond the farthest, and it is one of the piece") {
  Random random(8);
  for (int i = 0; i < 300; ++i) {
    const Solid solid = any_convex(random);
    const Piece& piece = solid.pieces()[0];
    const Pose pose = any_pose(random, 30.0);
    const Vec3 toward = any_direction(random) * uniform(random, 0.1, 10.0);
    const Vec3 found = farthest(piece, pose, toward);
    const Bounds around = bounds(piece, pose);
    const Vec3 axis = farthest(piece, pose, {1, 0, 0});
    check_mm(axis.x, around.high.x, 1e-12);
    for (int k = 0; k < 50; ++k) {
      const double z = uniform(random, 0.0, piece.height);
      Vec2 p;
      if (piece.base == Piece::Base::polygon) {
        const std::size_t j = random() % piece.corners.size();
        const double t = uniform(random, 0.0, 1.0);
        p = piece.corners[j] * t + piece.corners[(j + 1) % piece.corners.size()] * (1.0 - t);
      } else {
        const double angle = uniform(random, 0.0, 7.0);
        p = Vec2{std::cos(angle), std::sin(angle)} * piece.radius;
      }
      CHECK(glm::dot(pose.point({p, z}) - found, toward) <= 1e-12 * 100.0);
    }
    const Vec3 local = pose.inverse().point(found);
    CHECK(std::min(std::abs(local.z), std::abs(local.z - piece.height)) <= 1e-12);
  }
}

TEST_CASE("piece: face normals come as base, top, sides") {
  const std::vector<Vec3> found = face_normals(box(4, 3, 1).pieces()[0], {rotation({1, 0, 0}, 90.0), {5, 6, 7}});
  REQUIRE(found.size() == 6);
  check_mm(found[0], Vec3{0, 1, 0}, 1e-12);  // -z turned by 90 degrees about x
  check_mm(found[1], Vec3{0, -1, 0}, 1e-12);
  check_mm(found[2], Vec3{0, 0, -1}, 1e-12);  // the side along +x looks along -y
  CHECK(face_normals(cylinder(4, 5).pieces()[0], {}).size() == 2);
}

}  // namespace
}  // namespace baywright::geometry
