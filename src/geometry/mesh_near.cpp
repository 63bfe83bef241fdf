// Both trees are walked down together from the roots, the larger box split first and the nearer child first. All of b
// is seen in the coordinates of a. Two boxes are as far apart as they are along the axes of the one, or of the other,
// whichever is more; where the surfaces run aslant the second boxes, which lie flat on them, say more.
#include "geometry/mesh_near.h"

#include "geometry/triangle_gap.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace baywright::geometry {

namespace {

double reach_of(const TriangleTree& tree) {
  return glm::length(tree.nodes[0].middle) + tree.nodes[0].size;
}

/// The square of how far a turned box and another are apart along the normal of the first and aside of it. `out` is
/// that normal as the other sees it, `along` the way between the middles along it, `square` the square of that way.
double turned_apart(const TriangleTree::Turned& box, const TriangleTree::Turned& other, const Vec3& out, double along,
                    double square) {
  const double apart = std::abs(along) - box.half.z - std::abs(glm::dot(out, other.axes[0])) * other.half.x -
                       std::abs(glm::dot(out, other.axes[1])) * other.half.y -
                       std::abs(glm::dot(out, other.axes[2])) * other.half.z;
  const double aside = std::sqrt(std::max(0.0, square - along * along)) - box.aside - other.reach;
  return (apart > 0.0 ? apart * apart : 0.0) + (aside > 0.0 ? aside * aside : 0.0);
}

/// The better of the two ways round; `pose` takes the coordinates of b to those of a and `back` the other way.
double turned_apart(const TriangleTree::Turned& a, const TriangleTree::Turned& b, const Pose& pose, const Pose& back,
                    double enough) {
  const Vec3 link = pose.point(b.middle) - a.middle;
  const double square = glm::dot(link, link);
  const double from_a = turned_apart(a, b, back.turn * a.axes[2], glm::dot(link, a.axes[2]), square);
  if (from_a > enough) return from_a;
  const Vec3 out = pose.turn * b.axes[2];
  return std::max(from_a, turned_apart(b, a, out, glm::dot(link, out), square));
}

/// A leaf that reaches far along d, by the middles of the boxes: not always the farthest.
int foremost_leaf(const TriangleTree& tree, const Vec3& d) {
  int i = 0;
  while (tree.node(i).count == 0) {
    const int left = tree.node(i).first;
    i = glm::dot(tree.node(left).middle, d) >= glm::dot(tree.node(left + 1).middle, d) ? left : left + 1;
  }
  return i;
}

/// Two meshes in the coordinates of the first.
class Both {
 public:
  Both(const Placed& a, const Placed& b)
      : a_(a.solid.mesh()->data().tree),
        b_(b.solid.mesh()->data().tree),
        of_b_{glm::transpose(a.pose.turn) * b.pose.turn, glm::transpose(a.pose.turn) * (b.pose.shift - a.pose.shift)},
        of_a_(of_b_.inverse()),
        spread_b_(sizes(of_b_.turn)),
        spread_a_(sizes(of_a_.turn)),
        skew_(skew(a.pose.turn) + skew(b.pose.turn)) {}

  /// What a coordinate can lose on its way, mm.
  [[nodiscard]] double rounding() const {
    return (4e-15 + skew_) * (reach_of(a_) + reach_of(b_) + glm::length(of_b_.shift));
  }

 protected:
  [[nodiscard]] Seen seen_of_a(int i) const { return seen(a_.node(i), of_a_, spread_a_); }
  [[nodiscard]] Seen seen_of_b(int i) const { return seen(b_.node(i), of_b_, spread_b_); }

  /// Of a node of each, and the first box of each as the other sees it; a lower bound, more than `enough` if it can.
  [[nodiscard]] double square_apart_at(int i, const Seen& a_seen, int j, const Seen& b_seen, double enough) const {
    const TriangleTree::Node& a = a_.node(i);
    const TriangleTree::Node& b = b_.node(j);
    double square = square_apart(b_seen.middle, b_seen.half, a.middle, a.half);
    if (square > enough) return square;
    square = std::max(square, square_apart(a_seen.middle, a_seen.half, b.middle, b.half));
    if (square > enough) return square;
    const TriangleTree::Turned& turned_a = a_.turned[static_cast<std::size_t>(i)];
    const TriangleTree::Turned& turned_b = b_.turned[static_cast<std::size_t>(j)];
    if (!turned_a.fitted || !turned_b.fitted) return square;
    return std::max(square, turned_apart(turned_a, turned_b, of_b_, of_a_, enough));
  }

  /// Calls `measure` with the leaves that meet and are nearer than the square of `limit`, which it may lower. The
  /// nearer child first.
  template <typename Measure>
  void walk(const double& limit, const Measure& measure) const {
    const Seen a_seen = seen_of_a(0);
    const Seen b_seen = seen_of_b(0);
    if (square_apart_at(0, a_seen, 0, b_seen, limit) <= limit) walk(0, a_seen, 0, b_seen, limit, measure);
  }

  template <typename Measure>
  void walk(int i, const Seen& a_seen, int j, const Seen& b_seen, const double& limit, const Measure& measure) const {
    const TriangleTree::Node& a = a_.node(i);
    const TriangleTree::Node& b = b_.node(j);
    if (a.count > 0 && b.count > 0) return measure(i, j);
    if (b.count > 0 || (a.count == 0 && a.size >= b.size)) {
      const int one = a.first;
      const Seen seen_one = seen_of_a(one);
      const Seen seen_other = seen_of_a(one + 1);
      const double to_one = square_apart_at(one, seen_one, j, b_seen, limit);
      const double to_other = square_apart_at(one + 1, seen_other, j, b_seen, limit);
      if (to_one <= to_other) {
        if (to_one <= limit) walk(one, seen_one, j, b_seen, limit, measure);
        if (to_other <= limit) walk(one + 1, seen_other, j, b_seen, limit, measure);
      } else {
        if (to_other <= limit) walk(one + 1, seen_other, j, b_seen, limit, measure);
        if (to_one <= limit) walk(one, seen_one, j, b_seen, limit, measure);
      }
      return;
    }
    const int one = b.first;
    const Seen seen_one = seen_of_b(one);
    const Seen seen_other = seen_of_b(one + 1);
    const double to_one = square_apart_at(i, a_seen, one, seen_one, limit);
    const double to_other = square_apart_at(i, a_seen, one + 1, seen_other, limit);
    if (to_one <= to_other) {
      if (to_one <= limit) walk(i, a_seen, one, seen_one, limit, measure);
      if (to_other <= limit) walk(i, a_seen, one + 1, seen_other, limit, measure);
    } else {
      if (to_other <= limit) walk(i, a_seen, one + 1, seen_other, limit, measure);
      if (to_one <= limit) walk(i, a_seen, one, seen_one, limit, measure);
    }
  }

  [[nodiscard]] Corners corners_b(int i) const {
    const Corners& c = b_.at(i);
    return {of_b_.point(c[0]), of_b_.point(c[1]), of_b_.point(c[2])};
  }

  const TriangleTree& a_;
  const TriangleTree& b_;
  Pose of_b_;  // to the coordinates of a
  Pose of_a_;  // to those of b
  Mat3 spread_b_;
  Mat3 spread_a_;
  double skew_;
};

class Nearest : public Both {
 public:
  Nearest(const Placed& a, const Placed& b, double reach) : Both(a, b), pose_(a.pose), limit_(reach * reach) {}

  SurfaceNear run() {
    guess();
    walk(limit_, [this](int i, int j) { measure(i, j); });
    SurfaceNear found;
    found.error = rounding();
    if (best_a_ < 0) return found;
    found.mm = std::sqrt(best_.square);
    found.on_a = pose_.point(best_.on_a);
    found.on_b = pose_.point(best_.on_b);
    found.normal = pose_.direction(best_.normal);
    found.a = a_.name(best_a_);
    found.b = b_.name(best_b_);
    return found;
  }

 private:
  /// Measures what is foremost toward the other mesh: with a good bound from the start most of the trees is never seen.
  void guess() {
    Vec3 toward = of_b_.point(b_.node(0).middle) - a_.node(0).middle;
    for (int round = 0; round < 3; ++round) {
      measure(foremost_leaf(a_, toward), foremost_leaf(b_, of_a_.direction(-toward)));
      if (best_a_ < 0 || !(limit_mm_ > 0.0)) return;
      toward = way_;
    }
  }

  void measure(int leaf_a, int leaf_b) {
    const TriangleTree::Node& a = a_.node(leaf_a);
    const TriangleTree::Node& b = b_.node(leaf_b);
    for (int j = b.first; j < b.first + b.count; ++j) {
      const Corners of_b = corners_b(j);
      for (int i = a.first; i < a.first + a.count; ++i) {
        if (parted(a_.at(i), of_b)) continue;
        const TrianglesNear found = nearest(a_.at(i), of_b);
        if (!(found.square < limit_)) continue;
        limit_ = found.square;
        best_ = found;
        best_a_ = i;
        best_b_ = j;
        const double length = std::sqrt(found.square);
        way_ = length > 0.0 ? (found.on_b - found.on_a) / length : Vec3{0.0};
        limit_mm_ = length;
      }
    }
  }

  /// As far apart as the best along the direction of the best: most pairs are.
  [[nodiscard]] bool parted(const Corners& a, const Corners& b) const {
    if (best_a_ < 0) return false;
    const double most = std::max({glm::dot(a[0], way_), glm::dot(a[1], way_), glm::dot(a[2], way_)});
    const double least = std::min({glm::dot(b[0], way_), glm::dot(b[1], way_), glm::dot(b[2], way_)});
    return least - most >= limit_mm_;
  }

  Pose pose_;
  double limit_;
  double limit_mm_ = 0.0;
  Vec3 way_{0.0};
  TrianglesNear best_;
  int best_a_ = -1;
  int best_b_ = -1;
};

class Within : public Both {
 public:
  Within(const Placed& a, const Placed& b, double reach, std::size_t most)
      : Both(a, b), limit_((reach + rounding()) * (reach + rounding())), most_(most) {}

  std::vector<TrianglePair> run() {
    walk(limit_, [this](int i, int j) { measure(i, j); });
    return std::move(found_);
  }

 private:
  void measure(int leaf_a, int leaf_b) {
    const TriangleTree::Node& a = a_.node(leaf_a);
    const TriangleTree::Node& b = b_.node(leaf_b);
    for (int j = b.first; j < b.first + b.count && found_.size() < most_; ++j) {
      const Corners of_b = corners_b(j);
      for (int i = a.first; i < a.first + a.count; ++i) {
        if (nearest(a_.at(i), of_b).square <= limit_ && found_.size() < most_) {
          found_.push_back({a_.name(i), b_.name(j)});
        }
      }
    }
  }

  double limit_;
  std::size_t most_;
  std::vector<TrianglePair> found_;
};

}  // namespace

SurfaceNear nearest(const Placed& a, const Placed& b, double reach) {
  return Nearest(a, b, reach).run();
}

std::vector<TrianglePair> pairs_within(const Placed& a, const Placed& b, double reach, std::size_t most) {
  return Within(a, b, reach, most).run();
}

double distance(const Mesh::Data& mesh, const Vec3& p, double reach) {
  const TriangleTree& tree = mesh.tree;
  double limit = reach * reach;
  bool found = false;
  struct Waiting {
    int node;
    double square;
  };
  const auto to = [&](int i) { return Waiting{i, square_apart(p, Vec3{0.0}, tree.node(i).middle, tree.node(i).half)}; };
  Waiting waiting[TriangleTree::deepest];
  int depth = 0;
  waiting[depth++] = to(0);
  while (depth > 0) {
    const Waiting next = waiting[--depth];
    if (!(next.square <= limit)) continue;
    const TriangleTree::Node& node = tree.node(next.node);
    if (node.count == 0) {
      Waiting one = to(node.first);
      Waiting other = to(node.first + 1);
      if (one.square < other.square) std::swap(one, other);
      waiting[depth++] = one;
      waiting[depth++] = other;
      continue;
    }
    for (int i = node.first; i < node.first + node.count; ++i) {
      const Vec3 link = nearest_on(tree.at(i), p) - p;
      const double square = glm::dot(link, link);
      if (!(square <= limit)) continue;
      limit = square;
      found = true;
    }
  }
  return found ? std::sqrt(limit) : std::numeric_limits<double>::infinity();
}

double most_along(const TriangleTree& tree, const Vec3& d) {
  const Vec3 size = glm::abs(d);
  double most = -std::numeric_limits<double>::infinity();
  const auto bound = [&](int i) { return glm::dot(tree.node(i).middle, d) + glm::dot(tree.node(i).half, size); };
  struct Waiting {
    int node;
    double bound;
  };
  Waiting waiting[TriangleTree::deepest];
  int depth = 0;
  waiting[depth++] = {0, bound(0)};
  while (depth > 0) {
    const Waiting next = waiting[--depth];
    if (!(next.bound > most)) continue;
    const TriangleTree::Node& node = tree.node(next.node);
    if (node.count == 0) {
      Waiting one{node.first, bound(node.first)};
      Waiting other{node.first + 1, bound(node.first + 1)};
      if (one.bound > other.bound) std::swap(one, other);
      waiting[depth++] = one;
      waiting[depth++] = other;
      continue;
    }
    for (int i = node.first; i < node.first + node.count; ++i) {
      for (const Vec3& corner : tree.at(i)) most = std::max(most, glm::dot(corner, d));
    }
  }
  return most;
}

}  // namespace baywright::geometry
