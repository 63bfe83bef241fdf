// The tree against itself. Neighbours that share an edge cross only where they are folded flat onto each other;
// neighbours that share a corner, and all others, where an edge of one passes through the inside of the other.
#include "geometry/mesh_crossing.h"

#include "geometry/triangle_side.h"

#include <algorithm>
#include <utility>

namespace baywright::geometry {

namespace {

/// So that no input takes minutes: five seconds of work where it was measured. A clean surface has about ten pairs for
/// each triangle; two fans of 1,000 triangles about one corner each took 0.35 s, two of 5,000 come to the limit.
constexpr long most_pairs = 50'000'000;

class Search {
 public:
  explicit Search(const Mesh::Data& data) : data_(data), tree_(data.tree) {}

  SelfCrossing run() {
    waiting_.emplace_back(0, 0);
    while (!waiting_.empty() && pairs_ < most_pairs) {
      const auto [one, other] = waiting_.back();
      waiting_.pop_back();
      step(one, other);
    }
    if (!waiting_.empty()) ++found_.count;
    return found_;
  }

 private:
  void step(int one, int other) {
    const TriangleTree::Node& a = tree_.node(one);
    const TriangleTree::Node& b = tree_.node(other);
    ++pairs_;
    if (one == other) {
      if (a.count > 0) return leaves(a, a, true);
      waiting_.emplace_back(a.first, a.first);
      waiting_.emplace_back(a.first + 1, a.first + 1);
      waiting_.emplace_back(a.first, a.first + 1);
      return;
    }
    if (!meet(a, b)) return;
    if (a.count > 0 && b.count > 0) return leaves(a, b, false);
    if (b.count > 0 || (a.count == 0 && a.size >= b.size)) {
      waiting_.emplace_back(a.first, other);
      waiting_.emplace_back(a.first + 1, other);
    } else {
      waiting_.emplace_back(one, b.first);
      waiting_.emplace_back(one, b.first + 1);
    }
  }

  [[nodiscard]] static bool meet(const TriangleTree::Node& a, const TriangleTree::Node& b) {
    const Vec3 reach = (a.half + b.half) * (1.0 + 1e-14) + 1e-15 * (glm::abs(a.middle) + glm::abs(b.middle));
    const Vec3 away = glm::abs(a.middle - b.middle);
    return away.x <= reach.x && away.y <= reach.y && away.z <= reach.z;
  }

  void leaves(const TriangleTree::Node& a, const TriangleTree::Node& b, bool same) {
    for (int i = a.first; i < a.first + a.count; ++i) {
      for (int j = same ? i + 1 : b.first; j < b.first + b.count; ++j) {
        ++pairs_;
        if (crossed(i, j)) {
          if (found_.count++ == 0) found_.where = (tree_.at(i)[0] + tree_.at(i)[1] + tree_.at(i)[2]) / 3.0;
        }
      }
    }
  }

  [[nodiscard]] static bool apart(const Corners& a, const Corners& b) {
    for (int axis = 0; axis < 3; ++axis) {
      const auto [low_a, high_a] = std::minmax({a[0][axis], a[1][axis], a[2][axis]});
      const auto [low_b, high_b] = std::minmax({b[0][axis], b[1][axis], b[2][axis]});
      if (low_a > high_b || low_b > high_a) return true;
    }
    return false;
  }

  [[nodiscard]] bool crossed(int i, int j) const {
    const Corners& a = tree_.at(i);
    const Corners& b = tree_.at(j);
    if (apart(a, b)) return false;
    const Mesh::Triangle& ta = data_.triangles[static_cast<std::size_t>(tree_.name(i))];
    const Mesh::Triangle& tb = data_.triangles[static_cast<std::size_t>(tree_.name(j))];
    std::array<std::size_t, 3> of_a{};
    std::array<std::size_t, 3> of_b{};
    std::size_t shared = 0;
    for (std::size_t k = 0; k < 3; ++k) {
      for (std::size_t l = 0; l < 3; ++l) {
        if (ta[k] != tb[l]) continue;
        of_a[shared] = k;
        of_b[shared++] = l;
      }
    }
    if (shared == 0) return cross(a, b);
    if (shared == 1 && apart_about(a, of_a[0], b, of_b[0])) return false;
    if (shared == 1) {
      // Only the side opposite of the shared corner can pass through the other.
      return pierces(a[(of_a[0] + 1) % 3], a[(of_a[0] + 2) % 3], b) ||
             pierces(b[(of_b[0] + 1) % 3], b[(of_b[0] + 2) % 3], a) || flat_over(a, b, of_b[0]);
    }
    if (shared == 3) return false;
    const std::size_t third_a = 3 - of_a[0] - of_a[1];
    const std::size_t third_b = 3 - of_b[0] - of_b[1];
    // Folded where both third corners are on one side of the shared edge, and all in one plane.
    const Vec3 edge = a[of_a[1]] - a[of_a[0]];
    const Vec3 to_a = glm::cross(edge, a[third_a] - a[of_a[0]]);
    const Vec3 to_b = glm::cross(edge, b[third_b] - a[of_a[0]]);
    return glm::dot(to_a, to_b) > 0.0 && side_of(a[0], a[1], a[2], b[third_b]) == 0;
  }

  /// Whether a plane through the shared corner has the one triangle clearly on one side and the other on the other: the
  /// plane square to the difference of their ways is tried. Saves most pairs the exact tests.
  [[nodiscard]] static bool apart_about(const Corners& a, std::size_t at_a, const Corners& b, std::size_t at_b) {
    const Vec3 a1 = a[(at_a + 1) % 3] - a[at_a];
    const Vec3 a2 = a[(at_a + 2) % 3] - a[at_a];
    const Vec3 b1 = b[(at_b + 1) % 3] - b[at_b];
    const Vec3 b2 = b[(at_b + 2) % 3] - b[at_b];
    const Vec3 d = glm::normalize(a1 + a2) - glm::normalize(b1 + b2);
    const double slack = 1e-12 * (glm::length(a1) + glm::length(a2) + glm::length(b1) + glm::length(b2));
    return glm::dot(a1, d) > slack && glm::dot(a2, d) > slack && glm::dot(b1, d) < -slack && glm::dot(b2, d) < -slack;
  }

  /// Two triangles of one plane that share a corner and lie over each other, looking the same way.
  [[nodiscard]] static bool flat_over(const Corners& a, const Corners& b, std::size_t at_b) {
    if (side_of(a[0], a[1], a[2], b[(at_b + 1) % 3]) != 0 || side_of(a[0], a[1], a[2], b[(at_b + 2) % 3]) != 0) {
      return false;
    }
    return cross(a, b);
  }

  const Mesh::Data& data_;
  const TriangleTree& tree_;
  std::vector<std::pair<int, int>> waiting_;
  long pairs_ = 0;
  SelfCrossing found_;
};

}  // namespace

SelfCrossing self_crossing(const Mesh::Data& data) {
  if (data.tree.nodes.empty()) return {};
  return Search(data).run();
}

}  // namespace baywright::geometry
