#include "geometry/mesh_edges.h"

#include <algorithm>

namespace baywright::geometry {

std::vector<MeshEdge> edges_of(std::span<const Mesh::Triangle> triangles, std::size_t vertices) {
  // Sorted into boxes by the lower end, which leaves a handful in each.
  std::vector<std::size_t> start(vertices + 1, 0);
  const auto each = [&](const auto& see) {
    for (std::size_t i = 0; i < triangles.size(); ++i) {
      for (std::size_t k = 0; k < 3; ++k) {
        const int from = triangles[i][k];
        const int to = triangles[i][(k + 1) % 3];
        see(MeshEdge{std::min(from, to), std::max(from, to), static_cast<int>(i), from < to});
      }
    }
  };
  each([&](const MeshEdge& edge) { ++start[static_cast<std::size_t>(edge.low) + 1]; });
  for (std::size_t v = 1; v < start.size(); ++v) start[v] += start[v - 1];
  std::vector<MeshEdge> edges(3 * triangles.size());
  std::vector<std::size_t> next = start;
  each([&](const MeshEdge& edge) { edges[next[static_cast<std::size_t>(edge.low)]++] = edge; });
  for (std::size_t v = 0; v + 1 < start.size(); ++v) {
    std::sort(edges.begin() + static_cast<std::ptrdiff_t>(start[v]),
              edges.begin() + static_cast<std::ptrdiff_t>(start[v + 1]), [](const MeshEdge& p, const MeshEdge& q) {
                return p.high != q.high ? p.high < q.high : p.triangle < q.triangle;
              });
  }
  return edges;
}

}  // namespace baywright::geometry
