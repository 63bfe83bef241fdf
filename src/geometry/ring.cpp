// A ring is its outer disc less its bore. Steps:
//   1. The outer discs. Apart, with the nearest points on the material: that is the answer.
//   2. Axes parallel (for a box, any of its edges): the distance is that of the bases in their plane and that of the
//      heights along the axis, at right angles. Both have closed forms.
//   3. Otherwise branch and bound over sectors. A sector lies within a convex prism, whose gap is a lower bound; the
//      nearest points of it, moved onto the ring, give an upper bound. Both close in with the square of the sector's
//      angle. What the budget leaves open stays in `error`.
// Overlapping, the outer disc's way out is sure; so is a shift square to the axis that brings into the bore all that
// stands between the planes of the ring's ends.
#include "geometry/ring.h"

#include "geometry/body.h"
#include "geometry/convex.h"
#include "geometry/limits.h"
#include "geometry/sector.h"
#include "geometry/upright.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <queue>
#include <vector>

namespace baywright::geometry {

namespace {

constexpr int most_sectors = 600;    // of work for one pair; a prism in a bore needs about 60
constexpr double closed_mm = 1e-11;  // bounds that are this close have met

Piece outer(const Piece& piece) {
  Piece disc = piece;
  if (piece.base == Piece::Base::ring) {
    disc.base = Piece::Base::disc;
    disc.bore = 0.0;
  }
  return disc;
}

/// The nearest point of a ring, in its own coordinates.
Vec3 nearest_of_ring(const Piece& ring, const Vec3& p) {
  const double length = std::hypot(p.x, p.y);
  const double at = std::clamp(length, ring.bore, ring.radius);
  const Vec2 out = length > 0.0 ? Vec2{p.x, p.y} / length : Vec2{1.0, 0.0};
  return {out * at, std::clamp(p.z, 0.0, ring.height)};
}

Vec3 onto(const Piece& piece, const Pose& pose, const Vec3& world) {
  if (piece.base != Piece::Base::ring) return world;
  return pose.point(nearest_of_ring(piece, pose.inverse().point(world)));
}

Gap apart_at(const Vec3& on_a, const Vec3& on_b, double lower, double rounding) {
  Gap gap;
  const double upper = glm::length(on_b - on_a);
  gap.mm = 0.5 * (upper + lower);
  gap.error = 0.5 * std::abs(upper - lower) + rounding;
  gap.on_a = on_a;
  gap.on_b = on_b;
  if (upper > 0.0) gap.direction = (on_b - on_a) / upper;
  gap.relation = relation(gap.mm, gap.error, Bound::exact);
  return gap;
}

double rounding_of(const Piece& a, const Pose& pose_a, const Piece& b, const Pose& pose_b) {
  return Pair(a, pose_a, b, pose_b).rounding;
}

// ---- between the planes of the ring's ends ----

/// A disc in the plane of the ring's base, about its axis; a point when the radius is zero.
struct Spot {
  Vec2 at;
  double radius;
};

/// The part of `other` between the end planes lies within the hull of these; nothing when no part does.
std::vector<Spot> between_planes(const Piece& ring, const Pose& pose_ring, const Piece& other, const Pose& pose_other) {
  const Pose relative = pose_ring.inverse().after(pose_other);
  std::vector<Spot> spots;
  const auto add_segment = [&](Vec3 p, Vec3 q, double radius, double slack) {
    if (p.z > q.z) std::swap(p, q);
    if (q.z < -slack || p.z > ring.height + slack) return;
    const double rise = q.z - p.z;
    const auto at = [&](double z) { return rise > 0.0 ? p + (q - p) * std::clamp((z - p.z) / rise, 0.0, 1.0) : p; };
    const Vec3 low = at(-slack);
    const Vec3 high = at(ring.height + slack);
    spots.push_back({{low.x, low.y}, radius});
    spots.push_back({{high.x, high.y}, radius});
    if (!(rise > 0.0)) spots.push_back({{q.x, q.y}, radius});
  };
  if (other.base != Piece::Base::polygon) {
    // A tilted cylinder is cut in an ellipse; the disc about its centre that holds it is taken instead, and the axis is
    // followed as far beyond the planes as the cylinder's radius reaches.
    const Vec3 axis = relative.turn[2];
    const double across = std::hypot(axis.x, axis.y);
    const double slack = other.radius * across;
    add_segment(relative.shift, relative.shift + axis * other.height, other.radius, slack);
    return spots;
  }
  const std::size_t count = other.corners.size();
  const Vec3 up = relative.turn[2] * other.height;
  for (std::size_t i = 0; i < count; ++i) {
    const Vec3 p = relative.point(Vec3{other.corners[i], 0.0});
    const Vec3 q = relative.point(Vec3{other.corners[(i + 1) % count], 0.0});
    add_segment(p, q, 0.0, 0.0);
    add_segment(p + up, q + up, 0.0, 0.0);
    add_segment(p, p + up, 0.0, 0.0);
  }
  return spots;
}

/// The least shift along `toward` (unit) that brings all spots into a circle about the origin; nothing if none does.
std::optional<double> shift_into(const std::vector<Spot>& spots, double circle, const Vec2& toward) {
  double from = 0.0;
  double to = std::numeric_limits<double>::infinity();
  for (const Spot& spot : spots) {
    const double room = circle - spot.radius;
    const double along = glm::dot(spot.at, toward);
    const double across = spot.at.x * toward.y - spot.at.y * toward.x;
    if (!(room >= std::abs(across))) return std::nullopt;
    const double half = std::sqrt((room - across) * (room + across));
    from = std::max(from, -along - half);
    to = std::min(to, -along + half);
  }
  if (!(from <= to)) return std::nullopt;
  return from;
}

/// The shortest shift found that frees `other` within the bore.
struct Shift {
  double mm = std::numeric_limits<double>::infinity();
  Vec3 direction{0.0};  // world, for `other`
};

Shift into_bore(const Piece& ring, const Pose& pose_ring, const Piece& other, const Pose& pose_other) {
  Shift best;
  const std::vector<Spot> spots = between_planes(ring, pose_ring, other, pose_other);
  if (spots.empty()) return best;
  std::vector<Vec2> ways;
  Vec2 low = spots[0].at;
  Vec2 high = spots[0].at;
  for (const Spot& spot : spots) {
    ways.push_back(-spot.at);
    low = glm::min(low, spot.at);
    high = glm::max(high, spot.at);
  }
  ways.push_back(-0.5 * (low + high));
  for (const Vec2& way : ways) {
    const double length = glm::length(way);
    if (!(length > 0.0)) continue;
    const auto shift = shift_into(spots, ring.bore, way / length);
    if (shift && *shift < best.mm) {
      best.mm = *shift;
      best.direction = pose_ring.direction(Vec3{way / length, 0.0});
    }
  }
  return best;
}

/// The sure way out of an overlap, of which `depth` mm at least are known to be needed.
Gap overlap(const Piece& ring, const Pose& pose_ring, const Piece& other, const Pose& pose_other, double depth) {
  Gap gap = convex_gap(outer(ring), pose_ring, outer(other), pose_other);
  Shift shift = into_bore(ring, pose_ring, other, pose_other);
  double sense = 1.0;
  if (other.base == Piece::Base::ring) {
    const Shift around = into_bore(other, pose_other, ring, pose_ring);
    if (around.mm < shift.mm) {
      shift = around;
      sense = -1.0;
    }
  }
  if (-shift.mm > gap.mm) {
    gap.mm = -shift.mm;
    gap.direction = shift.direction * sense;
    gap.on_a = onto(ring, pose_ring, gap.on_a);
    gap.on_b = gap.on_a + gap.direction * gap.mm;
  }
  gap.bound = depth >= -gap.mm - gap.error ? Bound::exact : Bound::at_least;
  gap.relation = depth > touch_mm ? Relation::overlapping : Relation::undecided;
  return gap;
}

struct Item {
  double lower;
  Stretches at;
  friend bool operator<(const Item& p, const Item& q) { return p.lower > q.lower; }  // least first in the queue
};

class Sectors {
 public:
  Sectors(const Piece& a, const Pose& pose_a, const Piece& b, const Pose& pose_b)
      : a_(a), b_(b), pose_a_(pose_a), pose_b_(pose_b) {}

  Gap run() {
    for (const Stretch& of_a : stretches(a_)) {
      for (const Stretch& of_b : stretches(b_)) add({of_a, of_b});
    }
    while (!queue_.empty() && depth_ <= touch_mm && work_ < most_sectors) {
      const Item item = queue_.top();
      if (upper_ - item.lower <= closed_mm) break;
      queue_.pop();
      for (const Stretches& half : halved(item.at)) add(half);
    }
    if (depth_ > touch_mm) return overlap(a_, pose_a_, b_, pose_b_, depth_);
    const double lower = queue_.empty() ? upper_ : std::min(upper_, queue_.top().lower);
    // With a lower bound below zero they touch, or overlap by less than the budget could show.
    Gap gap = apart_at(on_a_, on_b_, lower, rounding_of(a_, pose_a_, b_, pose_b_));
    if (!(gap.mm > touch_mm)) gap.direction = direction_;
    return gap;
  }

 private:
  void add(const Stretches& at) {
    ++work_;
    const Gap found = convex_gap(hull(a_, at.a), pose_a_, hull(b_, at.b), pose_b_);
    if (found.mm - found.error > upper_) return;
    queue_.push({found.mm - found.error, at});
    Vec3 on_b = onto(b_, pose_b_, found.on_b);
    Vec3 on_a = onto(a_, pose_a_, on_b);
    on_b = onto(b_, pose_b_, b_.base == Piece::Base::ring ? on_a : on_b);
    const double length = glm::length(on_b - on_a);
    if (length < upper_) {
      upper_ = length;
      direction_ = found.direction;
      on_a_ = on_a;
      on_b_ = on_b;
    }
    if (found.mm >= -touch_mm) return;
    const auto core_a = core(a_, at.a);
    const auto core_b = core(b_, at.b);
    if (!core_a || !core_b) return;
    const Gap inner = convex_gap(*core_a, pose_a_, *core_b, pose_b_);
    depth_ = std::max(depth_, -inner.mm - inner.error);
  }

  const Piece& a_;
  const Piece& b_;
  const Pose& pose_a_;
  const Pose& pose_b_;
  std::priority_queue<Item> queue_;
  int work_ = 0;
  double depth_ = 0.0;
  double upper_ = std::numeric_limits<double>::infinity();
  Vec3 direction_{0.0};
  Vec3 on_a_{0.0};
  Vec3 on_b_{0.0};
};

}  // namespace

Gap ring_gap(const Piece& ring, const Pose& pose_ring, const Piece& other, const Pose& pose_other) {
  Gap around = convex_gap(outer(ring), pose_ring, outer(other), pose_other);
  if (!std::isfinite(around.error)) return around;
  if (around.mm > around.error) {
    const Vec3 on_b = onto(other, pose_other, around.on_b);
    const Vec3 on_a = onto(ring, pose_ring, on_b);
    if (glm::length(on_b - on_a) <= around.mm + around.error) {
      around.on_a = on_a;
      around.on_b = on_b;
      return around;
    }
  }
  if (const auto standing = upright(pose_ring.inverse().after(pose_other), other)) {
    Gap found = upright_gap(ring, *standing, rounding_of(ring, pose_ring, other, pose_other));
    if (found.relation == Relation::overlapping) return overlap(ring, pose_ring, other, pose_other, -found.mm);
    found.direction = pose_ring.direction(found.direction);
    found.on_a = pose_ring.point(found.on_a);
    found.on_b = pose_ring.point(found.on_b);
    return found;
  }
  return Sectors(ring, pose_ring, other, pose_other).run();
}

}  // namespace baywright::geometry
