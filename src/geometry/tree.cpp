#include "geometry/tree.h"

#include <algorithm>
#include <cstddef>
#include <numeric>

namespace baywright::geometry {
namespace {

constexpr int leaf_size = 4;  // not tuned: from 1 to 16 the timings lie within the noise of the machine

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

}  // namespace

Tree::Tree(std::span<const Bounds> boxes) : order_(boxes.size()), boxes_(boxes.begin(), boxes.end()) {
  if (boxes.empty()) return;
  std::iota(order_.begin(), order_.end(), 0);
  std::vector<Vec3> centres;
  centres.reserve(boxes.size());
  for (const Bounds& box : boxes) {
    // Empty bounds have no centre; any will do, as nothing comes near them, but NaN would break the ordering.
    centres.push_back(box.low.x <= box.high.x ? 0.5 * (box.low + box.high) : Vec3{0.0});
  }
  nodes_.reserve(boxes.size());
  nodes_.push_back({Bounds::empty(), 0, 0});
  split(0, 0, static_cast<int>(boxes.size()), boxes, centres);
}

void Tree::split(int node, int first, int count, std::span<const Bounds> boxes, std::span<const Vec3> centres) {
  const auto begin = order_.begin() + first;
  Bounds all = Bounds::empty();
  Bounds spread = Bounds::empty();
  for (auto entry = begin; entry != begin + count; ++entry) {
    all.add(boxes[at(*entry)]);
    spread.add(centres[at(*entry)]);
  }
  if (count <= leaf_size) {
    nodes_[at(node)] = {all, first, count};
    return;
  }
  // Halves by count, so the depth is the logarithm of the count whatever the boxes are, equal ones too.
  const Vec3 size = spread.high - spread.low;
  const int axis = size.x >= size.y && size.x >= size.z ? 0 : size.y >= size.z ? 1 : 2;
  const int half = count / 2;
  std::nth_element(begin, begin + half, begin + count,
                   [&](int a, int b) { return centres[at(a)][axis] < centres[at(b)][axis]; });
  const int left = static_cast<int>(nodes_.size());
  nodes_[at(node)] = {all, left, 0};
  nodes_.resize(nodes_.size() + 2);
  split(left, first, half, boxes, centres);
  split(left + 1, first + half, count - half, boxes, centres);
}

void Tree::near(const Bounds& asked, double reach, std::vector<int>& found) const {
  found.clear();
  if (nodes_.empty()) return;
  int waiting[64];  // one sibling a level, and a level halves the count of an int
  int depth = 0;
  waiting[depth++] = 0;
  while (depth > 0) {
    const Node& node = nodes_[at(waiting[--depth])];
    if (!(node.bounds.distance(asked) <= reach)) continue;
    if (node.count == 0) {
      waiting[depth++] = node.first;
      waiting[depth++] = node.first + 1;
      continue;
    }
    for (int i = node.first; i < node.first + node.count; ++i) {
      const int box = order_[at(i)];
      if (boxes_[at(box)].distance(asked) <= reach) found.push_back(box);
    }
  }
  std::sort(found.begin(), found.end());
}

}  // namespace baywright::geometry
