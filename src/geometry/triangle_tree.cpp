#include "geometry/triangle_tree.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace baywright::geometry {

namespace {

constexpr int leaf_size = 2;  // not tuned

/// Nodes of no more triangles than this get a turned box of their own; for larger ones the box along the mesh's axes
/// stands in. Between 64 and all, spheres of 10,000 triangles take as long; with 100,000 they gain a tenth at 1024, and
/// planting takes a quarter longer.
constexpr int most_fitted = 1024;

struct Entry {
  Vec3 centre;
  int triangle;
};

class Builder {
 public:
  Builder(const std::vector<Corners>& triangles, TriangleTree& tree) : triangles_(triangles), tree_(tree) {
    entries_.reserve(triangles.size());
    for (std::size_t i = 0; i < triangles.size(); ++i) {
      const Corners& c = triangles[i];
      entries_.push_back({c[0] + c[1] + c[2], static_cast<int>(i)});  // three times the middle
    }
    tree.nodes.reserve(triangles.size() + 1);
    tree.corners.reserve(triangles.size());
    tree.triangle.reserve(triangles.size());
  }

  void run() {
    resize(1);
    split(0, 0, static_cast<int>(entries_.size()));
  }

 private:
  void resize(std::size_t count) {
    tree_.nodes.resize(count);
    tree_.turned.resize(count);
  }

  Bounds split(int node, int first, int count) {
    if (count <= leaf_size) return leaf(node, first, count);
    const auto begin = entries_.begin() + first;
    Bounds spread = Bounds::empty();
    for (auto entry = begin; entry != begin + count; ++entry) spread.add(entry->centre);
    // Halves by count, so the depth is the logarithm of the count whatever the triangles are.
    const Vec3 size = spread.high - spread.low;
    const int axis = size.x >= size.y && size.x >= size.z ? 0 : size.y >= size.z ? 1 : 2;
    const int half = count / 2;
    std::nth_element(begin, begin + half, begin + count,
                     [axis](const Entry& p, const Entry& q) { return p.centre[axis] < q.centre[axis]; });
    const int left = static_cast<int>(tree_.nodes.size());
    resize(tree_.nodes.size() + 2);
    Bounds box = split(left, first, half);
    box.add(split(left + 1, first + half, count - half));
    set(node, box, left, 0);
    if (count <= most_fitted) fit(node, first, count);
    return box;
  }

  Bounds leaf(int node, int first, int count) {
    Bounds box = Bounds::empty();
    for (int i = first; i < first + count; ++i) {
      const int triangle = entries_[static_cast<std::size_t>(i)].triangle;
      const Corners& corners = triangles_[static_cast<std::size_t>(triangle)];
      for (const Vec3& corner : corners) box.add(corner);
      tree_.corners.push_back(corners);
      tree_.triangle.push_back(triangle);
    }
    set(node, box, first, count);
    fit(node, first, count);
    return box;
  }

  void set(int node, const Bounds& box, int first, int count) {
    // The middle rounds: half is made to reach both ends from it.
    const Vec3 middle = 0.5 * (box.low + box.high);
    const Vec3 half = glm::max(box.high - middle, middle - box.low);
    tree_.nodes[static_cast<std::size_t>(node)] = {middle, half, first, count, glm::length(half)};
    tree_.turned[static_cast<std::size_t>(node)] = {Mat3{1.0},         middle, half, std::hypot(half.x, half.y),
                                                    glm::length(half), false};
  }

  /// The leaves below are done, so what the node holds stands at the end of the tree's corners from `first` on.
  void fit(int node, int first, int count) {
    const auto begin = tree_.corners.begin() + first;
    // Flat on the sum of the areas, and along the longest way between two of its points that is cheap to find.
    Vec3 area{0.0};
    for (auto t = begin; t != begin + count; ++t) area += glm::cross((*t)[1] - (*t)[0], (*t)[2] - (*t)[0]);
    const double size = glm::length(area);
    if (!(size > 0.0)) return;
    const Vec3 w = area / size;
    const Vec3 start = (*begin)[0];
    Vec3 along{0.0};
    for (auto t = begin; t != begin + count; ++t) {
      for (const Vec3& corner : *t) {
        const Vec3 way = corner - start;
        if (glm::dot(way, way) > glm::dot(along, along)) along = way;
      }
    }
    along -= w * glm::dot(along, w);
    const double length = glm::length(along);
    if (!(length > 0.0)) return;
    const Vec3 u = along / length;
    const Mat3 axes{u, glm::cross(w, u), w};
    Bounds box = Bounds::empty();
    for (auto t = begin; t != begin + count; ++t) {
      for (const Vec3& corner : *t)
        box.add(Vec3{glm::dot(corner, axes[0]), glm::dot(corner, axes[1]), glm::dot(corner, axes[2])});
    }
    const Vec3 middle = 0.5 * (box.low + box.high);
    const Vec3 half = 0.5 * (box.high - box.low);
    tree_.turned[static_cast<std::size_t>(node)] = {
        axes, axes * middle, half, std::hypot(half.x, half.y), glm::length(half), true};
  }

  const std::vector<Corners>& triangles_;
  TriangleTree& tree_;
  std::vector<Entry> entries_;
};

}  // namespace

TriangleTree::TriangleTree(const std::vector<Corners>& triangles) {
  if (!triangles.empty()) Builder(triangles, *this).run();
}

}  // namespace baywright::geometry
