#pragma once
// The edges of a list of triangles, those of one edge side by side. Internal.
#include "geometry/mesh.h"

#include <span>
#include <vector>

namespace baywright::geometry {

/// One side of one triangle, by its ends: the lower index first.
struct MeshEdge {
  int low;
  int high;
  int triangle;
  bool rising;  // the triangle runs from `low` to `high`
};

/// All sides, ordered by their ends and then by triangle. Every triangle needs three different corners.
[[nodiscard]] std::vector<MeshEdge> edges_of(std::span<const Mesh::Triangle> triangles, std::size_t vertices);

/// Calls `see` with the sides of each edge.
template <typename See>
void each_edge(const std::vector<MeshEdge>& edges, const See& see) {
  for (std::size_t first = 0; first < edges.size();) {
    std::size_t last = first + 1;
    while (last < edges.size() && edges[last].low == edges[first].low && edges[last].high == edges[first].high) ++last;
    see(std::span<const MeshEdge>(edges).subspan(first, last - first));
    first = last;
  }
}

}  // namespace baywright::geometry
