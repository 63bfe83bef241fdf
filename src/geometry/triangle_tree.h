#pragma once
// A bounding volume tree over the triangles of a mesh, in the mesh's own coordinates. Internal.
#include "geometry/vectors.h"

#include <array>
#include <vector>

namespace baywright::geometry {

using Corners = std::array<Vec3, 3>;  // of a triangle, counter-clockwise seen from outside

struct TriangleTree {
  struct Node {
    Vec3 middle;
    Vec3 half;    // half the sides of the box
    int first;    // leaf: first of `count` entries of `corners`; inner: left child, right is left + 1
    int count;    // 0 for an inner node
    double size;  // length of `half`
  };
  /// A second box about what a node holds, turned to lie flat on it: far thinner than the first where the surface runs
  /// aslant. `axes` are unit and square to each other.
  struct Turned {
    Mat3 axes;
    Vec3 middle;
    Vec3 half;
    double aside;  // the middle is no farther from an edge along the third axis
    double reach;  // nor from a corner
    bool fitted;   // false: only the first box again
  };
  /// A level halves the count of an int, so a stack of one waiting sibling a level never needs more.
  static constexpr int deepest = 64;

  std::vector<Node> nodes;       // the first is the root; empty without triangles
  std::vector<Turned> turned;    // of the nodes in their order
  std::vector<Corners> corners;  // in the order of the leaves
  std::vector<int> triangle;     // the number that each had in the span given

  TriangleTree() = default;
  explicit TriangleTree(const std::vector<Corners>& triangles);

  [[nodiscard]] const Node& node(int i) const { return nodes[static_cast<std::size_t>(i)]; }
  [[nodiscard]] const Corners& at(int i) const { return corners[static_cast<std::size_t>(i)]; }
  [[nodiscard]] int name(int i) const { return triangle[static_cast<std::size_t>(i)]; }
};

/// The first box of a node as a box along the axes of other coordinates; `spread` holds the sizes of the turn's
/// entries.
struct Seen {
  Vec3 middle;
  Vec3 half;
};
[[nodiscard]] inline Mat3 sizes(const Mat3& turn) {
  return {glm::abs(turn[0]), glm::abs(turn[1]), glm::abs(turn[2])};
}
[[nodiscard]] inline Seen seen(const TriangleTree::Node& node, const Pose& pose, const Mat3& spread) {
  return {pose.point(node.middle), spread * node.half};
}

/// The square of the distance of two boxes whose sides are along the same axes.
[[nodiscard]] inline double square_apart(const Vec3& middle, const Vec3& half, const Vec3& other,
                                         const Vec3& half_other) {
  const Vec3 away = glm::max(glm::abs(middle - other) - (half + half_other), Vec3{0.0});
  return glm::dot(away, away);
}

}  // namespace baywright::geometry
