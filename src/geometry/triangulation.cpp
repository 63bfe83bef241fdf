// A constrained triangulation without a rounded decision: the corners are joined one by one from left to right to the
// hull of those before (a sweep hull), sides of the outlines are then forced in by turning diagonals (S. W. Sloan, "A
// fast algorithm for generating constrained Delaunay triangulations", Computers & Structures 47, 1993), and a flood
// from outside counts how often the outlines wind round each triangle. Turning diagonals toward the largest least angle
// (C. L. Lawson, 1977) only makes it pretty: it may stop anywhere.
#include "geometry/triangulation.h"

#include "geometry/orientation.h"
#include "geometry/outline.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <deque>
#include <optional>
#include <unordered_map>

namespace baywright::geometry {

namespace {

constexpr int none = -1;

bool before(const Vec2& a, const Vec2& b) {
  return a.x < b.x || (a.x == b.x && a.y < b.y);
}

/// What `orientation` decides without rounding.
bool usable(double x) {
  return x == 0.0 || (std::abs(x) > 1e-100 && std::abs(x) < 1e100);
}

/// Without repeated and unusable points, counter-clockwise or not as asked; empty where it has no area.
Outline clean(const Outline& given, bool left) {
  Outline ring;
  for (const Vec2& p : given)
    if (usable(p.x) && usable(p.y) && (ring.empty() || p != ring.back())) ring.push_back(p);
  while (ring.size() > 1 && ring.front() == ring.back()) ring.pop_back();
  const double area = ring.size() < 3 ? 0.0 : signed_area(ring);
  if (!(std::abs(area) > 0.0)) return {};
  if ((area > 0.0) != left) std::reverse(ring.begin(), ring.end());
  return ring;
}

/// Side i runs from corner i to the next, the triangle on its left.
struct Triangle {
  std::array<int, 3> at{};
  std::array<int, 3> beside{none, none, none};

  [[nodiscard]] int side_from(int corner) const { return at[0] == corner ? 0 : at[1] == corner ? 1 : 2; }
  [[nodiscard]] int corner(int i) const { return at[static_cast<std::size_t>(i % 3)]; }
  [[nodiscard]] int over(int i) const { return beside[static_cast<std::size_t>(i % 3)]; }
};

class Net {
 public:
  /// Sorted by `before`, no two alike. No triangles where all lie on one line.
  explicit Net(std::vector<Vec2> points)
      : points_(std::move(points)),
        next_(points_.size(), none),
        last_(points_.size(), none),
        rim_(points_.size(), none),
        of_(points_.size(), none) {
    std::size_t i = start();
    for (; i < points_.size(); ++i) join(static_cast<int>(i));
  }

  /// Makes a to b a side of triangles, or a row of sides where corners lie on it. False: it crosses another forced one.
  bool force(int a, int b) {
    for (std::size_t steps = 0; a != b; ++steps) {
      const auto there = steps < points_.size() ? reach(a, b) : std::nullopt;
      if (!there) return false;
      const bool up = a < *there;
      forced_[key(a, *there)] += up ? 1 : -1;
      a = *there;
    }
    return true;
  }

  void beautify() {
    std::vector<std::pair<int, int>> open;
    for (std::size_t t = 0; t < triangles_.size(); ++t)
      for (int i = 0; i < 3; ++i) open.emplace_back(static_cast<int>(t), i);
    std::size_t left = 64 * triangles_.size();
    while (!open.empty() && left > 0) {
      const auto [t, i] = open.back();
      open.pop_back();
      if (!should_turn(t, i)) continue;
      --left;
      const int other = triangle(t).over(i);
      turn(t, i);
      for (const int each : {t, other})
        for (int k = 0; k < 3; ++k) open.emplace_back(each, k);
    }
  }

  /// How often the forced sides wind round each triangle.
  [[nodiscard]] std::vector<int> windings() const {
    std::vector<int> out(triangles_.size(), 0);
    std::vector<bool> known(triangles_.size(), false);
    std::vector<int> open;
    const auto settle = [&](int t, int winding) {
      if (known[static_cast<std::size_t>(t)]) return;
      known[static_cast<std::size_t>(t)] = true;
      out[static_cast<std::size_t>(t)] = winding;
      open.push_back(t);
    };
    for (std::size_t t = 0; t < triangles_.size(); ++t)
      for (int i = 0; i < 3; ++i)
        if (triangles_[t].over(i) == none) settle(static_cast<int>(t), along(triangles_[t], i));
    while (!open.empty()) {
      const int t = open.back();
      open.pop_back();
      for (int i = 0; i < 3; ++i)
        if (triangle(t).over(i) != none)
          settle(triangle(t).over(i), out[static_cast<std::size_t>(t)] - along(triangle(t), i));
    }
    return out;
  }

  [[nodiscard]] const std::vector<Triangle>& all() const { return triangles_; }
  [[nodiscard]] const Vec2& point(int i) const { return points_[static_cast<std::size_t>(i)]; }

 private:
  [[nodiscard]] Triangle& triangle(int t) { return triangles_[static_cast<std::size_t>(t)]; }
  [[nodiscard]] const Triangle& triangle(int t) const { return triangles_[static_cast<std::size_t>(t)]; }
  [[nodiscard]] int turns(int a, int b, int c) const { return orientation(point(a), point(b), point(c)); }
  static std::uint64_t key(int a, int b) {
    return static_cast<std::uint64_t>(std::min(a, b)) << 32U | static_cast<std::uint64_t>(std::max(a, b));
  }
  static int& in(std::vector<int>& list, int i) { return list[static_cast<std::size_t>(i)]; }

  /// What the forced sides add from the right of side i to its left.
  [[nodiscard]] int along(const Triangle& t, int i) const {
    const int a = t.corner(i);
    const int b = t.corner(i + 1);
    const auto found = forced_.find(key(a, b));
    return found == forced_.end() ? 0 : a < b ? found->second : -found->second;
  }

  // ---- from left to right

  int add(int a, int b, int c) {
    triangles_.push_back({{a, b, c}, {none, none, none}});
    const int t = static_cast<int>(triangles_.size()) - 1;
    for (const int corner : {a, b, c}) in(of_, corner) = t;
    return t;
  }

  void link(int t, int i, int other, int k) {
    triangle(t).beside[static_cast<std::size_t>(i)] = other;
    triangle(other).beside[static_cast<std::size_t>(k)] = t;
  }

  /// After `from` along the hull comes `to`; the hull runs counter-clockwise.
  void follow(int from, int to, int t) {
    in(next_, from) = to;
    in(last_, to) = from;
    in(rim_, from) = t;
  }

  /// The first corners that lie on one line, and the first that does not. The next one's number.
  std::size_t start() {
    std::size_t k = 2;
    while (k < points_.size() && turns(0, static_cast<int>(k) - 1, static_cast<int>(k)) == 0) ++k;
    if (k >= points_.size()) return points_.size();
    const int apex = static_cast<int>(k);
    const bool left = turns(0, apex - 1, apex) > 0;
    int previous = none;
    for (int i = 0; i + 1 < apex; ++i) {
      const int t = left ? add(i, i + 1, apex) : add(i + 1, i, apex);
      if (left)
        follow(i, i + 1, t);
      else
        follow(i + 1, i, t);
      // Sides 1 and 2 go to the apex and from it.
      if (previous != none) link(previous, left ? 1 : 2, t, left ? 2 : 1);
      previous = t;
    }
    const int first = 0;
    const int final = static_cast<int>(triangles_.size()) - 1;
    if (left) {
      follow(apex - 1, apex, final);
      follow(apex, 0, first);
    } else {
      follow(0, apex, first);
      follow(apex, apex - 1, final);
    }
    return k + 1;
  }

  /// To all sides of the hull that it sees: the corner before it is an end of one of them.
  void join(int p) {
    int from = p - 1;
    int to = p - 1;
    while (in(last_, from) != to && turns(in(last_, from), from, p) < 0) from = in(last_, from);
    while (in(next_, to) != from && turns(to, in(next_, to), p) < 0) to = in(next_, to);
    if (from == to) return;
    int previous = none;
    int first = none;
    for (int a = from; a != to;) {
      const int b = in(next_, a);
      const int inner = in(rim_, a);
      const int t = add(b, a, p);
      link(t, 0, inner, triangle(inner).side_from(a));
      if (previous != none) link(previous, 2, t, 1);
      if (first == none) first = t;
      previous = t;
      a = b;
    }
    follow(from, p, first);
    follow(p, to, previous);
  }

  // ---- turning diagonals

  /// Side i from a to b, with c on its left and d on its right, becomes the side from c to d.
  void turn(int t, int i) {
    const int other = triangle(t).over(i);
    const Triangle one = triangle(t);
    const Triangle two = triangle(other);
    const int a = one.corner(i);
    const int b = one.corner(i + 1);
    const int c = one.corner(i + 2);
    const int k = two.side_from(b);
    const int d = two.corner(k + 2);
    triangle(t) = {{c, a, d}, {one.over(i + 2), two.over(k + 1), other}};
    triangle(other) = {{d, b, c}, {two.over(k + 2), one.over(i + 1), t}};
    const auto tell = [&](int outer, int corner, int now) {
      if (outer != none) triangle(outer).beside[static_cast<std::size_t>(triangle(outer).side_from(corner))] = now;
    };
    tell(two.over(k + 1), d, t);
    tell(one.over(i + 1), c, other);
    for (const int corner : {a, c, d}) in(of_, corner) = t;
    in(of_, b) = other;
  }

  /// Whether both triangles at side i make a quadrangle that bends outward at the side's ends.
  [[nodiscard]] bool can_turn(int t, int i) const {
    const Triangle& one = triangle(t);
    if (one.over(i) == none) return false;
    const int a = one.corner(i);
    const int b = one.corner(i + 1);
    const int c = one.corner(i + 2);
    const Triangle& two = triangle(one.over(i));
    const int d = two.corner(two.side_from(b) + 2);
    return turns(c, a, d) > 0 && turns(d, b, c) > 0;
  }

  [[nodiscard]] bool should_turn(int t, int i) const {
    const Triangle& one = triangle(t);
    if (one.over(i) == none || forced_.contains(key(one.corner(i), one.corner(i + 1)))) return false;
    const Triangle& two = triangle(one.over(i));
    const Vec2& d = point(two.corner(two.side_from(one.corner(i + 1)) + 2));
    const Vec2 a = point(one.corner(i)) - d;
    const Vec2 b = point(one.corner(i + 1)) - d;
    const Vec2 c = point(one.corner(i + 2)) - d;
    const auto cross = [](const Vec2& p, const Vec2& q) { return p.x * q.y - p.y * q.x; };
    const double terms[3] = {glm::dot(a, a) * cross(b, c), glm::dot(b, b) * cross(c, a), glm::dot(c, c) * cross(a, b)};
    const double sum = terms[0] + terms[1] + terms[2];
    return sum > 1e-9 * (std::abs(terms[0]) + std::abs(terms[1]) + std::abs(terms[2])) && can_turn(t, i);
  }

  // ---- forcing sides in

  [[nodiscard]] std::vector<int> around(int corner) const {
    std::vector<int> out;
    const int begin = of_[static_cast<std::size_t>(corner)];
    int t = begin;
    do {
      out.push_back(t);
      t = triangle(t).over(triangle(t).side_from(corner) + 2);
    } while (t != none && t != begin);
    if (t == begin) return out;
    for (t = triangle(begin).over(triangle(begin).side_from(corner)); t != none;
         t = triangle(t).over(triangle(t).side_from(corner)))
      out.push_back(t);
    return out;
  }

  /// Makes a side from a toward b: to b or to the first corner on the way, which is returned.
  std::optional<int> reach(int a, int b) {
    const auto on_the_way = [&](int v) { return turns(a, b, v) == 0 && (a < v) == (a < b); };
    for (const int t : around(a)) {
      const int i = triangle(t).side_from(a);
      const int right = triangle(t).corner(i + 1);
      const int left = triangle(t).corner(i + 2);
      if (right == b || on_the_way(right)) return right;
      if (left == b || on_the_way(left)) return left;
      if (turns(a, b, right) < 0 && turns(a, b, left) > 0) return cut_through(a, b, t, right, left);
    }
    return std::nullopt;
  }

  /// As `reach`, where the way leaves triangle t between two of its corners.
  std::optional<int> cut_through(int a, int b, int t, int right, int left) {
    std::deque<std::pair<int, int>> crossed;
    int end = none;
    while (end == none) {
      if (forced_.contains(key(right, left)) || crossed.size() > triangles_.size()) return std::nullopt;
      crossed.emplace_back(right, left);
      t = triangle(t).over(triangle(t).side_from(right));
      if (t == none) return std::nullopt;
      const int ahead = triangle(t).corner(triangle(t).side_from(left) + 2);
      const int side = turns(a, b, ahead);
      if (side == 0)
        end = ahead;
      else
        (side > 0 ? left : right) = ahead;
    }
    std::size_t tries = 16 + crossed.size() * crossed.size() * 4;
    for (; !crossed.empty() && tries > 0; --tries) {
      const auto [from, to] = crossed.front();
      crossed.pop_front();
      const auto [at, i] = side_of(from, to);
      if (at == none) return std::nullopt;
      if (!can_turn(at, i)) {
        crossed.emplace_back(from, to);
        continue;
      }
      turn(at, i);
      const int c = triangle(at).corner(0);
      const int d = triangle(at).corner(2);
      if (c != a && c != end && d != a && d != end && turns(a, end, c) * turns(a, end, d) < 0)
        crossed.emplace_back(c, d);
    }
    return crossed.empty() ? std::optional(end) : std::nullopt;
  }

  /// The triangle with the side from a to b, and its number there.
  [[nodiscard]] std::pair<int, int> side_of(int a, int b) const {
    for (const int t : around(a)) {
      const int i = triangle(t).side_from(a);
      if (triangle(t).corner(i + 1) == b) return {t, i};
      if (triangle(t).corner(i + 2) == b && triangle(t).over(i + 2) != none) {
        const int other = triangle(t).over(i + 2);
        return {other, triangle(other).side_from(a)};
      }
    }
    return {none, 0};
  }

  std::vector<Vec2> points_;
  std::vector<Triangle> triangles_;
  std::vector<int> next_, last_,
      rim_;              // of a corner on the hull: its neighbours, and the triangle at the side after it
  std::vector<int> of_;  // of each corner: some triangle
  std::unordered_map<std::uint64_t, int> forced_;  // how often they run from the lower number to the higher
};

}  // namespace

std::vector<Vec2> triangles(const Outline& outline, const std::vector<Outline>& holes) {
  std::vector<Outline> rings{clean(outline, true)};
  if (rings[0].empty()) return {};
  for (const Outline& hole : holes) rings.push_back(clean(hole, false));
  std::vector<Vec2> points;
  for (const Outline& ring : rings) points.insert(points.end(), ring.begin(), ring.end());
  std::sort(points.begin(), points.end(), before);
  points.erase(std::unique(points.begin(), points.end()), points.end());
  const auto number = [&](const Vec2& p) {
    return static_cast<int>(std::lower_bound(points.begin(), points.end(), p, before) - points.begin());
  };
  Net net(points);
  if (net.all().empty()) return {};
  net.beautify();  // fewer sides to cross
  bool whole = true;
  for (const Outline& ring : rings)
    for (std::size_t i = 0; i < ring.size(); ++i)
      whole = net.force(number(ring[i]), number(ring[(i + 1) % ring.size()])) && whole;
  net.beautify();
  const std::vector<int> windings = net.windings();
  std::vector<Vec2> out;
  for (std::size_t t = 0; t < windings.size(); ++t) {
    const auto& corners = net.all()[t].at;
    bool inside = windings[t] > 0;
    if (!whole) {
      const Vec2 middle = (net.point(corners[0]) + net.point(corners[1]) + net.point(corners[2])) / 3.0;
      inside = contains(rings[0], middle) && std::none_of(rings.begin() + 1, rings.end(), [&](const Outline& hole) {
                 return !hole.empty() && contains(hole, middle);
               });
    }
    if (inside)
      for (const int corner : corners) out.push_back(net.point(corner));
  }
  return out;
}

}  // namespace baywright::geometry
