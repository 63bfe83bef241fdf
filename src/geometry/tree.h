#pragma once
// A bounding volume tree over the boxes of a scene. Built once, asked often.
#include "geometry/vectors.h"

#include <functional>
#include <span>
#include <vector>

namespace baywright::geometry {

class Tree {
 public:
  Tree() = default;
  explicit Tree(std::span<const Bounds> boxes);

  /// Indices (of the span given at construction, rising) of the boxes that come within `reach` mm of `asked`. Replaces
  /// what `found` held.
  void near(const Bounds& asked, double reach, std::vector<int>& found) const;

 private:
  struct Node {
    Bounds bounds;
    int first;  // leaf: first of `count` entries in order_; inner: left child, right is left + 1
    int count;  // 0 for an inner node
  };
  void split(int node, int first, int count, std::span<const Bounds> boxes, std::span<const Vec3> centres);

  std::vector<Node> nodes_;
  std::vector<int> order_;
  std::vector<Bounds> boxes_;
};

}  // namespace baywright::geometry
