#include "geometry/mesh_inside.h"

#include "geometry/mesh_near.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace baywright::geometry {

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

double depth_in_piece(const Piece& piece, const Vec3& p) {
  double depth = std::min(p.z, piece.height - p.z);
  if (piece.base != Piece::Base::polygon) {
    const double from_axis = std::hypot(p.x, p.y);
    depth = std::min(depth, piece.radius - from_axis);
    return piece.base == Piece::Base::ring ? std::min(depth, from_axis - piece.bore) : depth;
  }
  for (std::size_t i = 0; i < piece.corners.size(); ++i) {
    const Vec2 from = piece.corners[i];
    const Vec2 side = piece.corners[(i + 1) % piece.corners.size()] - from;
    depth = std::min(depth, (side.x * (p.y - from.y) - side.y * (p.x - from.x)) / glm::length(side));
  }
  return depth;
}

/// Keeps of the span where offset + s * rate >= 0.
void keep(Span& span, double offset, double rate) {
  if (rate > 0.0) {
    span.in = std::max(span.in, -offset / rate);
  } else if (rate < 0.0) {
    span.out = std::min(span.out, -offset / rate);
  } else if (offset < 0.0) {
    span.out = -infinity;
  }
}

/// Where a line is within a radius of the z axis; in > out where it is nowhere.
Span within_round(double radius, const Vec3& p, const Vec3& d) {
  const double a = d.x * d.x + d.y * d.y;
  const double b = p.x * d.x + p.y * d.y;
  const double c = p.x * p.x + p.y * p.y - radius * radius;
  if (!(a > 0.0)) return c <= 0.0 ? Span{-infinity, infinity} : Span{1.0, 0.0};
  const double square = b * b - a * c;
  if (!(square > 0.0)) return {1.0, 0.0};
  const double root = std::sqrt(square);
  return {(-b - root) / a, (-b + root) / a};
}

void add_piece(const Piece& piece, const Vec3& p, const Vec3& d, std::vector<Span>& found) {
  Span span{-infinity, infinity};
  keep(span, p.z, d.z);
  keep(span, piece.height - p.z, -d.z);
  if (piece.base == Piece::Base::polygon) {
    for (std::size_t i = 0; i < piece.corners.size(); ++i) {
      const Vec2 from = piece.corners[i];
      const Vec2 side = piece.corners[(i + 1) % piece.corners.size()] - from;
      keep(span, side.x * (p.y - from.y) - side.y * (p.x - from.x), side.x * d.y - side.y * d.x);
    }
    if (span.in < span.out) found.push_back(span);
    return;
  }
  const Span outer = within_round(piece.radius, p, d);
  span = {std::max(span.in, outer.in), std::min(span.out, outer.out)};
  const Span hole = piece.bore > 0.0 ? within_round(piece.bore, p, d) : Span{1.0, 0.0};
  if (!(hole.in < hole.out)) {
    if (span.in < span.out) found.push_back(span);
    return;
  }
  if (span.in < std::min(span.out, hole.in)) found.push_back({span.in, std::min(span.out, hole.in)});
  if (std::max(span.in, hole.out) < span.out) found.push_back({std::max(span.in, hole.out), span.out});
}

/// Whether the line comes into the box of a node.
bool comes_into(const TriangleTree::Node& node, const Vec3& p, const Vec3& d) {
  Span span{-infinity, infinity};
  for (int axis = 0; axis < 3; ++axis) {
    const double slack = 1e-12 * (node.half[axis] + std::abs(node.middle[axis]));
    const double half = node.half[axis] + slack;
    const double away = p[axis] - node.middle[axis];
    keep(span, half + away, d[axis]);
    keep(span, half - away, -d[axis]);
  }
  return span.in <= span.out;
}

/// Where the line passes through the triangle; not where it runs along its plane.
bool passes(const Corners& t, const Vec3& p, const Vec3& d, double& at) {
  const Vec3 a = t[0] - p;
  const Vec3 b = t[1] - p;
  const Vec3 c = t[2] - p;
  const double ab = glm::dot(glm::cross(a, b), d);
  const double bc = glm::dot(glm::cross(b, c), d);
  const double ca = glm::dot(glm::cross(c, a), d);
  if (!((ab >= 0.0 && bc >= 0.0 && ca >= 0.0) || (ab <= 0.0 && bc <= 0.0 && ca <= 0.0))) return false;
  const double sum = ab + bc + ca;
  if (sum == 0.0) return false;
  at = glm::dot((a * bc + b * ca + c * ab) / sum, d);
  return true;
}

std::vector<Span> spans_of_mesh(const Mesh& mesh, const Vec3& p, const Vec3& d) {
  std::vector<double> hits;
  const TriangleTree& tree = mesh.data().tree;
  int waiting[TriangleTree::deepest];
  int depth = 0;
  waiting[depth++] = 0;
  while (depth > 0) {
    const TriangleTree::Node& node = tree.node(waiting[--depth]);
    if (!comes_into(node, p, d)) continue;
    if (node.count == 0) {
      waiting[depth++] = node.first;
      waiting[depth++] = node.first + 1;
      continue;
    }
    for (int i = node.first; i < node.first + node.count; ++i) {
      double at = 0.0;
      if (passes(tree.at(i), p, d, at)) hits.push_back(at);
    }
  }
  std::vector<Span> found;
  if (hits.size() % 2 != 0) return found;
  std::sort(hits.begin(), hits.end());
  for (std::size_t i = 0; i < hits.size(); i += 2) found.push_back({hits[i], hits[i + 1]});
  return found;
}

}  // namespace

double depth(const Placed& placed, const Vec3& p) {
  const Vec3 local = placed.pose.inverse().point(p);
  if (const Mesh* mesh = placed.solid.mesh()) {
    return mesh->contains(local) ? distance(mesh->data(), local, infinity) : 0.0;
  }
  double deepest = 0.0;
  for (const Piece& piece : placed.solid.pieces()) deepest = std::max(deepest, depth_in_piece(piece, local));
  return deepest;
}

std::vector<Span> spans(const Placed& placed, const Vec3& p, const Vec3& d) {
  const Vec3 local = placed.pose.inverse().point(p);
  const Vec3 way = glm::transpose(placed.pose.turn) * d;
  if (const Mesh* mesh = placed.solid.mesh())
    return mesh->closed() ? spans_of_mesh(*mesh, local, way) : std::vector<Span>{};
  std::vector<Span> found;
  for (const Piece& piece : placed.solid.pieces()) add_piece(piece, local, way, found);
  return found;
}

}  // namespace baywright::geometry
