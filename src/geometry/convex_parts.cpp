// From an outline with holes to convex parts, in three steps.
// 1. Each hole is joined to the outline by a bridge, from its rightmost corner to the nearest corner in sight, the
//    rightmost hole first, which makes one outline that touches itself along the bridges (D. Eberly, "Triangulation by
//    Ear Clipping", Geometric Tools 2002, shows that there is such a corner).
// 2. That outline is cut into triangles by clipping ears (G. H. Meisters, "Polygons have ears", American Mathematical
//    Monthly 82 (1975)). We clip the best shaped ear first, so that slivers are left only where the outline has them,
//    and test an ear by its diagonal (J. O'Rourke, "Computational Geometry in C", 2nd ed., chapter 1): in the cone of
//    both of its ends, and free of every side. That stays right where corners coincide along a bridge.
// 3. Diagonals are taken out again, the longest first, while both sides stay convex (S. Hertel and K. Mehlhorn, "Fast
//    triangulation of simple polygons", FCT 1983): at most four times the least number of parts.
// Steps 1 and 2 decide by `orientation` alone, without rounding. Step 3 takes a corner that rounding has pushed inward
// as lying on the line of its neighbours, so that turning an outline makes no more parts.
#include "geometry/convex_parts.h"

#include "geometry/orientation.h"
#include "geometry/outline.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <numeric>
#include <set>

namespace baywright::geometry {
namespace {

using Ids = std::vector<std::size_t>;  // corners of a ring, as indices of the points of the whole base

struct Base {
  std::vector<Vec2> points;
  double rounding = 0.0;  // mm: corners nearer than this to the line of their neighbours are taken as lying on it

  [[nodiscard]] int turn(std::size_t a, std::size_t b, std::size_t c) const {
    return orientation(points[a], points[b], points[c]);
  }
  /// How far b is to the right of the line from a to c, mm: positive at a convex corner.
  [[nodiscard]] double bulge(std::size_t a, std::size_t b, std::size_t c) const {
    const Vec2 chord = points[c] - points[a];
    const Vec2 leg = points[b] - points[a];
    return (chord.y * leg.x - chord.x * leg.y) / glm::length(chord);
  }
};

/// Leaves out of a convex part the corners on a line to rounding, also those that rounding has pushed inward.
void drop_flat(const Base& base, Ids& ring) {
  for (std::size_t i = 0, kept = 0; kept < ring.size() && ring.size() > 3;) {
    const std::size_t n = ring.size();
    const double bulge = base.bulge(ring[(i + n - 1) % n], ring[i], ring[(i + 1) % n]);
    if (bulge > base.rounding) {
      ++kept;
      i = (i + 1) % n;
      continue;
    }
    ring.erase(ring.begin() + static_cast<std::ptrdiff_t>(i));
    kept = 0;
    i = (i + n - 2) % (n - 1);
  }
}

bool is_convex(const Base& base, const Ids& ring) {
  const std::size_t n = ring.size();
  for (std::size_t i = 0; i < n; ++i) {
    if (base.turn(ring[i], ring[(i + 1) % n], ring[(i + 2) % n]) <= 0) return false;
  }
  return true;
}

/// Whether the way from `corner` to `target` starts inside, strictly between the sides to `before` and `after`.
bool in_cone(const Base& base, std::size_t before, std::size_t corner, std::size_t after, std::size_t target) {
  if (base.turn(before, corner, after) >= 0) {
    return base.turn(corner, target, before) > 0 && base.turn(target, corner, after) > 0;
  }
  return !(base.turn(corner, target, after) >= 0 && base.turn(target, corner, before) >= 0);
}

/// Whether side c-d leaves the diagonal p-q free. Sides that share an end with it are judged by `in_cone`.
bool leaves_free(const Base& base, std::size_t p, std::size_t q, std::size_t c, std::size_t d) {
  if (c == p || c == q || d == p || d == q) return true;
  return !meet(base.points[p], base.points[q], base.points[c], base.points[d]);
}

bool ring_leaves_free(const Base& base, const Ids& ring, std::size_t p, std::size_t q) {
  for (std::size_t i = 0; i < ring.size(); ++i) {
    if (!leaves_free(base, p, q, ring[i], ring[(i + 1) % ring.size()])) return false;
  }
  return true;
}

bool right_of(const Vec2& a, const Vec2& b) {
  return a.x > b.x || (a.x == b.x && a.y > b.y);
}

/// The place in `ring` to which the first corner of holes[first] can be bridged.
std::size_t bridge_end(const Base& base, const Ids& ring, const std::vector<Ids>& holes, std::size_t first) {
  const std::size_t from = holes[first].front();
  Ids nearest(ring.size());
  std::iota(nearest.begin(), nearest.end(), std::size_t{0});
  const auto away = [&](std::size_t place) { return glm::distance(base.points[ring[place]], base.points[from]); };
  std::sort(nearest.begin(), nearest.end(), [&](std::size_t a, std::size_t b) { return away(a) < away(b); });
  for (const std::size_t place : nearest) {
    const std::size_t n = ring.size();
    const std::size_t to = ring[place];
    if (!in_cone(base, ring[(place + n - 1) % n], to, ring[(place + 1) % n], from)) continue;
    if (!ring_leaves_free(base, ring, from, to)) continue;
    if (std::all_of(holes.begin() + static_cast<std::ptrdiff_t>(first), holes.end(),
                    [&](const Ids& other) { return ring_leaves_free(base, other, from, to); })) {
      return place;
    }
  }
  return nearest.front();
}

Ids join_holes(const Base& base, Ids ring, std::vector<Ids> holes) {
  const auto before = [&](std::size_t a, std::size_t b) { return right_of(base.points[a], base.points[b]); };
  for (Ids& hole : holes) std::rotate(hole.begin(), std::min_element(hole.begin(), hole.end(), before), hole.end());
  std::sort(holes.begin(), holes.end(), [&](const Ids& a, const Ids& b) { return before(a.front(), b.front()); });
  for (std::size_t i = 0; i < holes.size(); ++i) {
    const std::size_t place = bridge_end(base, ring, holes, i);
    Ids way = holes[i];
    way.push_back(holes[i].front());
    way.push_back(ring[place]);
    ring.insert(ring.begin() + static_cast<std::ptrdiff_t>(place) + 1, way.begin(), way.end());
  }
  return ring;
}

/// The outline while ears are clipped off it: a chain of places, as one corner stands twice at a bridge.
class Ears {
 public:
  Ears(const Base& base, const Ids& ring) : base_(base), ring_(ring), before_(ring.size()), after_(ring.size()) {
    const std::size_t n = ring.size();
    shape_.resize(n);
    for (std::size_t i = 0; i < n; ++i) {
      before_[i] = (i + n - 1) % n;
      after_[i] = (i + 1) % n;
    }
    for (std::size_t i = 0; i < n; ++i) rate(i);
  }

  std::vector<Ids> clip() {
    std::vector<Ids> triangles;
    for (std::size_t left = ring_.size(); left >= 3; --left) {
      const auto ear = std::find_if(best_.begin(), best_.end(),
                                    [&](const auto& rated) { return left == 3 || is_ear(rated.second); });
      if (ear == best_.end()) return triangles;
      const std::size_t tip = ear->second;
      const std::size_t a = before_[tip];
      const std::size_t b = after_[tip];
      triangles.push_back({ring_[a], ring_[tip], ring_[b]});
      best_.erase(ear);
      after_[a] = b;
      before_[b] = a;
      rate(a);
      rate(b);
    }
    return triangles;
  }

 private:
  /// Twice the area over the square of the longest side: 0 for a sliver, 0.87 for equal sides.
  void rate(std::size_t i) {
    best_.erase({-shape_[i], i});
    const std::size_t a = ring_[before_[i]];
    const std::size_t b = ring_[after_[i]];
    shape_[i] = 0.0;
    if (base_.turn(a, ring_[i], b) <= 0) return;
    const Vec2& tip = base_.points[ring_[i]];
    const Vec2 in = tip - base_.points[a];
    const Vec2 out = base_.points[b] - tip;
    const double longest = std::max({glm::dot(in, in), glm::dot(out, out), glm::dot(in + out, in + out)});
    shape_[i] = std::abs(in.x * out.y - in.y * out.x) / longest;
    best_.insert({-shape_[i], i});
  }

  [[nodiscard]] bool is_ear(std::size_t tip) const {
    const std::size_t a = before_[tip];
    const std::size_t b = after_[tip];
    if (!in_cone(base_, ring_[before_[a]], ring_[a], ring_[tip], ring_[b])) return false;
    if (!in_cone(base_, ring_[tip], ring_[b], ring_[after_[b]], ring_[a])) return false;
    for (std::size_t i = after_[b]; i != a; i = after_[i]) {
      if (!leaves_free(base_, ring_[a], ring_[b], ring_[before_[i]], ring_[i])) return false;
    }
    return true;
  }

  const Base& base_;
  const Ids& ring_;
  Ids before_;
  Ids after_;
  std::vector<double> shape_;
  std::set<std::pair<double, std::size_t>> best_;  // convex corners, the best shaped ear first
};

/// Triangles that grow into convex parts as the diagonals between them are taken out.
class Parts {
 public:
  Parts(const Base& base, std::vector<Ids> triangles) : base_(base), parts_(std::move(triangles)) {
    into_.resize(parts_.size());
    std::iota(into_.begin(), into_.end(), std::size_t{0});
    for (std::size_t part = 0; part < parts_.size(); ++part) {
      for (std::size_t i = 0; i < 3; ++i) of_side_[{parts_[part][i], parts_[part][(i + 1) % 3]}] = part;
    }
  }

  std::vector<Ids> merge() {
    using Diagonal = std::pair<double, std::pair<std::size_t, std::size_t>>;
    std::vector<Diagonal> diagonals;
    for (const auto& [side, part] : of_side_) {
      const auto [u, v] = side;
      if (u < v && of_side_.contains({v, u})) {
        diagonals.push_back({-glm::distance(base_.points[u], base_.points[v]), side});
      }
    }
    std::sort(diagonals.begin(), diagonals.end());
    for (const Diagonal& diagonal : diagonals) take_out(diagonal.second.first, diagonal.second.second);
    std::erase_if(parts_, [](const Ids& part) { return part.empty(); });
    return std::move(parts_);
  }

 private:
  std::size_t part_of(std::size_t u, std::size_t v) const {
    std::size_t part = of_side_.at({u, v});
    while (into_[part] != part) part = into_[part];
    return part;
  }

  [[nodiscard]] bool may_be_convex(std::size_t a, std::size_t b, std::size_t c) const {
    return base_.turn(a, b, c) >= 0 || base_.bulge(a, b, c) >= -base_.rounding;
  }

  void take_out(std::size_t u, std::size_t v) {
    const std::size_t keep = part_of(u, v);
    const std::size_t gone = part_of(v, u);
    Ids& one = parts_[keep];
    Ids& two = parts_[gone];
    std::rotate(one.begin(), std::find(one.begin(), one.end(), v), one.end());  // v ... u
    std::rotate(two.begin(), std::find(two.begin(), two.end(), u), two.end());  // u ... v
    if (!may_be_convex(one[one.size() - 2], u, two[1])) return;
    if (!may_be_convex(two[two.size() - 2], v, one[1])) return;
    one.insert(one.end(), two.begin() + 1, two.end() - 1);
    two.clear();
    into_[gone] = keep;
  }

  const Base& base_;
  std::vector<Ids> parts_;
  Ids into_;
  std::map<std::pair<std::size_t, std::size_t>, std::size_t> of_side_;
};

Ids add_ring(Base& base, const Outline& ring) {
  Ids ids(ring.size());
  std::iota(ids.begin(), ids.end(), base.points.size());
  base.points.insert(base.points.end(), ring.begin(), ring.end());
  return ids;
}

}  // namespace

std::vector<Outline> convex_parts(const Outline& outline, const std::vector<Outline>& holes) {
  Base base;
  Ids ring = add_ring(base, outline);
  std::vector<Ids> hole_rings;
  for (const Outline& hole : holes) hole_rings.push_back(add_ring(base, hole));
  double largest = 0.0;
  for (const Vec2& p : base.points) largest = std::max({largest, std::abs(p.x), std::abs(p.y)});
  base.rounding = 4.0 * std::numeric_limits<double>::epsilon() * largest;

  std::vector<Ids> rings{ring};
  if (!hole_rings.empty() || !is_convex(base, ring)) {
    const Ids joined = join_holes(base, std::move(ring), std::move(hole_rings));
    rings = Parts{base, Ears{base, joined}.clip()}.merge();
  }
  std::vector<Outline> parts;
  for (Ids& part : rings) {
    drop_flat(base, part);
    Outline corners;
    for (const std::size_t id : part) corners.push_back(base.points[id]);
    parts.push_back(std::move(corners));
  }
  return parts;
}

}  // namespace baywright::geometry
