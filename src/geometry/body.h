#pragma once
// A convex piece as the distance routines see it: about its own centre, its axes in world coordinates. Internal.
#include "geometry/solid.h"

#include <cmath>

namespace baywright::geometry {

/// A polygon prism or a solid cylinder. A ring is taken as its outer disc. Points are offsets from the centre, mm.
struct Body {
  // Rectangles are told from other polygons because their support costs three signs instead of a scan.
  enum class Base { disc, rectangle, polygon };
  Base base = Base::disc;
  Vec3 u{1.0, 0.0, 0.0};  // images of the local axes; w is the axis of the extrusion
  Vec3 v{0.0, 1.0, 0.0};
  Vec3 w{0.0, 0.0, 1.0};
  double half = 0.0;              // half the height
  double radius = 0.0;            // disc
  Vec2 size{0.0};                 // rectangle: half its sides
  Vec2 middle{0.0};               // local coordinates of the centre
  const Vec2* corners = nullptr;  // polygon and rectangle; owned by the piece
  int count = 0;
  double reach = 0.0;  // no point is farther from the centre

  Body(const Piece& piece, const Pose& pose);

  [[nodiscard]] Vec2 corner(int i) const { return corners[i] - middle; }
  [[nodiscard]] Vec3 flat(const Vec2& p) const { return u * p.x + v * p.y; }
  [[nodiscard]] Vec3 local(const Vec3& d) const { return {glm::dot(u, d), glm::dot(v, d), glm::dot(w, d)}; }

  /// The corner farthest along (x, y); the first of equals.
  [[nodiscard]] int far_corner(double x, double y) const {
    int best = 0;
    double most = corners[0].x * x + corners[0].y * y;
    for (int i = 1; i < count; ++i) {
      const double value = corners[i].x * x + corners[i].y * y;
      if (value > most) {
        most = value;
        best = i;
      }
    }
    return best;
  }

  /// The point farthest along d, and how far that is times |d|.
  [[nodiscard]] Vec3 farthest(const Vec3& d) const {
    const Vec3 q = local(d);
    const Vec3 top = w * (q.z < 0.0 ? -half : half);
    if (base == Base::rectangle) return top + u * (q.x < 0.0 ? -size.x : size.x) + v * (q.y < 0.0 ? -size.y : size.y);
    if (base == Base::polygon) return top + flat(corner(far_corner(q.x, q.y)));
    const double length = std::sqrt(q.x * q.x + q.y * q.y);
    if (!(length > 0.0)) return top + u * radius;
    return top + flat(Vec2{q.x, q.y} * (radius / length));
  }
  [[nodiscard]] double extent(const Vec3& d) const {
    const Vec3 q = local(d);
    const double top = half * std::abs(q.z);
    if (base == Base::rectangle) return top + size.x * std::abs(q.x) + size.y * std::abs(q.y);
    if (base == Base::disc) return top + radius * std::sqrt(q.x * q.x + q.y * q.y);
    const Vec2 most = corner(far_corner(q.x, q.y));
    return top + most.x * q.x + most.y * q.y;
  }
};

/// Two bodies in coordinates about the centre of `a`, so that a scene far from the origin loses no digits.
struct Pair {
  Body a;
  Body b;
  Vec3 origin;      // world position of the centre of a
  Vec3 apart;       // from the centre of a to the centre of b
  double rounding;  // mm: what a few operations on coordinates of this size can lose

  Pair(const Piece& piece_a, const Pose& pose_a, const Piece& piece_b, const Pose& pose_b);

  /// Least of b less most of a along d (unit). Never more than the signed gap.
  [[nodiscard]] double separation(const Vec3& d) const { return glm::dot(apart, d) - a.extent(d) - b.extent(-d); }
};

}  // namespace baywright::geometry
