#include "geometry/witness.h"

#include "geometry/shadow.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace baywright::geometry {

namespace {

/// What of a body is extreme along a direction, with its shadow on the plane square to it.
struct Extreme {
  Shadow shadow;
  bool rim = false;          // the one point lies on a rim
  std::array<Vec3, 2> ends;  // the first two points in space
  Vec3 out{0.0};             // rim: from its centre to the point
  Vec3 axis{0.0};
  double play = 0.0;  // rim: how far its point may move along it for a turn of the direction by a rounding
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
  // A sheet has one end only: its corners must not be taken twice.
  const bool both_ends = body.half > 0.0 && 2.0 * body.half * std::abs(q.z) <= band;
  Extreme found;
  if (body.base == Body::Base::disc) {
    const double length = std::sqrt(q.x * q.x + q.y * q.y);
    if (body.radius * length <= band) {
      found.shadow.disc = body.radius;
      found.shadow.points.add(plane.flat(centre + end));
      return found;
    }
    const Vec3 rim = body.flat(Vec2{q.x, q.y} * (body.radius / length));
    found.shadow.points.add(plane.flat(centre + rim + end));
    found.rim = !both_ends;
    if (found.rim) found.play = 1e-9 * body.radius / length;
    found.ends = {centre + rim + end, centre + rim - end};
    found.out = rim;
    found.axis = body.w;
    if (both_ends) found.shadow.points.add(plane.flat(found.ends[1]));
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
    found.shadow.points.add(plane.flat(point));
    ++taken;
  }
  if (both_ends && taken <= 2) {
    if (taken == 1) found.ends[1] = found.ends[0] - end * 2.0;
    const Vec2 along = plane.flat(end * -2.0);
    for (std::size_t i = taken; i-- > 0;) found.shadow.points.add(found.shadow.points[i] + along);
  }
  return found;
}

/// A corner, edge or rim as a curve in space: what the shadow was cast by.
class Curve {
 public:
  explicit Curve(const Extreme& extreme)
      : start_(extreme.ends[0]), out_(extreme.out), rim_(extreme.rim), edge_(extreme.shadow.points.size() == 2) {
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
    const Both both = nearest(a.shadow, b.shadow);
    Witness found{plane.point(both.a) + direction * most_of_a, plane.point(both.b) + direction * least_of_b, band};
    double missed = off(found, direction, separation);
    const bool curves =
        a.shadow.disc == 0.0 && b.shadow.disc == 0.0 && a.shadow.points.size() <= 2 && b.shadow.points.size() <= 2;
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
