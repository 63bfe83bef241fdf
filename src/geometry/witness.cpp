#include "geometry/witness.h"

#include <algorithm>
#include <array>
#include <limits>
#include <vector>

namespace baywright::geometry {

namespace {

double cross(const Vec2& a, const Vec2& b) {
  return a.x * b.y - a.y * b.x;
}

/// Points in order around a convex polygon. Few of them live on the stack: a gap of two boxes allocates nothing.
class Ring2 {
 public:
  void add(const Vec2& p) {
    if (count_ < few_.size()) {
      few_[count_] = p;
    } else {
      if (many_.empty()) many_.assign(few_.begin(), few_.end());
      many_.push_back(p);
    }
    ++count_;
  }
  void clear() {
    count_ = 0;
    many_.clear();
  }
  [[nodiscard]] std::size_t size() const { return count_; }
  [[nodiscard]] const Vec2& operator[](std::size_t i) const { return count_ <= few_.size() ? few_[i] : many_[i]; }
  [[nodiscard]] const Vec2& after(std::size_t i) const { return (*this)[i + 1 < count_ ? i + 1 : 0]; }

 private:
  std::size_t count_ = 0;
  std::array<Vec2, 12> few_;
  std::vector<Vec2> many_;
};

/// What of a body is extreme along a direction, as a shadow on the plane square to it: a disc, or points.
struct Extreme {
  double disc = 0.0;  // radius; then points holds its centre
  bool rim = false;   // the one point lies on a rim
  Ring2 points;
  std::array<Vec3, 2> ends;  // the first two points in space
  Vec3 out{0.0};             // rim: from its centre to the point
  Vec3 axis{0.0};
  double play = 0.0;  // rim: how far its point may move along it for a turn of the direction by a rounding
};

struct Both {
  Vec2 a;
  Vec2 b;
};

class Plane {
 public:
  explicit Plane(const Vec3& normal) : right_(square_to(normal)), up_(glm::cross(normal, right_)) {}
  [[nodiscard]] Vec2 flat(const Vec3& p) const { return {glm::dot(p, right_), glm::dot(p, up_)}; }
  [[nodiscard]] Vec3 point(const Vec2& p) const { return right_ * p.x + up_ * p.y; }

 private:
  Vec3 right_;
  Vec3 up_;
};

Extreme extreme(const Body& body, const Vec3& centre, const Vec3& d, const Plane& plane, double band) {
  const Vec3 q = body.local(d);
  const Vec3 end = body.w * (q.z < 0.0 ? -body.half : body.half);
  const bool both_ends = 2.0 * body.half * std::abs(q.z) <= band;
  Extreme found;
  if (body.base == Body::Base::disc) {
    const double length = std::sqrt(q.x * q.x + q.y * q.y);
    if (body.radius * length <= band) {
      found.disc = body.radius;
      found.points.add(plane.flat(centre + end));
      return found;
    }
    const Vec3 rim = body.flat(Vec2{q.x, q.y} * (body.radius / length));
    found.points.add(plane.flat(centre + rim + end));
    found.rim = !both_ends;
    if (found.rim) found.play = 1e-9 * body.radius / length;
    found.ends = {centre + rim + end, centre + rim - end};
    found.out = rim;
    found.axis = body.w;
    if (both_ends) found.points.add(plane.flat(found.ends[1]));
    return found;
  }
  std::size_t taken = 0;
  const Vec2 best = body.corner(body.far_corner(q.x, q.y));
  const double most = best.x * q.x + best.y * q.y;
  for (int i = 0; i < body.count; ++i) {
    const Vec2 corner = body.corner(i);
    if (most - (corner.x * q.x + corner.y * q.y) > band) continue;
    const Vec3 point = centre + body.flat(corner) + end;
    if (taken < 2) found.ends[taken] = point;
    found.points.add(plane.flat(point));
    ++taken;
  }
  if (both_ends && taken <= 2) {
    if (taken == 1) found.ends[1] = found.ends[0] - end * 2.0;
    const Vec2 along = plane.flat(end * -2.0);
    for (std::size_t i = taken; i-- > 0;) found.points.add(found.points[i] + along);
  }
  return found;
}

Vec2 nearest_on_side(const Vec2& p, const Vec2& from, const Vec2& to) {
  const Vec2 side = to - from;
  const double square = glm::dot(side, side);
  if (!(square > 0.0)) return from;
  return from + side * std::clamp(glm::dot(p - from, side) / square, 0.0, 1.0);
}

/// Twice the area; its sign tells the sense in which the shadow is traversed.
double area2(const Ring2& ring) {
  double sum = 0.0;
  for (std::size_t i = 1; i + 1 < ring.size(); ++i) sum += cross(ring[i] - ring[0], ring[i + 1] - ring[0]);
  return sum;
}

Vec2 nearest(const Vec2& p, const Ring2& ring) {
  if (ring.size() == 1) return ring[0];
  const double sense = area2(ring);
  bool inside = ring.size() > 2;
  Vec2 best = ring[0];
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Vec2 foot = nearest_on_side(p, ring[i], ring.after(i));
    const double square = glm::dot(p - foot, p - foot);
    if (square < least) {
      least = square;
      best = foot;
    }
    inside = inside && cross(ring.after(i) - ring[i], p - ring[i]) * sense >= 0.0;
  }
  return inside ? p : best;
}

/// Two convex polygons that share no point are nearest at a corner of one of them.
Both nearest_corners(const Ring2& a, const Ring2& b) {
  Both best{a[0], b[0]};
  double least = std::numeric_limits<double>::infinity();
  const auto take = [&](const Vec2& on_a, const Vec2& on_b) {
    const double square = glm::dot(on_a - on_b, on_a - on_b);
    if (square < least) {
      least = square;
      best = {on_a, on_b};
    }
  };
  for (std::size_t i = 0; i < a.size(); ++i) take(a[i], nearest(a[i], b));
  for (std::size_t i = 0; i < b.size(); ++i) take(nearest(b[i], a), b[i]);
  return best;
}

Ring2 clipped(const Ring2& ring, const Vec2& from, const Vec2& to, double sense) {
  const auto inner = [&](const Vec2& p) { return cross(to - from, p - from) * sense; };
  Ring2 kept;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Vec2& p = ring[i];
    const Vec2& q = ring.after(i);
    const double at_p = inner(p);
    const double at_q = inner(q);
    if (at_p >= 0.0) kept.add(p);
    if ((at_p > 0.0 && at_q < 0.0) || (at_p < 0.0 && at_q > 0.0)) kept.add(p + (q - p) * (at_p / (at_p - at_q)));
  }
  return kept;
}

Vec2 mean(const Ring2& ring) {
  Vec2 sum{0.0};
  for (std::size_t i = 0; i < ring.size(); ++i) sum += ring[i];
  return sum / static_cast<double>(ring.size());
}

Both nearest_sides(const Ring2& a, const Ring2& b) {
  const Vec2 along = a[1] - a[0];
  const Vec2 other = b[1] - b[0];
  const double turn = cross(along, other);
  const double square = glm::dot(along, along);
  if (std::abs(turn) <= 1e-12 * std::sqrt(square * glm::dot(other, other))) {
    const double from = glm::dot(b[0] - a[0], along) / square;
    const double to = glm::dot(b[1] - a[0], along) / square;
    const double low = std::max(0.0, std::min(from, to));
    const double high = std::min(1.0, std::max(from, to));
    if (low <= high) {
      const Vec2 p = a[0] + along * (0.5 * (low + high));
      return {p, nearest_on_side(p, b[0], b[1])};
    }
    return nearest_corners(a, b);
  }
  const double s = cross(b[0] - a[0], other) / turn;
  const double t = cross(b[0] - a[0], along) / turn;
  if (!(s >= 0.0 && s <= 1.0 && t >= 0.0 && t <= 1.0)) return nearest_corners(a, b);
  // Nearly parallel sides cross at a badly known place; the foot on the other side is as near as the crossing.
  const Vec2 p = a[0] + along * s;
  return {p, nearest_on_side(p, b[0], b[1])};
}

Both nearest_rings(const Ring2& a, const Ring2& b) {
  if (a.size() == 1) return {a[0], nearest(a[0], b)};
  if (b.size() == 1) return {nearest(b[0], a), b[0]};
  if (a.size() == 2 && b.size() == 2) return nearest_sides(a, b);
  const Ring2& cutter = b.size() > 2 ? b : a;
  Ring2 common = b.size() > 2 ? a : b;
  const double sense = area2(cutter);
  for (std::size_t i = 0; i < cutter.size() && common.size() > 0; ++i) {
    common = clipped(common, cutter[i], cutter.after(i), sense);
  }
  if (common.size() == 0) return nearest_corners(a, b);
  return {mean(common), mean(common)};
}

Vec2 clamped(const Vec2& p, const Vec2& centre, double radius) {
  const double length = glm::length(p - centre);
  return length <= radius ? p : centre + (p - centre) * (radius / length);
}

Both nearest_discs(const Extreme& a, const Extreme& b) {
  const Vec2 offset = b.points[0] - a.points[0];
  const double length = glm::length(offset);
  if (!(length > 0.0)) return {a.points[0], b.points[0]};
  const Vec2 along = offset / length;
  const double low = std::max(-a.disc, length - b.disc);
  const double high = std::min(a.disc, length + b.disc);
  if (low <= high) return {a.points[0] + along * (0.5 * (low + high)), a.points[0] + along * (0.5 * (low + high))};
  return {a.points[0] + along * a.disc, b.points[0] - along * b.disc};
}

Both nearest(const Extreme& a, const Extreme& b) {
  if (a.disc > 0.0 && b.disc > 0.0) return nearest_discs(a, b);
  if (a.disc > 0.0) {
    const Vec2 on_b = nearest(a.points[0], b.points);
    return {clamped(on_b, a.points[0], a.disc), on_b};
  }
  if (b.disc > 0.0) {
    const Vec2 on_a = nearest(b.points[0], a.points);
    return {on_a, clamped(on_a, b.points[0], b.disc)};
  }
  return nearest_rings(a.points, b.points);
}

/// A corner, edge or rim as a curve in space: what the shadow was cast by.
class Curve {
 public:
  explicit Curve(const Extreme& extreme)
      : start_(extreme.ends[0]), out_(extreme.out), rim_(extreme.rim), edge_(extreme.points.size() == 2) {
    if (edge_) along_ = extreme.ends[1] - extreme.ends[0];
    if (rim_) along_ = glm::cross(extreme.axis, extreme.out);
  }
  [[nodiscard]] Vec3 point(double t) const {
    if (rim_) return start_ + along_ * std::sin(t) - out_ * (2.0 * std::sin(0.5 * t) * std::sin(0.5 * t));
    return start_ + along_ * t;
  }
  [[nodiscard]] Vec3 tangent(double t) const { return rim_ ? along_ * std::cos(t) - out_ * std::sin(t) : along_; }
  [[nodiscard]] Vec3 bend(double t) const { return rim_ ? -along_ * std::sin(t) - out_ * std::cos(t) : Vec3{0.0}; }
  [[nodiscard]] double kept(double t) const { return rim_ ? t : std::clamp(t, 0.0, edge_ ? 1.0 : 0.0); }
  [[nodiscard]] double foot(const Vec3& p) const {
    if (rim_ || !edge_) return 0.0;
    return glm::dot(p - start_, along_) / glm::dot(along_, along_);
  }

 private:
  Vec3 start_;
  Vec3 along_{0.0};
  Vec3 out_;
  bool rim_;
  bool edge_;
};

double off(const Witness& found, const Vec3& direction, double separation) {
  return glm::length(found.on_b - found.on_a - direction * separation);
}

/// Where a rim is nearly square to the direction, the direction says little about where on the rim the point lies; the
/// points say it better. Newton for two points whose connection is square to both curves.
Witness slid(const Extreme& a, const Extreme& b, const Witness& found, const Vec3& direction, double separation) {
  const Curve on_a(a);
  const Curve on_b(b);
  double s = on_a.kept(on_a.foot(found.on_a));
  double t = on_b.kept(on_b.foot(found.on_b));
  Witness best = found;
  for (int i = 0; i < 12; ++i) {
    const Vec3 link = on_b.point(t) - on_a.point(s);
    const Vec3 ta = on_a.tangent(s);
    const Vec3 tb = on_b.tangent(t);
    const double fa = glm::dot(link, ta);
    const double fb = glm::dot(link, tb);
    const double aa = glm::dot(link, on_a.bend(s)) - glm::dot(ta, ta);
    const double bb = glm::dot(link, on_b.bend(t)) + glm::dot(tb, tb);
    const double ab = glm::dot(ta, tb);
    const double determinant = aa * bb + ab * ab;
    if (determinant != 0.0) {
      s -= (fa * bb - ab * fb) / determinant;
      t -= (aa * fb + ab * fa) / determinant;
    } else if (aa != 0.0) {
      s -= fa / aa;
    } else if (bb != 0.0) {
      t -= fb / bb;
    }
    s = on_a.kept(s);
    t = on_b.kept(t);
    const Witness next{on_a.point(s), on_b.point(t), found.lean};
    if (!(off(next, direction, separation) < off(best, direction, separation))) {
      if (i > 3) break;
      continue;
    }
    best = next;
  }
  return best;
}

}  // namespace

Witness witness(const Pair& pair, const Vec3& direction) {
  const Plane plane(direction);
  const double most_of_a = pair.a.extent(direction);
  const double least_of_b = glm::dot(pair.apart, direction) - pair.b.extent(-direction);
  const double separation = least_of_b - most_of_a;
  Witness best{};
  double least = std::numeric_limits<double>::infinity();
  // A face that leans by a few roundings counts as level; where that leaves the points beside each other, a little
  // more.
  const double few = 4.0 * pair.rounding;
  for (const double band : {few, few + 1e-10}) {
    const Extreme a = extreme(pair.a, Vec3{0.0}, direction, plane, band);
    const Extreme b = extreme(pair.b, pair.apart, -direction, plane, band);
    const Both both = nearest(a, b);
    Witness found{plane.point(both.a) + direction * most_of_a, plane.point(both.b) + direction * least_of_b, band};
    double missed = off(found, direction, separation);
    const bool curves = a.disc == 0.0 && b.disc == 0.0 && a.points.size() <= 2 && b.points.size() <= 2;
    if (curves && missed > pair.rounding && missed <= std::max(a.play, b.play)) {
      found = slid(a, b, found, direction, separation);
      missed = off(found, direction, separation);
    }
    if (missed < least) {
      least = missed;
      best = found;
    }
    if (least <= few) break;
  }
  return best;
}

}  // namespace baywright::geometry
