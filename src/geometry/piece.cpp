// Bounds, extreme points and face normals of one convex piece.
#include "geometry/solid.h"

#include <algorithm>
#include <cmath>

namespace baywright::geometry {

namespace {

/// Half of the world box of a disc about the local z axis: along a world axis i the disc reaches r * |(u_i, v_i)|, and
/// (u_i, v_i, w_i) is a unit row of the rotation.
Vec3 disc_reach(double radius, const Mat3& turn) {
  return {radius * std::hypot(turn[0].x, turn[1].x), radius * std::hypot(turn[0].y, turn[1].y),
          radius * std::hypot(turn[0].z, turn[1].z)};
}

}  // namespace

Bounds bounds(const Piece& piece, const Pose& pose) {
  Bounds box = Bounds::empty();
  const Vec3 up = pose.turn[2] * piece.height;
  if (piece.base == Piece::Base::polygon) {
    for (const Vec2& corner : piece.corners) {
      const Vec3 low = pose.point(Vec3{corner, 0.0});
      box.add(low);
      box.add(low + up);
    }
    return box;
  }
  const Vec3 reach = disc_reach(piece.radius, pose.turn);
  for (const Vec3& centre : {pose.shift, pose.shift + up}) {
    box.add(centre - reach);
    box.add(centre + reach);
  }
  return box;
}

Vec3 farthest(const Piece& piece, const Pose& pose, const Vec3& toward) {
  const Vec3 d = glm::transpose(pose.turn) * toward;
  const double z = d.z > 0.0 ? piece.height : 0.0;
  if (piece.base != Piece::Base::polygon) {
    const double length = std::hypot(d.x, d.y);
    const Vec2 rim = length > 0.0 ? Vec2{d.x, d.y} * (piece.radius / length) : Vec2{piece.radius, 0.0};
    return pose.point(Vec3{rim, z});
  }
  const auto along = [&](const Vec2& p) { return p.x * d.x + p.y * d.y; };
  const auto best = std::max_element(piece.corners.begin(), piece.corners.end(),
                                     [&](const Vec2& p, const Vec2& q) { return along(p) < along(q); });
  return pose.point(Vec3{best == piece.corners.end() ? Vec2{0.0} : *best, z});
}

std::vector<Vec3> face_normals(const Piece& piece, const Pose& pose) {
  std::vector<Vec3> normals{-pose.turn[2], pose.turn[2]};
  normals.reserve(2 + piece.corners.size());
  for (std::size_t i = 0; i < piece.corners.size(); ++i) {
    const Vec2 side = piece.corners[(i + 1) % piece.corners.size()] - piece.corners[i];
    const double length = std::hypot(side.x, side.y);
    if (!(length > 0.0)) continue;  // a piece never has such a side
    normals.push_back((pose.turn[0] * side.y - pose.turn[1] * side.x) / length);
  }
  return normals;
}

}  // namespace baywright::geometry
