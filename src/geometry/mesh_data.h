#pragma once
// What a mesh holds. Internal to the room.
#include "geometry/mesh.h"
#include "geometry/triangle_tree.h"

#include <cmath>

namespace baywright::geometry {

struct Mesh::Data {
  std::vector<Vec3> vertices;
  std::vector<Triangle> triangles;
  std::vector<MeshFlaw> flaws;
  Bounds box = Bounds::empty();
  bool closed = false;
  double volume = 0.0;
  std::vector<int> shells;         // of each connected surface one triangle
  std::vector<Vec3> main_normals;  // unit: those of the faces with the most area, a bounded number
  TriangleTree tree;

  [[nodiscard]] Corners corners(int triangle) const {
    const Triangle& t = triangles[static_cast<std::size_t>(triangle)];
    return {vertices[static_cast<std::size_t>(t[0])], vertices[static_cast<std::size_t>(t[1])],
            vertices[static_cast<std::size_t>(t[2])]};
  }
};

/// Calls `see` with each entry of the tree whose leaf's box the ray from p along +x meets.
template <typename See>
void along_x(const TriangleTree& tree, const Vec3& p, const See& see) {
  if (tree.nodes.empty()) return;
  int waiting[TriangleTree::deepest];
  int depth = 0;
  waiting[depth++] = 0;
  while (depth > 0) {
    const TriangleTree::Node& node = tree.node(waiting[--depth]);
    // The sum rounds, and a box that is met in an edge must not be missed.
    const Vec3 half = node.half * (1.0 + 1e-15) + Vec3{1e-300};
    const Vec3 away = p - node.middle;
    const double slack = 1e-15 * (std::abs(node.middle.x) + std::abs(node.middle.y) + std::abs(node.middle.z));
    if (!(away.x <= half.x + slack)) continue;
    if (!(std::abs(away.y) <= half.y + slack && std::abs(away.z) <= half.z + slack)) continue;
    if (node.count == 0) {
      waiting[depth++] = node.first;
      waiting[depth++] = node.first + 1;
      continue;
    }
    for (int i = node.first; i < node.first + node.count; ++i) see(i);
  }
}

/// Calls `see` with each entry of the tree whose leaf's box comes within `reach` of p, and a few more.
template <typename See>
void near_point(const TriangleTree& tree, const Vec3& p, double reach, const See& see) {
  if (tree.nodes.empty()) return;
  int waiting[TriangleTree::deepest];
  int depth = 0;
  waiting[depth++] = 0;
  while (depth > 0) {
    const TriangleTree::Node& node = tree.node(waiting[--depth]);
    if (!(square_apart(p, Vec3{0.0}, node.middle, node.half) <= 4.0 * reach * reach)) continue;
    if (node.count == 0) {
      waiting[depth++] = node.first;
      waiting[depth++] = node.first + 1;
      continue;
    }
    for (int i = node.first; i < node.first + node.count; ++i) see(i);
  }
}

}  // namespace baywright::geometry
