// The box. What two polyhedra share is again one, and each of its corners is a corner of a or of b or lies where an
// edge of one runs through a face of the other: so it is an end of a stretch of an edge that lies in the other. All
// edges of each are cut into their stretches within the other, and the box is that of the ends. An edge that lies in a
// face of the other counts only if what is beside it is shared too: so not the edge itself is asked about but its
// neighbour a hair inside of its own solid.
#include "geometry/overlap.h"

#include "geometry/limits.h"
#include "geometry/mesh_edges.h"
#include "geometry/mesh_inside.h"
#include "geometry/section_areas.h"

#include <algorithm>
#include <cmath>
#include <glm/vector_relational.hpp>
#include <numbers>

namespace baywright::geometry {
namespace {

/// Far enough from a face to be beside it for sure, and near enough not to be seen.
constexpr double hair = 10.0 * touch_mm;

struct Edge {
  Vec3 from;
  Vec3 to;
  Vec3 inward;  // unit, into the solid
};

void add_base(const Outline& corners, const Placed& placed, const Piece& piece, const std::vector<Vec2>& inward,
              std::vector<Edge>& edges) {
  const auto at = [&](const Vec2& p, double z) { return placed.pose.point(Vec3{p, z}); };
  const auto in = [&](const Vec2& p, double z) { return placed.pose.direction(glm::normalize(Vec3{p, z})); };
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const std::size_t next = (i + 1) % corners.size();
    const Vec2 across = glm::normalize(inward[i] + inward[next]);
    edges.push_back({at(corners[i], 0.0), at(corners[next], 0.0), in(across, 1.0)});
    edges.push_back({at(corners[i], piece.height), at(corners[next], piece.height), in(across, -1.0)});
    edges.push_back({at(corners[i], 0.0), at(corners[i], piece.height), in(inward[i], 0.0)});
  }
}

void add_circle(double radius, double sense, const Placed& placed, const Piece& piece, std::vector<Edge>& edges) {
  const double step = std::sqrt(8.0 * drawn_chord_mm / radius);
  const int count = 4 * std::max(4, static_cast<int>(std::ceil(0.5 * std::numbers::pi / step)));
  Outline corners;
  std::vector<Vec2> inward;
  for (int i = 0; i < count; ++i) {
    const double angle = 2.0 * std::numbers::pi * i / count;
    const Vec2 out{std::cos(angle), std::sin(angle)};
    corners.push_back(radius * out);
    inward.push_back(sense * out);
  }
  add_base(corners, placed, piece, inward, edges);
}

void add_polygon(const Placed& placed, const Piece& piece, std::vector<Edge>& edges) {
  const std::size_t n = piece.corners.size();
  const auto left_of_side = [&](std::size_t i) {
    const Vec2 side = glm::normalize(piece.corners[(i + 1) % n] - piece.corners[i]);
    return Vec2{-side.y, side.x};
  };
  std::vector<Vec2> inward;
  for (std::size_t i = 0; i < n; ++i) inward.push_back(glm::normalize(left_of_side(i) + left_of_side((i + n - 1) % n)));
  add_base(piece.corners, placed, piece, inward, edges);
}

void add_mesh(const Placed& placed, const Mesh& mesh, std::vector<Edge>& edges) {
  const auto corner = [&](int i) { return mesh.vertices()[static_cast<std::size_t>(i)]; };
  each_edge(edges_of(mesh.triangles(), mesh.vertices().size()), [&](std::span<const MeshEdge> sides) {
    Vec3 inward{0.0};
    for (const MeshEdge& side : sides) {
      const Mesh::Triangle& t = mesh.triangles()[static_cast<std::size_t>(side.triangle)];
      inward -= glm::normalize(glm::cross(corner(t[1]) - corner(t[0]), corner(t[2]) - corner(t[0])));
    }
    const double length = glm::length(inward);
    if (!(length > 0.0)) return;
    edges.push_back({placed.pose.point(corner(sides.front().low)), placed.pose.point(corner(sides.front().high)),
                     placed.pose.direction(inward / length)});
  });
}

std::vector<Edge> edges_of(const Placed& placed) {
  std::vector<Edge> edges;
  if (const Mesh* mesh = placed.solid.mesh()) add_mesh(placed, *mesh, edges);
  for (const Piece& piece : placed.solid.pieces()) {
    if (piece.base == Piece::Base::polygon) {
      add_polygon(placed, piece, edges);
    } else {
      add_circle(piece.radius, -1.0, placed, piece, edges);
      if (piece.bore > 0.0) add_circle(piece.bore, 1.0, placed, piece, edges);
    }
  }
  return edges;
}

bool holds(const Bounds& outer, const Bounds& box) {
  return glm::all(glm::lessThanEqual(outer.low, box.low)) && glm::all(glm::lessThanEqual(box.high, outer.high));
}

/// Whether a stretch of the edge within `where` could widen what is found.
bool matters(const Edge& edge, const Bounds& where, const Bounds& found) {
  Bounds own = Bounds::empty();
  own.add(edge.from);
  own.add(edge.to);
  return own.distance(where) <= hair && !holds(found, own);
}

/// Adds the ends of the stretches of `own`'s edges within `other`.
void add_ends(const Placed& own, const Placed& other, const Bounds& where, Bounds& found) {
  for (const Edge& edge : edges_of(own)) {
    if (!matters(edge, where, found)) continue;
    const double length = glm::distance(edge.from, edge.to);
    if (!(length > 0.0)) continue;
    const Vec3 along = (edge.to - edge.from) / length;
    for (const Span& span : spans(other, edge.from + hair * edge.inward, along)) {
      const double in = std::max(span.in, 0.0);
      const double out = std::min(span.out, length);
      if (!(out - in > hair)) continue;
      found.add(edge.from + in * along);
      found.add(edge.from + out * along);
    }
  }
}

bool has_inside(const Placed& placed) {
  return placed.solid.mesh() == nullptr || placed.solid.mesh()->closed();
}

}  // namespace

std::vector<Region> overlap(const Placed& a, const Placed& b, const View& view) {
  return shared(section(a, view), section(b, view));
}

std::optional<Bounds> overlap_box(const Placed& a, const Placed& b) {
  if (!has_inside(a) || !has_inside(b)) return std::nullopt;
  const Bounds box_a = bounds(a);
  const Bounds box_b = bounds(b);
  const Bounds where{glm::max(box_a.low, box_b.low), glm::min(box_a.high, box_b.high)};
  for (int axis = 0; axis < 3; ++axis) {
    if (!(where.high[axis] - where.low[axis] > hair)) return std::nullopt;
  }
  Bounds found = Bounds::empty();
  add_ends(a, b, where, found);
  add_ends(b, a, where, found);
  if (!(found.low.x <= found.high.x)) return std::nullopt;
  return Bounds{glm::max(found.low, where.low), glm::min(found.high, where.high)};
}

}  // namespace baywright::geometry
