// For one direction n the gap along it is the least, over the points at which the two pieces face each other, of a
// figure that is linear in the dimensions. Its minimum over all limits is therefore found point by point (worst case or
// root sum square), and is a lower bound of the true gap's minimum, since the gap is never less than what any one
// direction shows. Steps: the nominal gap and its direction; the facing points within the band that the limits can
// bring forward; the spread at each; the least. Where the nominal contact is diagonal (the direction is no face normal
// of either), face normals are tried as well and the best sure minimum kept.
#include "fit/piece_limits.h"

#include "geometry/limits.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace baywright::fit {

using geometry::Facing;
using geometry::Gap;
using geometry::Vec3;
using tolerance::Method;
using tolerance::Spread;

namespace {

constexpr double no_effect = 1e-9;  // mm per mm: a sensitivity below it is rounding

/// Limits for one direction; where the two do not face each other along it, for the points of `otherwise` only.
void measure_along(Relative& relative, const Side& a, const Side& b, const Vec3& n, const Facing& otherwise,
                   Method method, GapLimits& out) {
  std::vector<Facing> points =
      geometry::facing(a.piece, a.pose, b.piece, b.pose, n, glm::dot(glm::abs(n), a.swing + b.swing));
  if (points.empty()) points.push_back(otherwise);
  out.max = std::numeric_limits<double>::infinity();
  bool first = true;
  for (const Facing& point : points) {
    const Spread spread = relative.spread(point, n, method);
    const double low = point.gap - spread.down;
    out.max = std::min(out.max, point.gap + spread.up);
    if (!first && low >= out.min - geometry::touch_mm) continue;
    first = false;
    out.min = low;
    out.on_a = point.on_a;
    out.on_b = point.on_b;
    out.nominal_there = point.gap;
  }
  out.direction = n;
}

bool is_face(const Side& side, const Vec3& n) {
  for (const Vec3& normal : geometry::face_normals(side.piece, side.pose))
    if (std::abs(glm::dot(normal, n)) > 1.0 - 1e-12) return true;
  return false;
}

/// The best sure minimum that a face normal of either gives, for two that pass each other diagonally.
void measure_past_faces(Relative& relative, const Side& a, const Side& b, const Gap& gap, Method method,
                        GapLimits& best) {
  for (const Side* side : {&a, &b})
    for (const Vec3& normal : geometry::face_normals(side->piece, side->pose)) {
      const Vec3 n = side == &a ? normal : -normal;
      const double apart = geometry::separation(a.piece, a.pose, b.piece, b.pose, n);
      if (!(apart > best.min)) continue;
      GapLimits other;
      const Facing ends{geometry::farthest(a.piece, a.pose, n), geometry::farthest(b.piece, b.pose, -n), apart};
      measure_along(relative, a, b, n, ends, method, other);
      if (!(other.min > best.min)) continue;
      best = other;
      best.nominal = apart;
      best.error = gap.error;
    }
}

}  // namespace

Relative::Relative(const Scene& scene, const Element& a, const Element& b) : scene_(scene) {
  entries_.reserve(a.motions.size() + b.motions.size());
  for (const Motion& motion : a.motions) entries_.push_back({motion.dimension, &motion, nullptr});
  for (const Motion& motion : b.motions) {
    const auto same =
        std::find_if(entries_.begin(), entries_.end(), [&](const Entry& e) { return e.dimension == motion.dimension; });
    if (same == entries_.end())
      entries_.push_back({motion.dimension, nullptr, &motion});
    else
      same->b = &motion;
  }
  terms_.reserve(entries_.size());
}

Vec3 Relative::Entry::motion(const Vec3& on_a, const Vec3& on_b) const {
  Vec3 v{0.0};
  if (b != nullptr) v += b->at(on_b);
  if (a != nullptr) v -= a->at(on_a);
  return v;
}

Spread Relative::spread(const Facing& point, const Vec3& n, Method method) {
  terms_.clear();
  for (const Entry& e : entries_)
    if (const double s = glm::dot(n, e.motion(point.on_a, point.on_b)); std::abs(s) > no_effect)
      terms_.push_back({s, &scene_.dimension(e.dimension)});
  return tolerance::spread(terms_, method);
}

std::vector<std::pair<int, double>> Relative::terms(const Vec3& on_a, const Vec3& on_b, const Vec3& n) const {
  std::vector<std::pair<int, double>> out;
  for (const Entry& e : entries_)
    if (const double s = glm::dot(n, e.motion(on_a, on_b)); std::abs(s) > no_effect) out.emplace_back(e.dimension, s);
  return out;
}

double Relative::farthest_apart(const Vec3& on_a, const Vec3& on_b) const {
  Vec3 most = glm::abs(on_b - on_a);
  for (const Entry& e : entries_) {
    const Vec3 v = e.motion(on_a, on_b);
    const tolerance::Dimension& d = scene_.dimension(e.dimension);
    for (int axis = 0; axis < 3; ++axis)
      if (std::abs(v[axis]) > no_effect) most[axis] += std::abs(v[axis]) * std::max(d.minus, d.plus);
  }
  return glm::length(most);
}

GapLimits piece_limits(Relative& relative, const Side& a, const Side& b, Method method, double enough) {
  const Gap gap = geometry::gap(a.piece, a.pose, b.piece, b.pose);
  const bool diagonal = gap.mm > geometry::touch_mm && !is_face(a, gap.direction) && !is_face(b, gap.direction);
  GapLimits best;
  best.min = -std::numeric_limits<double>::infinity();
  if (diagonal) measure_past_faces(relative, a, b, gap, method, best);
  if (!diagonal || best.min < enough) {
    GapLimits straight;
    measure_along(relative, a, b, gap.direction, {gap.on_a, gap.on_b, gap.mm}, method, straight);
    straight.nominal = gap.mm;
    straight.error = gap.error;
    if (!diagonal || !(best.min > straight.min)) best = std::move(straight);
  }
  if (diagonal) best.max = std::max(best.max, relative.farthest_apart(gap.on_a, gap.on_b));
  return best;
}

}  // namespace baywright::fit
