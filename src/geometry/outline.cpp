#include "geometry/outline.h"

#include "geometry/limits.h"
#include "geometry/orientation.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <limits>

namespace baywright::geometry {
namespace {

double cross(const Vec2& a, const Vec2& b) {
  return a.x * b.y - a.y * b.x;
}

/// One side of the base: from corner `index` of ring `ring` to the next. Ring 0 is the outline, ring k is hole k.
struct Side {
  Vec2 from;
  Vec2 to;
  std::size_t ring;
  std::size_t index;
  std::size_t count;  // sides of the ring

  [[nodiscard]] double left() const { return std::min(from.x, to.x); }
  [[nodiscard]] double right() const { return std::max(from.x, to.x); }
  [[nodiscard]] bool precedes(const Side& other) const {
    return ring == other.ring && (index + 1) % count == other.index;
  }
};

std::string ring_name(std::size_t ring) {
  return ring == 0 ? "the outline" : "hole " + std::to_string(ring);
}

std::string place(const Vec2& p) {
  char text[64];
  std::snprintf(text, sizeof text, "(%.2f, %.2f)", p.x, p.y);
  return text;
}

bool within_limits(const Vec2& p) {
  return std::abs(p.x) <= largest_mm && std::abs(p.y) <= largest_mm;
}

double distance_to_side(const Vec2& p, const Vec2& from, const Vec2& to) {
  const Vec2 along = to - from;
  const double t = std::clamp(glm::dot(p - from, along) / glm::dot(along, along), 0.0, 1.0);
  return glm::length(p - (from + t * along));
}

std::optional<std::string> figures_fault(const Outline& ring, const std::string& name) {
  Vec2 low{std::numeric_limits<double>::infinity()};
  Vec2 high = -low;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    if (!within_limits(ring[i])) {  // NaN comes here too
      char text[160];
      std::snprintf(text, sizeof text, "corner %zu of %s is at (%.6g, %.6g): a coordinate must be within 100000 mm",
                    i + 1, name.c_str(), ring[i].x, ring[i].y);
      return text;
    }
    low = glm::min(low, ring[i]);
    high = glm::max(high, ring[i]);
  }
  const Vec2 size = high - low;
  if (size.x > largest_mm || size.y > largest_mm) {
    char text[160];
    std::snprintf(text, sizeof text, "%s measures %.6g x %.6g mm, more than the 100000 mm that a solid may have",
                  name.c_str(), size.x, size.y);
    return text;
  }
  return std::nullopt;
}

std::optional<std::string> sides_fault(const Outline& ring, const std::string& name) {
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const std::size_t next = (i + 1) % ring.size();
    if (glm::distance(ring[i], ring[next]) >= thinnest_mm) continue;
    char text[200];
    std::snprintf(text, sizeof text, "side %zu of %s is shorter than 0.000001 mm: corners %zu and %zu are both near %s",
                  i + 1, name.c_str(), i + 1, next + 1, place(ring[i]).c_str());
    return text;
  }
  return std::nullopt;
}

bool has_width(const Outline& ring) {
  const Vec2 first = ring.front();
  Vec2 far = first;
  for (const Vec2& p : ring) {
    if (glm::distance(p, first) > glm::distance(far, first)) far = p;
  }
  const Vec2 along = glm::normalize(far - first);
  return std::any_of(ring.begin(), ring.end(),
                     [&](const Vec2& p) { return std::abs(cross(along, p - first)) >= thinnest_mm / 2.0; });
}

std::optional<std::string> ring_fault(const Outline& ring, const std::string& name) {
  if (ring.size() < 3) {
    return name + " has " + std::to_string(ring.size()) + " corners and needs at least 3";
  }
  if (auto why = figures_fault(ring, name)) return why;
  if (auto why = sides_fault(ring, name)) return why;
  if (!has_width(ring)) return name + " has no area: its corners lie on one line";
  return std::nullopt;
}

std::string meeting(const Side& a, const Side& b, const char* verb, const Vec2& at) {
  const Side& low = a.ring < b.ring ? a : b;
  const Side& high = a.ring < b.ring ? b : a;
  return ring_name(high.ring) + " " + verb + " " + (a.ring == b.ring ? "itself" : ring_name(low.ring)) + " near " +
         place(at);
}

/// How two sides that share no corner stand in each other's way. In the plane the least distance of two lines that do
/// not cross is at an end of one of them.
std::optional<std::string> pair_fault(const Side& a, const Side& b) {
  if (orientation(a.from, a.to, b.from) * orientation(a.from, a.to, b.to) < 0 &&
      orientation(b.from, b.to, a.from) * orientation(b.from, b.to, a.to) < 0) {
    const Vec2 along = a.to - a.from;
    const double t = cross(b.from - a.from, b.to - b.from) / cross(along, b.to - b.from);
    return meeting(a, b, "crosses", a.from + std::clamp(t, 0.0, 1.0) * along);
  }
  const auto touches = [&](const Vec2& p, const Side& side) {
    return !(distance_to_side(p, side.from, side.to) >= thinnest_mm);
  };
  for (const Vec2& p : {a.from, a.to}) {
    if (touches(p, b)) return meeting(a, b, "touches", p);
  }
  for (const Vec2& p : {b.from, b.to}) {
    if (touches(p, a)) return meeting(a, b, "touches", p);
  }
  return std::nullopt;
}

void add_sides(const Outline& ring, std::size_t number, std::vector<Side>& sides) {
  for (std::size_t i = 0; i < ring.size(); ++i) {
    sides.push_back({ring[i], ring[(i + 1) % ring.size()], number, i, ring.size()});
  }
}

std::optional<std::string> meeting_fault(std::vector<Side> sides) {
  // Sorted by their left ends, a side can only meet those that begin before it ends.
  std::sort(sides.begin(), sides.end(), [](const Side& a, const Side& b) { return a.left() < b.left(); });
  for (std::size_t i = 0; i < sides.size(); ++i) {
    for (std::size_t j = i + 1; j < sides.size() && sides[j].left() <= sides[i].right() + thinnest_mm; ++j) {
      const Side& a = sides[i];
      const Side& b = sides[j];
      // Sides that follow each other share a corner. Should they fold back, the far end of one lies on the other, and
      // so does the side that begins there; a triangle that does has no width.
      if (a.precedes(b) || b.precedes(a)) continue;
      if (auto why = pair_fault(a, b)) return why;
    }
  }
  return std::nullopt;
}

std::optional<std::string> nesting_fault(const Outline& outline, const std::vector<Outline>& holes) {
  // No two rings meet here, so one corner speaks for its whole ring.
  for (std::size_t i = 0; i < holes.size(); ++i) {
    if (!contains(outline, holes[i].front())) return ring_name(i + 1) + " lies outside the outline";
    for (std::size_t j = 0; j < holes.size(); ++j) {
      if (i != j && contains(holes[j], holes[i].front())) return ring_name(i + 1) + " lies within " + ring_name(j + 1);
    }
  }
  return std::nullopt;
}

}  // namespace

double signed_area(const Outline& outline) {
  double twice = 0.0;
  for (std::size_t i = 1; i + 1 < outline.size(); ++i) {
    twice += cross(outline[i] - outline[0], outline[i + 1] - outline[0]);
  }
  return twice / 2.0;
}

bool contains(const Outline& outline, const Vec2& p) {
  bool inside = false;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Vec2& a = outline[i];
    const Vec2& b = outline[(i + 1) % outline.size()];
    const int side = orientation(a, b, p);
    const bool beside = (a.y <= p.y) != (b.y <= p.y);
    if (beside && side == (a.y <= p.y ? 1 : -1)) inside = !inside;
    if (side == 0 && p.x >= std::min(a.x, b.x) && p.x <= std::max(a.x, b.x) && p.y >= std::min(a.y, b.y) &&
        p.y <= std::max(a.y, b.y)) {
      return true;
    }
  }
  return inside;
}

bool meet(const Vec2& p, const Vec2& q, const Vec2& c, const Vec2& d) {
  if (std::max(p.x, q.x) < std::min(c.x, d.x) || std::max(c.x, d.x) < std::min(p.x, q.x)) return false;
  if (std::max(p.y, q.y) < std::min(c.y, d.y) || std::max(c.y, d.y) < std::min(p.y, q.y)) return false;
  return orientation(p, q, c) * orientation(p, q, d) <= 0 && orientation(c, d, p) * orientation(c, d, q) <= 0;
}

std::optional<std::string> fault(const Outline& outline, const std::vector<Outline>& holes) {
  if (auto why = ring_fault(outline, ring_name(0))) return why;
  std::vector<Side> sides;
  add_sides(outline, 0, sides);
  for (std::size_t i = 0; i < holes.size(); ++i) {
    if (auto why = ring_fault(holes[i], ring_name(i + 1))) return why;
    add_sides(holes[i], i + 1, sides);
  }
  if (auto why = meeting_fault(std::move(sides))) return why;
  return nesting_fault(outline, holes);
}

Outline clipped(Outline subject, const Outline& window, double slack) {
  // I. E. Sutherland and G. W. Hodgman, "Reentrant polygon clipping", Communications of the ACM 17 (1974).
  Outline kept;
  kept.reserve(subject.size() + window.size());
  for (std::size_t i = 0; i < window.size() && !subject.empty(); ++i) {
    const Vec2& start = window[i];
    const Vec2 along = window[(i + 1) % window.size()] - start;
    const double least = -slack * glm::length(along);
    kept.clear();
    Vec2 last = subject.back();
    double last_side = cross(along, last - start);
    for (const Vec2& p : subject) {
      const double side = cross(along, p - start);
      if ((side >= least) != (last_side >= least)) {
        kept.push_back(last + std::clamp(last_side / (last_side - side), 0.0, 1.0) * (p - last));
      }
      if (side >= least) kept.push_back(p);
      last = p;
      last_side = side;
    }
    subject.swap(kept);
  }
  return subject;
}

Outline hull(std::vector<Vec2> points) {
  // A. M. Andrew, "Another efficient algorithm for convex hulls in two dimensions", Information Processing Letters 9
  // (1979): the lower and the upper chain over the points sorted by x.
  std::sort(points.begin(), points.end(),
            [](const Vec2& a, const Vec2& b) { return a.x < b.x || (a.x == b.x && a.y < b.y); });
  points.erase(std::unique(points.begin(), points.end()), points.end());
  if (points.size() < 3) return points;
  Outline ring;
  ring.reserve(points.size() + 1);
  const auto add = [&ring](const Vec2& p, std::size_t least) {
    while (ring.size() >= least && orientation(ring[ring.size() - 2], ring.back(), p) <= 0) ring.pop_back();
    ring.push_back(p);
  };
  for (const Vec2& p : points) add(p, 2);
  const std::size_t lower = ring.size();
  for (std::size_t i = points.size() - 1; i-- > 0;) add(points[i], lower + 1);
  ring.pop_back();  // the first point again
  return ring;
}

}  // namespace baywright::geometry
