#include "geometry/body.h"

#include <algorithm>

namespace baywright::geometry {

namespace {

/// Sides along the local axes, starting with either, as `Solid::box` makes them. Exact comparison on purpose: whatever
/// is off by a digit goes the general way.
bool axis_aligned(const std::vector<Vec2>& c) {
  if (c.size() != 4) return false;
  const bool first_along_x = c[0].y == c[1].y && c[1].x == c[2].x && c[2].y == c[3].y && c[3].x == c[0].x;
  const bool first_along_y = c[0].x == c[1].x && c[1].y == c[2].y && c[2].x == c[3].x && c[3].y == c[0].y;
  return first_along_x || first_along_y;
}

Vec3 middle_of(const Body& body) {
  return body.flat(body.middle) + body.w * body.half;
}

}  // namespace

Body::Body(const Piece& piece, const Pose& pose)
    : u(pose.turn[0]), v(pose.turn[1]), w(pose.turn[2]), half(0.5 * piece.height) {
  if (piece.base != Piece::Base::polygon || piece.corners.empty()) {
    radius = piece.radius;
    reach = std::hypot(radius, half);
    return;
  }
  corners = piece.corners.data();
  count = static_cast<int>(piece.corners.size());
  Vec2 low = corners[0];
  Vec2 high = corners[0];
  for (int i = 1; i < count; ++i) {
    low = {std::min(low.x, corners[i].x), std::min(low.y, corners[i].y)};
    high = {std::max(high.x, corners[i].x), std::max(high.y, corners[i].y)};
  }
  middle = 0.5 * (low + high);
  size = 0.5 * (high - low);
  base = axis_aligned(piece.corners) ? Base::rectangle : Base::polygon;
  reach = std::sqrt(size.x * size.x + size.y * size.y + half * half);
}

Pair::Pair(const Piece& piece_a, const Pose& pose_a, const Piece& piece_b, const Pose& pose_b)
    : a(piece_a, pose_a), b(piece_b, pose_b) {
  const Vec3 to_a = middle_of(a);
  origin = pose_a.shift + to_a;
  // The shifts first: where both are large and near each other their difference is exact.
  apart = (pose_b.shift - pose_a.shift) + (middle_of(b) - to_a);
  rounding = 2e-15 * (glm::length(origin) + glm::length(apart) + a.reach + b.reach);
}

}  // namespace baywright::geometry
