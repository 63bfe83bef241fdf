// Cut up by ears (G. H. Meisters, "Polygons have ears", American Mathematical Monthly 82, 1975), holes joined to the
// outline by bridges first. A corner that lies on a line between its neighbours is no ear, so that each stays a corner
// of some triangle and walls that stand on the outline meet the cap without a gap. Where no ear is left, as outlines
// cross or have no area, some corner is dropped all the same: a flat one after one turn, one that bends outward after
// two, any after three.
#include "render/shape.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace baywright::render {

using geometry::Vec2;

namespace {

using Ring = std::vector<Vec2>;

/// Twice the area of the triangle, positive where a, b, c turn left.
double turn(const Vec2& a, const Vec2& b, const Vec2& c) {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

double twice_area(const Ring& ring) {
  double sum = 0.0;
  for (std::size_t i = 0; i < ring.size(); ++i) sum += turn(ring[0], ring[i], ring[(i + 1) % ring.size()]);
  return sum;
}

/// Without repeated and unusable points, turning left or right as asked; empty where it has no area.
Ring clean(const Ring& given, bool left) {
  Ring ring;
  for (const Vec2& p : given)
    if (std::isfinite(p.x) && std::isfinite(p.y) && (ring.empty() || p != ring.back())) ring.push_back(p);
  while (ring.size() > 1 && ring.front() == ring.back()) ring.pop_back();
  const double area = ring.size() < 3 ? 0.0 : twice_area(ring);
  if (!(std::abs(area) > 0.0)) return {};
  if ((area > 0.0) != left) std::reverse(ring.begin(), ring.end());
  return ring;
}

/// Whether p lies in the triangle, which turns left, or on its border.
bool within(const Vec2& a, const Vec2& b, const Vec2& c, const Vec2& p) {
  return turn(a, b, p) >= 0.0 && turn(b, c, p) >= 0.0 && turn(c, a, p) >= 0.0;
}

/// Whether the way from corner i to p starts into the area on the ring's left.
bool starts_inside(const Ring& ring, std::size_t i, const Vec2& p) {
  const Vec2& before = ring[(i + ring.size() - 1) % ring.size()];
  const Vec2& here = ring[i];
  const Vec2& after = ring[(i + 1) % ring.size()];
  const bool left_of_after = turn(here, after, p) > 0.0;
  const bool left_of_before = turn(before, here, p) > 0.0;
  return turn(before, here, after) >= 0.0 ? left_of_after && left_of_before : left_of_after || left_of_before;
}

/// The corner of the ring that p sees without anything between, where p lies inside it; the ring's size where there is
/// none. D. Eberly, "Triangulation by Ear Clipping", 2002: the first side that a ray toward +x meets, or, where a
/// corner stands in the way of its end, the one least off the ray.
std::size_t seen_from(const Ring& ring, const Vec2& p) {
  const std::size_t count = ring.size();
  std::size_t best = count;
  double nearest = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < count; ++i) {
    const Vec2& a = ring[i];
    const Vec2& b = ring[(i + 1) % count];
    if (!(a.y <= p.y && p.y < b.y) && !(a.y < p.y && p.y <= b.y)) continue;  // sides that have the area on their left
    const double x = a.x + (b.x - a.x) * (p.y - a.y) / (b.y - a.y);
    if (x < p.x || x >= nearest) continue;
    nearest = x;
    best = a.x > b.x ? i : (i + 1) % count;
  }
  if (best == count) return count;
  const Vec2 hit{nearest, p.y};
  const Vec2 aim = ring[best];
  const bool above = aim.y > p.y;
  const auto off_ray = [&](const Vec2& q) { return std::abs(q.y - p.y) / std::max(q.x - p.x, 1e-300); };
  double least = off_ray(aim);
  for (std::size_t i = 0; i < count; ++i) {
    const Vec2& q = ring[i];
    if (q.x <= p.x || !starts_inside(ring, i, p)) continue;
    const bool nearer = off_ray(q) < least || (off_ray(q) == least && q.x < ring[best].x) || (q == aim && best != i);
    if (nearer && (above ? within(p, hit, aim, q) : within(p, aim, hit, q))) {
      best = i;
      least = off_ray(q);
    }
  }
  return best;
}

/// The ring with the hole as a bay of it, at the end of a bridge to and fro.
void join(Ring& ring, const Ring& hole) {
  const auto start = std::max_element(hole.begin(), hole.end(), [](const Vec2& a, const Vec2& b) { return a.x < b.x; });
  const std::size_t at = seen_from(ring, *start);
  if (at == ring.size()) return;
  Ring bay(start, hole.end());
  bay.insert(bay.end(), hole.begin(), start);
  bay.push_back(*start);
  bay.push_back(ring[at]);
  ring.insert(ring.begin() + static_cast<std::ptrdiff_t>(at) + 1, bay.begin(), bay.end());
}

class Ears {
 public:
  explicit Ears(Ring ring) : at_(std::move(ring)), before_(at_.size()), after_(at_.size()) {
    for (std::size_t i = 0; i < at_.size(); ++i) {
      before_[i] = (i + at_.size() - 1) % at_.size();
      after_[i] = (i + 1) % at_.size();
    }
    for (std::size_t i = 0; i < at_.size(); ++i)
      if (bend(i) <= 0.0) hollow_.push_back(i);
  }

  [[nodiscard]] std::vector<Vec2> cut() {
    std::size_t left = at_.size();
    std::size_t here = 0;
    std::size_t tried = 0;
    while (left > 2) {
      const double bent = bend(here);
      const bool ear = bent > 0.0 && (clear(here) || tried >= 2 * left);
      const bool flat = bent == 0.0 && tried >= left;
      if (ear || flat || tried >= 3 * left) {
        if (ear) add(here);
        here = drop(here);
        --left;
        tried = 0;
      } else {
        here = after_[here];
        ++tried;
      }
    }
    return std::move(out_);
  }

 private:
  [[nodiscard]] double bend(std::size_t i) const { return turn(at_[before_[i]], at_[i], at_[after_[i]]); }

  /// No other corner lies in the triangle. Only those can that bend inward or not at all.
  [[nodiscard]] bool clear(std::size_t i) const {
    const Vec2& a = at_[before_[i]];
    const Vec2& b = at_[i];
    const Vec2& c = at_[after_[i]];
    return std::none_of(hollow_.begin(), hollow_.end(), [&](std::size_t other) {
      const Vec2& p = at_[other];
      return p != a && p != b && p != c && within(a, b, c, p);
    });
  }

  void add(std::size_t i) {
    for (const std::size_t corner : {before_[i], i, after_[i]}) out_.push_back(at_[corner]);
  }

  /// Returns where to go on: two further, which makes fewer thin triangles than a fan.
  std::size_t drop(std::size_t i) {
    const std::size_t a = before_[i];
    const std::size_t c = after_[i];
    after_[a] = c;
    before_[c] = a;
    std::erase_if(hollow_, [&](std::size_t k) { return k == i || ((k == a || k == c) && bend(k) > 0.0); });
    return after_[c];
  }

  Ring at_;
  std::vector<std::size_t> before_;
  std::vector<std::size_t> after_;
  std::vector<std::size_t> hollow_;
  std::vector<Vec2> out_;
};

}  // namespace

std::vector<Vec2> triangles(const std::vector<Vec2>& outline, const std::vector<std::vector<Vec2>>& holes) {
  Ring ring = clean(outline, true);
  if (ring.empty()) return {};
  std::vector<Ring> inner;
  for (const Ring& hole : holes) inner.push_back(clean(hole, false));
  std::erase_if(inner, [](const Ring& hole) { return hole.empty(); });
  const auto rightmost = [](const Ring& hole) {
    double x = hole.front().x;
    for (const Vec2& p : hole) x = std::max(x, p.x);
    return x;
  };
  std::stable_sort(inner.begin(), inner.end(),
                   [&](const Ring& a, const Ring& b) { return rightmost(a) > rightmost(b); });
  for (const Ring& hole : inner) join(ring, hole);
  return Ears(std::move(ring)).cut();
}

}  // namespace baywright::render
