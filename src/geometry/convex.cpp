// The signed gap is the largest separation over all directions: the distance where the bodies are apart, minus the
// shortest way out where they overlap. So every direction gives a lower bound. Apart, two points give an upper bound,
// and the answer stands when the two meet. Overlapping, the candidates of penetration.cpp are all there are. Steps: a
// cheap descent (simplex.h); if its bounds do not meet, exact solutions near where it arrived (polish.h); if they still
// do not, or the bodies seem to overlap or touch, all ways out; then the better of what was found.
#include "geometry/convex.h"

#include "geometry/boxes.h"
#include "geometry/limits.h"
#include "geometry/penetration.h"
#include "geometry/polish.h"
#include "geometry/simplex.h"
#include "geometry/witness.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace baywright::geometry {

namespace {

/// What is known of a gap, about the centre of a: a direction with its separation, which is a lower bound, and two
/// points, whose distance is an upper bound where the bodies are apart.
struct Measure {
  double lower = -std::numeric_limits<double>::infinity();
  Vec3 direction{1.0, 0.0, 0.0};
  Witness points;
  double missed =
      std::numeric_limits<double>::infinity();  // |on_b - on_a - direction * lower|; infinite: no points yet

  [[nodiscard]] double upper() const { return glm::length(points.on_b - points.on_a); }
  void take(const Witness& found) {
    const double length = glm::length(found.on_b - found.on_a - direction * lower);
    if (!(length < missed)) return;
    missed = length;
    points = found;
  }
  void take(double separation, const Vec3& d) {
    lower = separation;
    direction = d;
    if (std::isfinite(missed)) missed = glm::length(points.on_b - points.on_a - direction * lower);
  }
};

/// Points that meet this closely settle a gap: far below `touch_mm`, above what rounding can reach.
double met(const Pair& pair) {
  return std::max(1e-12, 4.0 * pair.rounding);
}

bool boxes(const Pair& pair) {
  return pair.a.base == Body::Base::rectangle && pair.b.base == Body::Base::rectangle;
}

Gap finish(const Pair& pair, const Measure& measure, double mm, double error) {
  Gap gap;
  if (!std::isfinite(mm) || !std::isfinite(error)) {  // figures that are no numbers: nothing is known
    gap.error = std::numeric_limits<double>::infinity();
    return gap;
  }
  gap.mm = mm;
  gap.error = error + pair.rounding;
  gap.relation = relation(gap.mm, gap.error, Bound::exact);
  gap.direction = measure.direction;
  gap.on_a = pair.origin + measure.points.on_a;
  gap.on_b = pair.origin + measure.points.on_b;
  return gap;
}

Gap between(const Pair& pair, const Measure& measure) {
  const double slack = std::abs(measure.upper() - measure.lower);
  const double lean = measure.points.lean > 8.0 * pair.rounding ? measure.points.lean : 0.0;
  Gap gap = finish(pair, measure, 0.5 * (measure.lower + measure.upper()), 0.5 * slack + lean);
  // The lean is a doubt about the points only; the direction proves its separation without them.
  if (measure.lower - pair.rounding > touch_mm) gap.relation = Relation::apart;
  return gap;
}

/// Betters direction and points by the features near the direction; true if the points then meet.
bool refine(const Pair& pair, Measure& measure, double angle) {
  const Solutions solutions(pair, measure.direction, angle);
  Directions near;
  std::array<double, 96> value;
  std::size_t seen = 0;
  const auto settled = [&]() {
    bool better = seen == 0;
    for (; seen < near.size(); ++seen) {
      value[seen] = pair.separation(near[seen]);
      if (!(value[seen] > measure.lower)) continue;
      measure.take(value[seen], near[seen]);
      better = true;
    }
    if (better) measure.take(witness(pair, measure.direction));
    return measure.missed <= met(pair);
  };
  // Cheap ones first: most nearest points are on a face or between edges.
  solutions.add_flat(near);
  if (near.size() > 0 && settled()) return true;
  solutions.add_curved(near);
  if (settled()) return true;
  const std::size_t before = near.size();
  solutions.add_rims(near);
  if (near.size() > before && settled()) return true;
  // Between nearly parallel features directions tie to the last digit, and only the points tell which one is right.
  for (std::size_t i = 0; i < near.size() && measure.missed > met(pair); ++i) {
    if (!(value[i] >= measure.lower - pair.rounding)) continue;
    Measure other = measure;
    other.take(value[i], near[i]);
    other.take(witness(pair, near[i]));
    if (other.missed < measure.missed) measure = other;
  }
  return measure.missed <= met(pair);
}

Gap along(const Pair& pair, const WayOut& way) {
  Measure measure;
  measure.take(way.separation, way.direction);
  measure.take(witness(pair, way.direction));
  if (measure.missed > met(pair)) refine(pair, measure, 1e-7);
  return finish(pair, measure, measure.lower, 0.0);
}

/// For what the descent could not settle: all ways out, and if that is not below zero, the features around them.
Gap settle(const Pair& pair, Measure measure) {
  const WayOut way = boxes(pair) ? way_out_of_boxes(pair) : way_out(pair);
  if (way.separation < -pair.rounding) return along(pair, way);
  if (way.separation > measure.lower) measure.take(way.separation, way.direction);
  for (const double angle : {1e-6, 1e-3, 0.1}) {
    if (refine(pair, measure, angle)) return between(pair, measure);
  }
  Descent descent(pair, measure.direction);
  for (int i = 0; i < 8; ++i) {
    const Descent::State state = descent.run(0.0, 0.0, 24);
    if (state == Descent::State::inside) break;
    if (descent.lower() > measure.lower) measure.take(descent.lower(), descent.direction());
    measure.take({descent.on_a(), pair.apart + descent.on_b()});
    if (refine(pair, measure, std::min(0.2, descent.angle())) || state == Descent::State::stalled) break;
  }
  if (measure.missed > met(pair) && pair.a.base != Body::Base::disc) {
    const Vec3 d = corner_direction(pair, measure.direction, measure.upper());
    measure.take(pair.separation(d), d);
    measure.take(witness(pair, d));
  }
  return between(pair, measure);
}

}  // namespace

Gap swapped(Gap gap) {
  std::swap(gap.on_a, gap.on_b);
  gap.direction = -gap.direction;
  return gap;
}

bool in_order(const Piece& a, const Pose& pose_a, const Piece& b, const Pose& pose_b) {
  const bool flat_a = a.base == Piece::Base::polygon;
  const bool flat_b = b.base == Piece::Base::polygon;
  if (flat_a != flat_b) return flat_b;
  for (int i = 0; i < 3; ++i) {
    if (pose_a.shift[i] != pose_b.shift[i]) return pose_a.shift[i] < pose_b.shift[i];
  }
  if (a.height != b.height) return a.height < b.height;
  if (a.radius != b.radius) return a.radius < b.radius;
  for (int i = 0; i < 2; ++i) {
    for (int j = 0; j < 3; ++j) {
      if (pose_a.turn[i][j] != pose_b.turn[i][j]) return pose_a.turn[i][j] < pose_b.turn[i][j];
    }
  }
  return std::lexicographical_compare(a.corners.begin(), a.corners.end(), b.corners.begin(), b.corners.end(),
                                      [](const Vec2& p, const Vec2& q) { return p.x != q.x ? p.x < q.x : p.y < q.y; });
}

Relation relation(double mm, double error, Bound bound) {
  if (mm - error > touch_mm) return Relation::apart;
  if (bound == Bound::exact && mm + error < -touch_mm) return Relation::overlapping;
  return Relation::undecided;
}

Gap convex_gap(const Pair& pair) {
  if (auto aligned = aligned_gap(pair)) {
    aligned->on_a += pair.origin;
    aligned->on_b += pair.origin;
    return *aligned;
  }
  Vec3 start = pair.apart;
  if (boxes(pair)) {
    const WayOut way = way_out_of_boxes(pair);
    if (way.separation < -pair.rounding) return along(pair, way);
    start = way.direction;
  }
  if (!(glm::length(start) > 0.0)) start = pair.a.w;
  Descent descent(pair, start);
  Measure measure;
  const bool curved = pair.a.base == Body::Base::disc;
  for (const double angle : {0.1, 0.01, 1e-4}) {
    const Descent::State state = descent.run(0.25 * met(pair), curved ? angle : 0.0, 40);
    if (state == Descent::State::inside || !(descent.lower() > 0.0)) break;
    if (descent.lower() > measure.lower) measure.take(descent.lower(), descent.direction());
    measure.take({descent.on_a(), pair.apart + descent.on_b()});
    if (measure.missed <= met(pair)) return between(pair, measure);
    if (refine(pair, measure, descent.angle())) return between(pair, measure);
    if (state == Descent::State::stalled) break;
  }
  return settle(pair, measure);
}

Gap convex_gap(const Piece& a, const Pose& pose_a, const Piece& b, const Pose& pose_b) {
  if (in_order(a, pose_a, b, pose_b)) return convex_gap(Pair(a, pose_a, b, pose_b));
  return swapped(convex_gap(Pair(b, pose_b, a, pose_a)));
}

}  // namespace baywright::geometry
