#include "geometry/shadow.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace baywright::geometry {

namespace {

double cross(const Vec2& a, const Vec2& b) {
  return a.x * b.y - a.y * b.x;
}

Vec2 nearest_on_side(const Vec2& p, const Vec2& from, const Vec2& to) {
  const Vec2 side = to - from;
  const double square = glm::dot(side, side);
  if (!(square > 0.0)) return from;
  return from + side * std::clamp(glm::dot(p - from, side) / square, 0.0, 1.0);
}

/// Twice the area; its sign tells the sense in which the shadow is traversed.
double area2(const Corners& ring) {
  double sum = 0.0;
  for (std::size_t i = 1; i + 1 < ring.size(); ++i) sum += cross(ring[i] - ring[0], ring[i + 1] - ring[0]);
  return sum;
}

Vec2 nearest(const Vec2& p, const Corners& ring) {
  if (ring.size() == 1) return ring[0];
  const double sense = area2(ring);
  bool inside = ring.size() > 2;
  Vec2 best = ring[0];
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Vec2 foot = nearest_on_side(p, ring[i], ring.after(i));
    const double square = glm::dot(p - foot, p - foot);
    if (square < least) {
      least = square;
      best = foot;
    }
    inside = inside && cross(ring.after(i) - ring[i], p - ring[i]) * sense >= 0.0;
  }
  return inside ? p : best;
}

/// Two convex polygons that share no point are nearest at a corner of one of them.
Both nearest_corners(const Corners& a, const Corners& b) {
  Both best{a[0], b[0]};
  double least = std::numeric_limits<double>::infinity();
  const auto take = [&](const Vec2& on_a, const Vec2& on_b) {
    const double square = glm::dot(on_a - on_b, on_a - on_b);
    if (square < least) {
      least = square;
      best = {on_a, on_b};
    }
  };
  for (std::size_t i = 0; i < a.size(); ++i) take(a[i], nearest(a[i], b));
  for (std::size_t i = 0; i < b.size(); ++i) take(nearest(b[i], a), b[i]);
  return best;
}

Corners clipped(const Corners& ring, const Vec2& from, const Vec2& to, double sense) {
  const auto inner = [&](const Vec2& p) { return cross(to - from, p - from) * sense; };
  Corners kept;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Vec2& p = ring[i];
    const Vec2& q = ring.after(i);
    const double at_p = inner(p);
    const double at_q = inner(q);
    if (at_p >= 0.0) kept.add(p);
    if ((at_p > 0.0 && at_q < 0.0) || (at_p < 0.0 && at_q > 0.0)) kept.add(p + (q - p) * (at_p / (at_p - at_q)));
  }
  return kept;
}

Vec2 mean(const Corners& ring) {
  Vec2 sum{0.0};
  for (std::size_t i = 0; i < ring.size(); ++i) sum += ring[i];
  return sum / static_cast<double>(ring.size());
}

Both nearest_sides(const Corners& a, const Corners& b) {
  const Vec2 along = a[1] - a[0];
  const Vec2 other = b[1] - b[0];
  const double turn = cross(along, other);
  const double square = glm::dot(along, along);
  if (std::abs(turn) <= 1e-12 * std::sqrt(square * glm::dot(other, other))) {
    const double from = glm::dot(b[0] - a[0], along) / square;
    const double to = glm::dot(b[1] - a[0], along) / square;
    const double low = std::max(0.0, std::min(from, to));
    const double high = std::min(1.0, std::max(from, to));
    if (low <= high) {
      const Vec2 p = a[0] + along * (0.5 * (low + high));
      return {p, nearest_on_side(p, b[0], b[1])};
    }
    return nearest_corners(a, b);
  }
  const double s = cross(b[0] - a[0], other) / turn;
  const double t = cross(b[0] - a[0], along) / turn;
  if (!(s >= 0.0 && s <= 1.0 && t >= 0.0 && t <= 1.0)) return nearest_corners(a, b);
  // Nearly parallel sides cross at a badly known place; the foot on the other side is as near as the crossing.
  const Vec2 p = a[0] + along * s;
  return {p, nearest_on_side(p, b[0], b[1])};
}

Both nearest_rings(const Corners& a, const Corners& b) {
  if (a.size() == 1) return {a[0], nearest(a[0], b)};
  if (b.size() == 1) return {nearest(b[0], a), b[0]};
  if (a.size() == 2 && b.size() == 2) return nearest_sides(a, b);
  const Corners& cutter = b.size() > 2 ? b : a;
  Corners common = b.size() > 2 ? a : b;
  const double sense = area2(cutter);
  for (std::size_t i = 0; i < cutter.size() && common.size() > 0; ++i) {
    common = clipped(common, cutter[i], cutter.after(i), sense);
  }
  if (common.size() == 0) return nearest_corners(a, b);
  return {mean(common), mean(common)};
}

Vec2 clamped(const Vec2& p, const Vec2& centre, double radius) {
  const double length = glm::length(p - centre);
  return length <= radius ? p : centre + (p - centre) * (radius / length);
}

Both nearest_discs(const Shadow& a, const Shadow& b) {
  const Vec2 offset = b.points[0] - a.points[0];
  const double length = glm::length(offset);
  if (!(length > 0.0)) return {a.points[0], b.points[0]};
  const Vec2 along = offset / length;
  const double low = std::max(-a.disc, length - b.disc);
  const double high = std::min(a.disc, length + b.disc);
  if (low <= high) return {a.points[0] + along * (0.5 * (low + high)), a.points[0] + along * (0.5 * (low + high))};
  return {a.points[0] + along * a.disc, b.points[0] - along * b.disc};
}

}  // namespace

Both nearest(const Shadow& a, const Shadow& b) {
  if (a.disc > 0.0 && b.disc > 0.0) return nearest_discs(a, b);
  if (a.disc > 0.0) {
    const Vec2 on_b = nearest(a.points[0], b.points);
    return {clamped(on_b, a.points[0], a.disc), on_b};
  }
  if (b.disc > 0.0) {
    const Vec2 on_a = nearest(b.points[0], a.points);
    return {on_a, clamped(on_a, b.points[0], b.disc)};
  }
  return nearest_rings(a.points, b.points);
}

}  // namespace baywright::geometry
