// A mesh has thousands of triangles and few of them decide. Along any fixed direction n no two points of the elements
// come closer than the distance of the one from the other's outermost plane, less the spread there; the spread is a
// convex function of the place, so over a triangle it is largest at a corner. That bound costs a sum a corner, and in
// its order triangles are measured as pieces until no other can come closer than the least that was found. The same,
// with the upper side of the spread, for the largest gap.
#include "fit/piece_limits.h"
#include "geometry/gap.h"
#include "geometry/limits.h"
#include "geometry/sheet.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace baywright::fit {

using geometry::Bounds;
using geometry::Facing;
using geometry::Gap;
using geometry::Mesh;
using geometry::Piece;
using geometry::Pose;
using geometry::Vec3;
using tolerance::Method;
using tolerance::Spread;

namespace {

constexpr double infinite = std::numeric_limits<double>::infinity();

/// So many pairs are measured for one gap, about 10 ms. What is left then counts by its bound, which is on the safe
/// side.
constexpr int most_pairs = 1000;

const Mesh* mesh_of(const Element& element) {
  return element.placed.solid.mesh();
}

Bounds grown(const Bounds& box, const Vec3& by) {
  return {box.low - by, box.high + by};
}

/// How far the element reaches along the direction.
double reach(const Element& element, const Vec3& along) {
  double most = -infinite;
  if (const Mesh* mesh = mesh_of(element)) {
    const Vec3 local = glm::transpose(element.placed.pose.turn) * along;
    for (const Vec3& v : mesh->vertices()) most = std::max(most, glm::dot(local, v));
    return most + glm::dot(along, element.placed.pose.shift);
  }
  for (const Piece& piece : element.placed.solid.pieces())
    most = std::max(most, glm::dot(along, geometry::farthest(piece, element.placed.pose, along)));
  return most;
}

struct Bounded {
  double low;  // no gap of the triangle is less
  double up;   // where it faces the other at all three corners, its largest gap is this
  int triangle;
};

class MeshPair {
 public:
  MeshPair(Relative& relative, const Element& a, const Element& b, Method method, double enough)
      : relative_(relative),
        a_(a),
        b_(b),
        mesh_is_a_(mesh_of(a) != nullptr),
        mesh_(mesh_is_a_ ? a : b),
        other_(mesh_is_a_ ? b : a),
        swing_(a.swing + b.swing),
        method_(method),
        enough_(enough) {
    least_.min = infinite;
  }

  GapLimits measure() {
    const Gap gap = geometry::gap(a_.placed, b_.placed);
    const bool inside = gap.relation == geometry::Relation::overlapping;
    const Vec3 n = gap.direction;
    if (inside)
      start_inside(gap);
    else
      start_apart(gap);
    std::vector<Bounded> order = bounded(inside ? n : least_.direction, inside ? gap.mm : -infinite, inside);
    const auto take = [&](int triangle) { inside ? face(triangle, gap) : pass(triangle); };
    std::sort(order.begin(), order.end(), [](const Bounded& x, const Bounded& y) { return x.low < y.low; });
    for (const Bounded& each : order) {
      if (!(each.low < least_.min - geometry::touch_mm)) break;
      if (pairs_ > most_pairs) {
        least_.min = each.low;  // every triangle that is left has this bound or a higher one
        break;
      }
      take(each.triangle);
    }
    pairs_ = 0;
    std::sort(order.begin(), order.end(), [](const Bounded& x, const Bounded& y) { return x.up < y.up; });
    for (const Bounded& each : order) {
      if (!(each.up < max_ - geometry::touch_mm) || pairs_ > most_pairs) break;
      take(each.triangle);
    }
    least_.nominal = gap.mm;
    least_.max = std::max(max_, least_.min);
    least_.error = std::max(least_.error, gap.error);
    least_.surface = gap.bound == geometry::Bound::surface;
    return least_;
  }

 private:
  /// The pair that decided the nominal gap.
  void start_apart(const Gap& gap) {
    const auto side = [](const Element& element, int index) {
      if (mesh_of(element) != nullptr) return geometry::sheet(element.placed, index);
      return geometry::Sheet{element.placed.solid.pieces()[static_cast<std::size_t>(index)], element.placed.pose};
    };
    const geometry::Sheet one = side(a_, gap.piece_a);
    const geometry::Sheet two = side(b_, gap.piece_b);
    measure_pair(one.piece, one.pose, two.piece, two.pose);
  }

  void start_inside(const Gap& gap) {
    least_.direction = gap.direction;
    take({gap.on_a, gap.on_b, gap.mm}, gap.direction);
  }

  void take(const Facing& point, const Vec3& n) {
    const Spread spread = relative_.spread(point, n, method_);
    max_ = std::min(max_, point.gap + spread.up);
    if (!(point.gap - spread.down < least_.min)) return;
    least_.min = point.gap - spread.down;
    least_.on_a = point.on_a;
    least_.on_b = point.on_b;
    least_.nominal_there = point.gap;
  }

  void measure_pair(const Piece& piece_a, const Pose& pose_a, const Piece& piece_b, const Pose& pose_b) {
    ++pairs_;
    GapLimits found =
        piece_limits(relative_, {piece_a, pose_a, a_.swing}, {piece_b, pose_b, b_.swing}, method_, enough_);
    max_ = std::min(max_, found.max);
    if (found.min < least_.min) least_ = std::move(found);
  }

  /// Calls with each piece of the other element that can come within `reach` of the box.
  template <class Use>
  void with_others(const Bounds& box, double reach, const Use& use) {
    if (mesh_of(other_) != nullptr) {
      geometry::triangles_near(other_.placed, box, reach, near_);
      for (const int triangle : near_) {
        const geometry::Sheet sheet = geometry::sheet(other_.placed, triangle);
        use(sheet.piece, sheet.pose);
      }
      return;
    }
    for (const Piece& piece : other_.placed.solid.pieces())
      if (box.distance(geometry::bounds(piece, other_.placed.pose)) <= reach) use(piece, other_.placed.pose);
  }

  /// Apart: the triangle as a piece of its own.
  void pass(int triangle) {
    const geometry::Sheet sheet = geometry::sheet(mesh_.placed, triangle);
    const Bounds box = grown(geometry::bounds(sheet.piece, sheet.pose), swing_);
    with_others(box, std::max(least_.min, 0.0), [&](const Piece& piece, const Pose& pose) {
      if (mesh_is_a_)
        measure_pair(sheet.piece, sheet.pose, piece, pose);
      else
        measure_pair(piece, pose, sheet.piece, sheet.pose);
    });
  }

  /// Overlapping: what of it faces the other along the way out. Points that lie deeper than that way clears do not face
  /// each other in truth: something of the solids is between.
  void face(int triangle, const Gap& gap) {
    const Vec3& n = gap.direction;
    const geometry::Sheet sheet = geometry::sheet(mesh_.placed, triangle);
    const double band = glm::dot(glm::abs(n), swing_);
    const Bounds box = grown(geometry::bounds(sheet.piece, sheet.pose), glm::abs(n) * (std::abs(gap.mm) + band));
    with_others(box, geometry::touch_mm, [&](const Piece& piece, const Pose& pose) {
      ++pairs_;
      const std::vector<Facing> points = mesh_is_a_ ? geometry::facing(sheet.piece, sheet.pose, piece, pose, n, band)
                                                    : geometry::facing(piece, pose, sheet.piece, sheet.pose, n, band);
      for (const Facing& point : points)
        if (point.gap >= gap.mm - gap.error - geometry::touch_mm) take(point, n);
    });
  }

  /// The triangles that can decide, with their bounds along n, no gap counting as less than `floor`.
  std::vector<Bounded> bounded(const Vec3& n, double floor, bool inside) {
    const Mesh& mesh = *mesh_of(mesh_);
    const Pose& pose = mesh_.placed.pose;
    const Vec3 sweep = inside ? glm::abs(n) * (std::abs(floor) + glm::dot(glm::abs(n), swing_)) : swing_;
    std::vector<int> near;
    geometry::triangles_near(mesh_.placed, grown(other_.bounds, sweep), inside ? 0.0 : std::max(least_.min, 0.0), near);
    const double plane = mesh_is_a_ ? -reach(other_, -n) : reach(other_, n);
    const double far = glm::dot(glm::abs(n), swing_);
    std::vector<std::pair<double, double>> at(mesh.vertices().size(), {std::nan(""), 0.0});  // by vertex: low, up
    const auto bound_at = [&](int vertex) {
      auto& known = at[static_cast<std::size_t>(vertex)];
      if (!std::isnan(known.first)) return known;
      const Vec3 here = pose.point(mesh.vertices()[static_cast<std::size_t>(vertex)]);
      const double along = glm::dot(n, here);
      const double gap = std::max(mesh_is_a_ ? plane - along : along - plane, floor);
      if (gap - far >= least_.min && gap - far >= max_) return known = {gap - far, gap - far};
      const Facing point = mesh_is_a_ ? Facing{here, here + n * gap, gap} : Facing{here - n * gap, here, gap};
      const Spread spread = relative_.spread(point, n, method_);
      return known = {gap - spread.down, gap + spread.up};
    };
    std::vector<Bounded> out;
    for (const int triangle : near) {
      Bounded each{infinite, infinite, triangle};
      for (const int vertex : mesh.triangles()[static_cast<std::size_t>(triangle)]) {
        const auto [low, up] = bound_at(vertex);
        each.low = std::min(each.low, low);
        each.up = std::min(each.up, up);
      }
      if (each.low < least_.min || each.up < max_) out.push_back(each);
    }
    return out;
  }

  Relative& relative_;
  const Element& a_;
  const Element& b_;
  const bool mesh_is_a_;
  const Element& mesh_;
  const Element& other_;
  const Vec3 swing_;
  const Method method_;
  const double enough_;
  GapLimits least_;
  double max_ = infinite;
  int pairs_ = 0;
  std::vector<int> near_;
};

}  // namespace

GapLimits mesh_limits(Relative& relative, const Element& a, const Element& b, Method method, double enough) {
  return MeshPair(relative, a, b, method, enough).measure();
}

}  // namespace baywright::fit
