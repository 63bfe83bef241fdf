#include "geometry/sheet.h"

#include "geometry/mesh_data.h"

#include <algorithm>
#include <cmath>

namespace baywright::geometry {

Sheet sheet(const std::array<Vec3, 3>& corners) {
  // Along the longest edge: the plane of a sliver is then as sure as its height allows.
  std::size_t first = 0;
  double longest = -1.0;
  for (std::size_t i = 0; i < 3; ++i) {
    const Vec3 edge = corners[(i + 1) % 3] - corners[i];
    if (glm::dot(edge, edge) > longest) {
      longest = glm::dot(edge, edge);
      first = i;
    }
  }
  const Vec3 edge = corners[(first + 1) % 3] - corners[first];
  const Vec3 other = corners[(first + 2) % 3] - corners[first];
  const double length = glm::length(edge);
  const Vec3 u = edge / length;
  Vec3 v = other - u * glm::dot(other, u);
  v = glm::normalize(v - u * glm::dot(v, u));
  v = glm::normalize(v - u * glm::dot(v, u));
  Sheet found;
  found.piece.corners = {{0.0, 0.0}, {length, 0.0}, {glm::dot(other, u), glm::dot(other, v)}};
  found.pose = {Mat3{u, v, glm::cross(u, v)}, corners[first]};
  return found;
}

Sheet sheet(const Placed& mesh, int triangle) {
  Corners corners = mesh.solid.mesh()->data().corners(triangle);
  for (Vec3& corner : corners) corner = mesh.pose.point(corner);
  return sheet(corners);
}

void triangles_near(const Placed& mesh, const Bounds& asked, double reach, std::vector<int>& found) {
  found.clear();
  if (mesh.solid.mesh() == nullptr || !(asked.low.x <= asked.high.x)) return;
  const TriangleTree& tree = mesh.solid.mesh()->data().tree;
  if (tree.nodes.empty()) return;
  const Mat3 spread = sizes(mesh.pose.turn);
  const Vec3 middle = 0.5 * (asked.low + asked.high);
  const Vec3 half = 0.5 * (asked.high - asked.low);
  // What the placing of a box can lose, so that a triangle that just comes within reach is not missed.
  const double slack = 1e-15 * (glm::length(mesh.pose.shift) + glm::length(middle) + glm::length(half) +
                                glm::length(tree.nodes[0].middle) + tree.nodes[0].size);
  const double limit = (std::max(reach, 0.0) + slack) * (std::max(reach, 0.0) + slack);
  int waiting[TriangleTree::deepest];
  int depth = 0;
  waiting[depth++] = 0;
  while (depth > 0) {
    const TriangleTree::Node& node = tree.node(waiting[--depth]);
    const Seen box = seen(node, mesh.pose, spread);
    if (!(square_apart(box.middle, box.half, middle, half) <= limit)) continue;
    if (node.count == 0) {
      waiting[depth++] = node.first;
      waiting[depth++] = node.first + 1;
      continue;
    }
    for (int i = node.first; i < node.first + node.count; ++i) {
      Bounds exact = Bounds::empty();
      for (const Vec3& corner : tree.at(i)) exact.add(mesh.pose.point(corner));
      if (exact.distance(asked) <= std::max(reach, 0.0) + slack) found.push_back(tree.name(i));
    }
  }
  std::sort(found.begin(), found.end());
}

}  // namespace baywright::geometry
