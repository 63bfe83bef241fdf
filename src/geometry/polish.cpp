// Apart, the separation has one maximum over the unit sphere. Where it lies on the sphere tells which features are
// nearest: on a face normal (face against anything), on the great circle square to an edge or to both of two edges, or
// on neither (corners and rims). Within a small angle few of these remain; each has a closed form or, with rims, a
// bracketed or quadratic iteration. The largest separation wins, and it is a lower bound of the gap whatever was
// missed.
#include "geometry/polish.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace baywright::geometry {

namespace {

/// Edges that are parallel to this sine have no common normal of their own: between them they span a strip that is
/// thinner than rounding.
constexpr double parallel = 1e-15;

Vec3 less_along(const Vec3& x, const Vec3& e) {
  const Vec3 d = x - e * glm::dot(x, e);
  const double length = glm::length(d);
  return length > 0.0 ? d / length - e * glm::dot(d / length, e) : Vec3{0.0};
}

/// The nearest point of a rim's circle, or of the disc within it, to a point beyond it.
Vec3 from_rim(const Rim& rim, const Vec3& point) {
  const Vec3 offset = point - rim.centre;
  const double height = glm::dot(offset, rim.axis);
  const Vec3 across = offset - rim.axis * height;
  const double length = glm::length(across);
  if (!(length > rim.radius)) return rim.axis * height;
  return across * ((length - rim.radius) / length) + rim.axis * height;
}

double widened(double angle) {
  return std::clamp(2.0 * angle, 1e-7, 0.5);
}

}  // namespace

Vec3 square_to_both(const Vec3& e, const Vec3& f) {
  Vec3 d = glm::cross(e, f);
  const double sine = glm::length(d);
  if (!(sine > parallel)) return Vec3{0.0};
  d = d / sine;
  // Rounding of a small cross product leans d toward e: a lean of 1e-16 / sine along an edge of 1000 mm is what counts.
  d -= e * glm::dot(d, e);
  d -= f * glm::dot(d, f);
  d -= e * glm::dot(d, e);
  return glm::normalize(d);
}

Solutions::Nearby::Nearby(const Body& body, const Vec3& centre, const Vec3& d, double angle) {
  const Vec3 q = body.local(d);
  const Vec3 end = body.w * (q.z < 0.0 ? -body.half : body.half);
  const bool side = std::abs(q.z) <= angle;
  if (std::sqrt(q.x * q.x + q.y * q.y) <= angle) add_normal(q.z < 0.0 ? -body.w : body.w);
  if (side) add_edge(body.w);
  tip = centre + end;
  if (body.base == Body::Base::disc) {
    for (const double sign : {1.0, -1.0}) {
      if (q.z * sign < -angle) continue;
      rims[rim_count++] = {centre + body.w * (sign * body.half), body.w * sign, body.radius};
    }
    return;
  }
  tip += body.flat(body.corner(body.far_corner(q.x, q.y)));
  for (int i = 0; i < body.count; ++i) {
    const Vec2 step = body.corners[i + 1 < body.count ? i + 1 : 0] - body.corners[i];
    const double length = std::sqrt(step.x * step.x + step.y * step.y);
    if (!(length > 0.0)) continue;
    const Vec2 along = step / length;
    const double lean = along.x * q.x + along.y * q.y;
    const double out = along.y * q.x - along.x * q.y;
    if (std::abs(lean) > angle || out < -angle) continue;
    add_edge(body.flat(along));
    if (side) add_normal(body.flat({along.y, -along.x}));
  }
}

Solutions::Solutions(const Pair& pair, const Vec3& direction, double angle)
    : direction_(direction),
      a_(pair.a, Vec3{0.0}, direction, widened(angle)),
      b_(pair.b, pair.apart, -direction, widened(angle)) {}

void Solutions::add_flat(Directions& found) const {
  for (std::size_t i = 0; i < a_.normal_count; ++i) found.add(a_.normals[i]);
  for (std::size_t i = 0; i < b_.normal_count; ++i) found.add(-b_.normals[i]);
  for (std::size_t i = 0; i < a_.edge_count; ++i) {
    for (std::size_t j = 0; j < b_.edge_count; ++j) {
      const Vec3 d = square_to_both(a_.edges[i], b_.edges[j]);
      found.add_unit(glm::dot(d, direction_) < 0.0 ? -d : d);
    }
  }
}

void Solutions::add_curved(Directions& found) const {
  const Vec3 link = b_.tip - a_.tip;
  for (std::size_t i = 0; i < a_.edge_count; ++i) {
    if (b_.rim_count == 0) found.add_unit(less_along(link, a_.edges[i]));
    for (std::size_t k = 0; k < b_.rim_count; ++k) {
      if (const auto d = rim_against_edge(b_.rims[k], a_.tip, a_.edges[i])) found.add(-*d);
    }
  }
  for (std::size_t j = 0; j < b_.edge_count; ++j) {
    if (a_.rim_count == 0) found.add_unit(less_along(link, b_.edges[j]));
    for (std::size_t k = 0; k < a_.rim_count; ++k) {
      if (const auto d = rim_against_edge(a_.rims[k], b_.tip, b_.edges[j])) found.add(*d);
    }
  }
  if (a_.rim_count == 0 && b_.rim_count == 0) found.add_unit(link);
  if (b_.rim_count == 0) {
    for (std::size_t k = 0; k < a_.rim_count; ++k) found.add_unit(from_rim(a_.rims[k], b_.tip));
  }
  if (a_.rim_count == 0) {
    for (std::size_t k = 0; k < b_.rim_count; ++k) found.add_unit(-from_rim(b_.rims[k], a_.tip));
  }
}

void Solutions::add_rims(Directions& found) const {
  for (std::size_t i = 0; i < a_.rim_count; ++i) {
    for (std::size_t j = 0; j < b_.rim_count; ++j) {
      for (const Vec3& d : rim_against_rim(a_.rims[i], b_.rims[j], direction_)) found.add(d);
    }
  }
}

namespace {

struct Edge {
  Vec3 from;
  Vec3 along;  // unit
  double length;
};

/// The edges of a prism about `centre`; each corner begins at least one.
std::vector<Edge> edges_of(const Body& body, const Vec3& centre) {
  std::vector<Edge> edges;
  const Vec3 up = body.w * body.half;
  for (int i = 0; i < body.count; ++i) {
    const Vec2 from = body.corner(i);
    const Vec2 step = body.corner(i + 1 < body.count ? i + 1 : 0) - from;
    const double length = glm::length(step);
    if (!(length > 0.0)) continue;
    const Vec3 along = body.flat(step / length);
    const Vec3 at = centre + body.flat(from);
    edges.push_back({at - up, along, length});
    edges.push_back({at + up, along, length});
    edges.push_back({at - up, body.w, 2.0 * body.half});
  }
  return edges;
}

}  // namespace

Vec3 corner_direction(const Pair& pair, const Vec3& start, double upper) {
  Vec3 best = start;
  double value = pair.separation(start);
  const std::vector<Edge> of_a = edges_of(pair.a, Vec3{0.0});
  const std::vector<Edge> of_b = edges_of(pair.b, pair.apart);
  const auto offer = [&](const Vec3& d) {
    const double length = glm::length(d);
    if (!(length > 0.0 && length <= 2.0 * upper)) return;
    const double separation = pair.separation(d / length);
    if (!(separation > value)) return;
    value = separation;
    best = d / length;
  };
  const auto offer_onto = [&](const Vec3& corner, const Edge& edge, double sense) {
    const Vec3 link = (edge.from - corner) * sense;
    const double at = -glm::dot(edge.from - corner, edge.along);
    if (at < 0.0 || at > edge.length) return;
    const Vec3 across = link - edge.along * glm::dot(link, edge.along);
    offer(across - edge.along * glm::dot(across, edge.along));
  };
  for (const Edge& p : of_a) {
    for (const Edge& q : of_b) {
      offer(q.from - p.from);
      offer_onto(p.from, q, 1.0);
      offer_onto(q.from, p, -1.0);
    }
  }
  return best;
}

}  // namespace baywright::geometry
