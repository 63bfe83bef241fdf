// For one direction n the gap along it is the least, over the points at which the two pieces face each other, of a figure
// that is linear in the dimensions. Its minimum over all limits is therefore found point by point (worst case or root sum
// square), and is a lower bound of the true gap's minimum, since the gap is never less than what any one direction shows.
// Steps: the nominal gap and its direction; the facing points within the band that the limits can bring forward; the
// spread at each; the least. Where the nominal contact is diagonal (the direction is no face normal of either), face
// normals are tried as well and the best sure minimum kept.
#include "fit/limits.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/facing.h"
#include "geometry/limits.h"

namespace baywright::fit {

using geometry::Facing;
using geometry::Gap;
using geometry::Piece;
using geometry::Pose;
using geometry::Vec3;
using tolerance::Method;
using tolerance::Spread;

namespace {

constexpr double no_effect = 1e-9;  // mm per mm: a sensitivity below it is rounding

/// A sum over the dimensions that move either element, collected once a pair.
class Relative {
 public:
  Relative(const Scene& scene, const Element& a, const Element& b) : scene_(scene) {
    for (const Motion& motion : a.motions) entries_.push_back({motion.dimension, &motion, nullptr});
    for (const Motion& motion : b.motions) {
      const auto same = std::find_if(entries_.begin(), entries_.end(),
                                     [&](const Entry& e) { return e.dimension == motion.dimension; });
      if (same == entries_.end()) entries_.push_back({motion.dimension, nullptr, &motion});
      else same->b = &motion;
    }
  }

  [[nodiscard]] std::vector<std::pair<int, Vec3>> at(const Vec3& on_a, const Vec3& on_b) const {
    std::vector<std::pair<int, Vec3>> out;
    out.reserve(entries_.size());
    for (const Entry& e : entries_) {
      Vec3 v{0.0};
      if (e.b != nullptr) v += e.b->at(on_b);
      if (e.a != nullptr) v -= e.a->at(on_a);
      out.emplace_back(e.dimension, v);
    }
    return out;
  }

  [[nodiscard]] Spread spread(const std::vector<std::pair<int, double>>& terms, Method method) const {
    std::vector<tolerance::Term> list;
    list.reserve(terms.size());
    for (const auto& [dimension, sensitivity] : terms) list.push_back({sensitivity, &scene_.dimension(dimension)});
    return tolerance::spread(list, method);
  }

 private:
  struct Entry {
    int dimension;
    const Motion* a;
    const Motion* b;
  };
  const Scene& scene_;
  std::vector<Entry> entries_;
};

std::vector<std::pair<int, double>> along(const std::vector<std::pair<int, Vec3>>& motions, const Vec3& n) {
  std::vector<std::pair<int, double>> out;
  for (const auto& [dimension, v] : motions)
    if (const double s = glm::dot(n, v); std::abs(s) > no_effect) out.emplace_back(dimension, s);
  return out;
}

struct Side {
  const Piece& piece;
  const Pose& pose;
  double swing;
};

/// Limits for one direction; where the two do not face each other along it, for the points of `otherwise` only.
void measure_along(const Relative& relative, const Side& a, const Side& b, const Vec3& n, const Facing& otherwise,
                   Method method, GapLimits& out) {
  std::vector<Facing> points = geometry::facing(a.piece, a.pose, b.piece, b.pose, n, a.swing + b.swing);
  if (points.empty()) points.push_back(otherwise);
  out.min = std::numeric_limits<double>::infinity();
  out.max = std::numeric_limits<double>::infinity();
  for (const Facing& point : points) {
    auto terms = along(relative.at(point.on_a, point.on_b), n);
    const Spread spread = relative.spread(terms, method);
    const double low = point.gap - spread.down;
    out.max = std::min(out.max, point.gap + spread.up);
    if (low >= out.min - geometry::touch_mm && !out.terms.empty()) continue;
    out.min = std::min(out.min, low);
    out.on_a = point.on_a;
    out.on_b = point.on_b;
    out.nominal_there = point.gap;
    out.terms = std::move(terms);
  }
  out.direction = n;
}

/// The most that two material points can be apart, whatever the direction: for contacts that are not face to face.
double farthest_apart(const Relative& relative, const Scene& scene, const Vec3& on_a, const Vec3& on_b) {
  Vec3 most = glm::abs(on_b - on_a);
  for (const auto& [dimension, v] : relative.at(on_a, on_b)) {
    const tolerance::Dimension& d = scene.dimension(dimension);
    for (int axis = 0; axis < 3; ++axis)
      if (std::abs(v[axis]) > no_effect) most[axis] += std::abs(v[axis]) * std::max(d.minus, d.plus);
  }
  return glm::length(most);
}

bool is_face(const Side& side, const Vec3& n) {
  for (const Vec3& normal : geometry::face_normals(side.piece, side.pose))
    if (std::abs(glm::dot(normal, n)) > 1.0 - 1e-12) return true;
  return false;
}

GapLimits piece_limits(const Scene& scene, const Relative& relative, const Side& a, const Side& b, Method method) {
  const Gap gap = geometry::gap(a.piece, a.pose, b.piece, b.pose);
  GapLimits best;
  measure_along(relative, a, b, gap.direction, {gap.on_a, gap.on_b, gap.mm}, method, best);
  best.nominal = gap.mm;
  best.error = gap.error;
  const bool diagonal = gap.mm > geometry::touch_mm && !is_face(a, gap.direction) && !is_face(b, gap.direction);
  if (!diagonal) return best;
  const double most = farthest_apart(relative, scene, gap.on_a, gap.on_b);
  for (const Side* side : {&a, &b})
    for (const Vec3& normal : geometry::face_normals(side->piece, side->pose)) {
      const Vec3 n = side == &a ? normal : -normal;
      const double apart = geometry::separation(a.piece, a.pose, b.piece, b.pose, n);
      if (!(apart > best.min)) continue;
      GapLimits other;
      const Facing ends{geometry::farthest(a.piece, a.pose, n), geometry::farthest(b.piece, b.pose, -n), apart};
      measure_along(relative, a, b, n, ends, method, other);
      if (other.min > best.min) {
        best = other;
        best.nominal = apart;
        best.error = gap.error;
      }
    }
  best.max = std::max(best.max, most);
  return best;
}

}  // namespace

GapLimits limits(const Scene& scene, const Element& a, const Element& b, Method method) {
  const Relative relative(scene, a, b);
  GapLimits least;
  least.min = std::numeric_limits<double>::infinity();
  double max = std::numeric_limits<double>::infinity();
  bool first = true;
  const double swing = a.swing + b.swing;
  for (const Piece& piece_a : a.placed.solid.pieces()) {
    const geometry::Bounds box_a = geometry::bounds(piece_a, a.placed.pose);
    for (const Piece& piece_b : b.placed.solid.pieces()) {
      // A pair that cannot come closer than one that is known already decides nothing.
      if (!first && box_a.distance(geometry::bounds(piece_b, b.placed.pose)) - swing > least.min) continue;
      GapLimits found = piece_limits(scene, relative, {piece_a, a.placed.pose, a.swing}, {piece_b, b.placed.pose, b.swing}, method);
      max = std::min(max, found.max);
      if (first || found.min < least.min) least = std::move(found);
      first = false;
    }
  }
  least.max = std::max(max, least.min);
  return least;
}

}  // namespace baywright::fit
