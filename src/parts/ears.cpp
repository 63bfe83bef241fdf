// After G. H. Meisters, "Polygons have ears" (1975): a corner whose triangle holds no other corner is cut off, until a
// triangle is left. The polygon is looked at along its mean normal (M. E. Newell's sum over the edges).
#include "parts/ears.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>

namespace baywright::parts {

using geometry::Vec2;
using geometry::Vec3;

namespace {

Vec3 mean_normal(std::span<const Vec3> corners) {
  Vec3 normal(0.0);
  for (std::size_t i = 0; i < corners.size(); ++i)
    normal += glm::cross(corners[i] - corners[0], corners[(i + 1) % corners.size()] - corners[0]);
  return normal;
}

/// The two axes that are left when the one nearest the normal is dropped, in the order that keeps the polygon
/// counter-clockwise.
std::vector<Vec2> flattened(std::span<const Vec3> corners) {
  const Vec3 normal = mean_normal(corners);
  int drop = 0;
  for (int axis = 1; axis < 3; ++axis)
    if (std::abs(normal[axis]) > std::abs(normal[drop])) drop = axis;
  int u = (drop + 1) % 3;
  int v = (drop + 2) % 3;
  if (normal[drop] < 0.0) std::swap(u, v);
  std::vector<Vec2> flat;
  flat.reserve(corners.size());
  for (const Vec3& p : corners) flat.emplace_back(p[u] - corners[0][u], p[v] - corners[0][v]);
  return flat;
}

double turn(const Vec2& a, const Vec2& b, const Vec2& c) {
  return (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x);
}

class Cutter {
 public:
  Cutter(std::vector<Vec2> flat, long& work) : flat_(std::move(flat)), work_(work) {
    double reach = 0.0;
    for (const Vec2& p : flat_) reach = std::max(reach, std::max(std::abs(p.x), std::abs(p.y)));
    straight_ = 1e-14 * reach * reach;  // an area below it is rounding
    for (std::size_t i = 0; i < flat_.size(); ++i) ring_.push_back(static_cast<int>(i));
  }

  std::vector<std::array<int, 3>> cut() {
    std::vector<std::array<int, 3>> out;
    std::size_t at = 0;
    while (ring_.size() > 3) {
      const std::size_t ear = next_ear(at);
      out.push_back({before(ear), ring_[ear], after(ear)});
      ring_.erase(ring_.begin() + static_cast<std::ptrdiff_t>(ear));
      at = ear % ring_.size();
    }
    out.push_back({ring_[0], ring_[1], ring_[2]});
    return out;
  }

 private:
  [[nodiscard]] int before(std::size_t i) const { return ring_[(i + ring_.size() - 1) % ring_.size()]; }
  [[nodiscard]] int after(std::size_t i) const { return ring_[(i + 1) % ring_.size()]; }
  [[nodiscard]] const Vec2& point(int corner) const { return flat_[static_cast<std::size_t>(corner)]; }

  [[nodiscard]] double turn_at(std::size_t i) const { return turn(point(before(i)), point(ring_[i]), point(after(i))); }

  /// The first ear from there on; where there is none, the polygon is not simple, and the widest corner goes.
  std::size_t next_ear(std::size_t from) {
    std::size_t widest = from;
    double most = -1.0;
    for (std::size_t k = 0; k < ring_.size(); ++k) {
      const std::size_t i = (from + k) % ring_.size();
      const double area = turn_at(i);
      if (area > most) {
        most = area;
        widest = i;
      }
      if (area > straight_ && is_empty(i)) return i;
    }
    return widest;
  }

  /// No other corner in the triangle or on its border; one at the same place as its own corners does not count.
  bool is_empty(std::size_t i) {
    const Vec2& a = point(before(i));
    const Vec2& b = point(ring_[i]);
    const Vec2& c = point(after(i));
    for (std::size_t k = 0; k < ring_.size(); ++k) {
      ++work_;
      const Vec2& p = point(ring_[k]);
      if (p == a || p == b || p == c) continue;
      if (turn(a, b, p) >= -straight_ && turn(b, c, p) >= -straight_ && turn(c, a, p) >= -straight_) return false;
    }
    return true;
  }

  std::vector<Vec2> flat_;
  long& work_;
  double straight_ = 0.0;
  std::vector<int> ring_;
};

}  // namespace

std::vector<std::array<int, 3>> cut_ears(std::span<const Vec3> corners, long& work) {
  if (corners.size() < 3) return {};
  if (corners.size() == 3) return {{0, 1, 2}};
  return Cutter(flattened(corners), work).cut();
}

}  // namespace baywright::parts
