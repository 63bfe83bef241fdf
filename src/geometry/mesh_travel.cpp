// All is seen in a frame whose z runs along the direction. Two triangles meet where their shadows on z = 0 share an
// area: how far the one stands behind the other is linear over it, so the first touch is over a corner of the common
// area. Triangles along the direction have no shadow; where they would touch first, an edge of theirs does, and another
// triangle has that edge too. Against a piece the first touch of a triangle is that of a sheet (cast.h).
#include "geometry/mesh_travel.h"

#include "geometry/cast.h"
#include "geometry/limits.h"
#include "geometry/mesh_data.h"
#include "geometry/outline.h"
#include "geometry/sheet.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <utility>

namespace baywright::geometry {

namespace {

Pose frame_along(const Vec3& n, const Vec3& origin) {
  const Vec3 u = square_to(n);
  const Mat3 turn = glm::transpose(Mat3{u, glm::cross(n, u), n});
  return {turn, -(turn * origin)};
}

/// Whether the boxes pass over each other; aside only.
bool aside(const Seen& p, const Seen& q) {
  const Vec3 away = glm::abs(p.middle - q.middle) - (p.half + q.half);
  return away.x > touch_mm || away.y > touch_mm;
}

/// A triangle as the graph of a height over its shadow.
struct Graph {
  Outline shadow;  // counter-clockwise
  std::array<double, 3> heights{};
  Vec2 slope{0.0};
  double steep = 0.0;  // length of the slope
  bool seen = false;   // has a shadow

  explicit Graph(Corners c) {
    const Vec3 normal = glm::cross(c[1] - c[0], c[2] - c[0]);
    const double longest = std::max({glm::distance(c[0], c[1]), glm::distance(c[1], c[2]), glm::distance(c[2], c[0])});
    if (!(std::abs(normal.z) > touch_mm * longest)) return;
    seen = true;
    slope = Vec2{-normal.x, -normal.y} / normal.z;
    steep = glm::length(slope);
    if (normal.z < 0.0) std::swap(c[1], c[2]);
    for (std::size_t i = 0; i < 3; ++i) {
      shadow.emplace_back(c[i].x, c[i].y);
      heights[i] = c[i].z;
    }
  }

  struct Height {
    double mm;
    double steep;  // by how much it changes for a rounding of the place
  };
  /// Of a steep triangle a point on an edge is taken along that edge, which is seldom as steep.
  [[nodiscard]] Height height(const Vec2& p, double rounding) const {
    constexpr double gentle = 100.0;
    Height found{heights[0] + glm::dot(slope, p - shadow[0]), steep};
    for (std::size_t i = 0; i < 3 && steep > gentle; ++i) {
      const std::size_t next = (i + 1) % 3;
      const Vec2 edge = shadow[next] - shadow[i];
      const double length = glm::length(edge);
      if (!(length > 0.0)) continue;
      const double away = (edge.x * (p.y - shadow[i].y) - edge.y * (p.x - shadow[i].x)) / length;
      const double rise = heights[next] - heights[i];
      if (std::abs(away) > rounding || std::abs(rise) / length >= found.steep) continue;
      const double part = std::clamp(glm::dot(p - shadow[i], edge) / (length * length), 0.0, 1.0);
      found = {heights[i] + rise * part, std::abs(rise) / length};
    }
    return found;
  }
};

/// Whether an area is wider than a touch; what only slides along does not meet.
bool is_wide(const Outline& area) {
  double doubled = 0.0;
  double longest = 0.0;
  for (std::size_t i = 0; i < area.size(); ++i) {
    const Vec2 p = area[i] - area[0];
    const Vec2 q = area[(i + 1) % area.size()] - area[0];
    doubled += p.x * q.y - p.y * q.x;
    longest = std::max(longest, glm::length(p));
  }
  return doubled > 2.0 * touch_mm * longest;
}

class Meshes {
 public:
  Meshes(const Placed& moving, const Placed& fixed, const Vec3& n, Travel& first)
      : moving_(moving.solid.mesh()->data().tree),
        fixed_(fixed.solid.mesh()->data().tree),
        origin_(fixed.pose.shift),
        frame_(frame_along(n, origin_)),
        of_moving_(frame_.after({moving.pose.turn, moving.pose.shift})),
        of_fixed_(frame_.after({fixed.pose.turn, fixed.pose.shift})),
        spread_moving_(sizes(of_moving_.turn)),
        spread_fixed_(sizes(of_fixed_.turn)),
        first_(first) {
    of_moving_.shift = frame_.turn * (moving.pose.shift - origin_);
    of_fixed_.shift = Vec3{0.0};
    rounding_ = 4e-15 * (glm::length(of_moving_.shift) + glm::length(origin_) + size_of(moving_) + size_of(fixed_));
  }

  void run() {
    const Seen m = seen_moving(0);
    const Seen f = seen_fixed(0);
    if (!aside(m, f) && soonest(m, f) < first_.mm) walk(0, m, 0, f);
  }

 private:
  static double size_of(const TriangleTree& tree) { return glm::length(tree.node(0).middle) + tree.node(0).size; }
  [[nodiscard]] Seen seen_moving(int i) const { return seen(moving_.node(i), of_moving_, spread_moving_); }
  [[nodiscard]] Seen seen_fixed(int i) const { return seen(fixed_.node(i), of_fixed_, spread_fixed_); }
  [[nodiscard]] static double soonest(const Seen& moving, const Seen& fixed) {
    return fixed.middle.z - fixed.half.z - moving.middle.z - moving.half.z;
  }

  void walk(int m, const Seen& m_seen, int f, const Seen& f_seen) {
    const TriangleTree::Node& moving = moving_.node(m);
    const TriangleTree::Node& fixed = fixed_.node(f);
    if (moving.count > 0 && fixed.count > 0) return measure(moving, fixed);
    const bool split_fixed = moving.count > 0 || (fixed.count == 0 && fixed.size >= moving.size);
    const int child = split_fixed ? fixed.first : moving.first;
    const Seen one = split_fixed ? seen_fixed(child) : seen_moving(child);
    const Seen other = split_fixed ? seen_fixed(child + 1) : seen_moving(child + 1);
    const double to_one = split_fixed ? soonest(m_seen, one) : soonest(one, f_seen);
    const double to_other = split_fixed ? soonest(m_seen, other) : soonest(other, f_seen);
    const auto go = [&](int i, const Seen& box, double to) {
      if (!(to < first_.mm) || aside(split_fixed ? m_seen : f_seen, box)) return;
      split_fixed ? walk(m, m_seen, i, box) : walk(i, box, f, f_seen);
    };
    if (to_one <= to_other) {
      go(child, one, to_one);
      go(child + 1, other, to_other);
    } else {
      go(child + 1, other, to_other);
      go(child, one, to_one);
    }
  }

  static Corners placed(const TriangleTree& tree, int i, const Pose& pose) {
    const Corners& c = tree.at(i);
    return {pose.point(c[0]), pose.point(c[1]), pose.point(c[2])};
  }

  void measure(const TriangleTree::Node& moving, const TriangleTree::Node& fixed) {
    for (int i = moving.first; i < moving.first + moving.count; ++i) {
      const Graph of_moving(placed(moving_, i, of_moving_));
      if (!of_moving.seen) continue;
      for (int j = fixed.first; j < fixed.first + fixed.count; ++j) {
        const Graph of_fixed(placed(fixed_, j, of_fixed_));
        if (of_fixed.seen) measure(of_moving, of_fixed);
      }
    }
  }

  void measure(const Graph& moving, const Graph& fixed) {
    const Outline common = clipped(moving.shadow, fixed.shadow, 0.0);
    if (common.size() < 3 || !is_wide(common)) return;
    for (const Vec2& p : common) {
      const Graph::Height low = moving.height(p, rounding_);
      const Graph::Height high = fixed.height(p, rounding_);
      if (!(high.mm - low.mm < first_.mm)) continue;
      first_.meets = true;
      first_.mm = high.mm - low.mm;
      first_.error = rounding_ * (1.0 + low.steep + high.steep);
      first_.on_moving = origin_ + glm::transpose(frame_.turn) * Vec3{p, low.mm};
      first_.on_fixed = origin_ + glm::transpose(frame_.turn) * Vec3{p, high.mm};
    }
  }

  const TriangleTree& moving_;
  const TriangleTree& fixed_;
  Vec3 origin_;
  Pose frame_;
  Pose of_moving_;
  Pose of_fixed_;
  Mat3 spread_moving_;
  Mat3 spread_fixed_;
  double rounding_ = 0.0;
  Travel& first_;
};

/// A mesh and one piece, either of which moves.
class MeshAndPiece {
 public:
  MeshAndPiece(const Placed& mesh, bool mesh_moves, const Piece& piece, const Pose& pose, const Vec3& n, Travel& first)
      : mesh_(mesh),
        tree_(mesh.solid.mesh()->data().tree),
        mesh_moves_(mesh_moves),
        piece_(piece),
        pose_(pose),
        n_(n),
        of_mesh_(frame_along(n, Vec3{0.0}).after(mesh.pose)),
        spread_(sizes(of_mesh_.turn)),
        first_(first) {
    const Bounds box = bounds(piece, frame_along(n, Vec3{0.0}).after(pose));
    of_piece_ = {0.5 * (box.low + box.high), 0.5 * (box.high - box.low)};
  }

  void run() { walk(0, seen(tree_.node(0), of_mesh_, spread_)); }

 private:
  [[nodiscard]] double soonest(const Seen& box) const {
    const double ahead = of_piece_.middle.z - box.middle.z;
    return (mesh_moves_ ? ahead : -ahead) - box.half.z - of_piece_.half.z;
  }

  void walk(int i, const Seen& box) {
    if (aside(box, of_piece_) || !(soonest(box) < first_.mm)) return;
    const TriangleTree::Node& node = tree_.node(i);
    if (node.count == 0) {
      const Seen one = seen(tree_.node(node.first), of_mesh_, spread_);
      const Seen other = seen(tree_.node(node.first + 1), of_mesh_, spread_);
      const bool in_order = soonest(one) <= soonest(other);
      in_order ? walk(node.first, one) : walk(node.first + 1, other);
      in_order ? walk(node.first + 1, other) : walk(node.first, one);
      return;
    }
    for (int k = node.first; k < node.first + node.count; ++k) {
      Bounds own = Bounds::empty();
      Corners c = tree_.at(k);
      for (Vec3& corner : c) {
        own.add(of_mesh_.point(corner));
        corner = mesh_.pose.point(corner);
      }
      const Seen exact{0.5 * (own.low + own.high), 0.5 * (own.high - own.low)};
      if (!aside(exact, of_piece_) && soonest(exact) < first_.mm) measure(sheet(c));
    }
  }

  void measure(const Sheet& one) {
    const auto meet = piece_.base == Piece::Base::ring ? ring_stay : stay;
    const Stay met =
        mesh_moves_ ? meet(piece_, pose_, one.piece, one.pose, n_) : meet(one.piece, one.pose, piece_, pose_, n_);
    if (!met.meets || !(met.in < first_.mm)) return;
    first_ = {true, met.in, met.error, met.at_in.on_b, met.at_in.on_a};
  }

  const Placed& mesh_;
  const TriangleTree& tree_;
  bool mesh_moves_;
  const Piece& piece_;
  const Pose& pose_;
  const Vec3& n_;
  Pose of_mesh_;
  Mat3 spread_;
  Seen of_piece_;
  Travel& first_;
};

}  // namespace

void mesh_travel(const Placed& moving, const Placed& fixed, const Vec3& direction, Travel& first) {
  if (moving.solid.mesh() != nullptr && fixed.solid.mesh() != nullptr) {
    Meshes(moving, fixed, direction, first).run();
    return;
  }
  const bool mesh_moves = moving.solid.mesh() != nullptr;
  const Placed& mesh = mesh_moves ? moving : fixed;
  const Placed& other = mesh_moves ? fixed : moving;
  for (const Piece& piece : other.solid.pieces()) {
    MeshAndPiece(mesh, mesh_moves, piece, other.pose, direction, first).run();
  }
}

}  // namespace baywright::geometry
