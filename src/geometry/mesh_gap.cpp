// Apart, the gap is the distance of the surfaces (mesh_meeting.h). Overlapping, a way out is looked for along a bounded
// list of directions: the ways out of the triangles that cross, the axes and main face normals of both. Along each, the
// other solid is pushed until it lies beyond the first, which is always free; and the best of them are walked: from
// where it stands, each step goes as far as what overlaps there needs, until nothing overlaps. What is found is free,
// though a shorter way may exist; it is the shortest where a triangle that crosses a piece needs as much alone.
#include "geometry/mesh_gap.h"

#include "geometry/cast.h"
#include "geometry/convex.h"
#include "geometry/limits.h"
#include "geometry/mesh_inside.h"
#include "geometry/mesh_meeting.h"
#include "geometry/mesh_near.h"
#include "geometry/sheet.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <tuple>

namespace baywright::geometry {

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr std::size_t most_directions = 256;
constexpr int most_walked = 24;       // directions
constexpr std::size_t most_ways = 8;  // of crossing triangles that are tried

/// Steps of all walks together: fewer for large meshes, where each is dear.
int most_steps(const Placed& a, const Placed& b) {
  std::size_t triangles = 1;
  for (const Placed* placed : {&a, &b}) {
    if (const Mesh* mesh = placed->solid.mesh()) triangles += mesh->triangles().size();
  }
  return static_cast<int>(std::clamp<std::size_t>(100'000 / triangles, 40, 240));
}

double most_along_world(const Placed& placed, const Vec3& d) {
  if (const Mesh* mesh = placed.solid.mesh()) {
    return most_along(mesh->data().tree, glm::transpose(placed.pose.turn) * d) + glm::dot(placed.pose.shift, d);
  }
  double most = -infinity;
  for (const Piece& piece : placed.solid.pieces()) most = std::max(most, glm::dot(farthest(piece, placed.pose, d), d));
  return most;
}

Placed shifted(const Placed& placed, const Vec3& by) {
  return {placed.solid, {placed.pose.turn, placed.pose.shift + by}};
}

/// The box of a solid along its own axes, as a piece; padded, as it may be flat.
Sheet own_box(const Placed& placed) {
  constexpr double pad = thinnest_mm;
  const Mesh* mesh = placed.solid.mesh();
  Bounds box = mesh != nullptr ? mesh->bounds() : bounds({placed.solid, Pose{}});
  box.low -= Vec3{pad};
  box.high += Vec3{pad};
  Sheet found;
  found.piece.corners = {
      {box.low.x, box.low.y}, {box.high.x, box.low.y}, {box.high.x, box.high.y}, {box.low.x, box.high.y}};
  found.piece.height = box.high.z - box.low.z;
  found.pose = placed.pose.after({Mat3{1.0}, {0.0, 0.0, box.low.z}});
  return found;
}

bool boxes_meet(const Placed& a, const Placed& b) {
  const Sheet of_a = own_box(a);
  const Sheet of_b = own_box(b);
  return gap(of_a.piece, of_a.pose, of_b.piece, of_b.pose).mm <= touch_mm;
}

bool is_surface(const Placed& placed) {
  return placed.solid.mesh() != nullptr && !placed.solid.mesh()->closed();
}

class WayOut {
 public:
  WayOut(const Placed& a, const Placed& b, const Meeting& start)
      : a_(a), b_(b), start_(start), most_steps_(most_steps(a, b)) {}

  Gap run() {
    list();
    for (Way& way : ways_) {
      way.beyond = most_along_world(a_, way.direction) + most_along_world(b_, -way.direction);
      offer(way.direction, way.beyond);
    }
    std::stable_sort(ways_.begin(), ways_.end(), [](const Way& p, const Way& q) {
      return std::tie(p.order, p.beyond) < std::tie(q.order, q.beyond);
    });
    needed_ = start_.depth;
    for (const Gap& crossing : start_.crossing) needed_ = std::max(needed_, -crossing.mm - crossing.error);
    int walked = 0;
    for (const Way& way : ways_) {
      if (shift_ <= needed_ + touch_mm || walked++ == most_walked || steps_ >= most_steps_) break;
      walk(way.direction);
    }
    return finish();
  }

 private:
  struct Way {
    Vec3 direction;
    int order;  // 0: a crossing told it
    double beyond = 0.0;
  };

  void add(const Vec3& d, int order) {
    if (ways_.size() >= most_directions || !(glm::dot(d, d) > 0.5)) return;
    for (const Way& way : ways_) {
      if (glm::dot(way.direction - d, way.direction - d) < 1e-18) return;
    }
    ways_.push_back({d, order});
  }
  void add_both(const Vec3& d) {
    add(d, 1);
    add(-d, 1);
  }

  void list() {
    for (std::size_t i = 0; i < std::min(start_.crossing.size(), most_ways); ++i) add(start_.crossing[i].direction, 0);
    for (const Placed* placed : {&a_, &b_}) {
      for (int axis = 0; axis < 3; ++axis) add_both(placed->pose.turn[axis]);
    }
    for (const Placed* placed : {&a_, &b_}) {
      if (const Mesh* mesh = placed->solid.mesh()) {
        for (const Vec3& normal : mesh->data().main_normals) add_both(placed->pose.direction(normal));
      }
      for (const Piece& piece : placed->solid.pieces()) {
        for (const Vec3& normal : face_normals(piece, placed->pose)) add_both(normal);
      }
    }
  }

  void offer(const Vec3& d, double shift) {
    if (!(shift < shift_)) return;
    shift_ = shift;
    direction_ = d;
  }

  /// Pushes b along d, each time as far as what overlaps needs.
  void walk(const Vec3& d) {
    double shift = 0.0;
    const double stride = 0.01 * shift_;
    Meeting met = start_;
    while (steps_++ < most_steps_) {
      double next = shift;
      const Placed moved = shifted(b_, d * shift);
      for (std::size_t i = 0; i < std::min(met.crossing.size(), most_ways); ++i) {
        next = std::max(next, shift + needed_by(met.crossing[i], moved, d));
      }
      if (met.within) next = std::max(next, shift + needed_at(met.point, moved, d));
      shift = next > shift + touch_mm ? next : shift + std::max(met.depth, stride);
      if (!(shift < shift_)) return;
      met = meeting(a_, shifted(b_, d * shift), true);
      if (!met.overlapping) return offer(d, shift);
    }
  }

  /// How far b has to go along d to leave a, on the line through p, which lies in both.
  [[nodiscard]] double needed_at(const Vec3& p, const Placed& moved, const Vec3& d) const {
    double out = 0.0;
    for (const Span& of_a : spans(a_, p, d)) {
      if (!(of_a.in <= 0.0 && of_a.out >= 0.0)) continue;
      for (const Span& of_b : spans(moved, p, d)) {
        if (of_b.in <= 0.0 && of_b.out >= 0.0) out = std::max(out, of_a.out - of_b.in);
      }
    }
    return out;
  }

  /// The same for a pair that crosses. A point beside it that lies in both solids most often tells of a longer way than
  /// the triangles alone.
  [[nodiscard]] double needed_by(const Gap& crossing, const Placed& moved, const Vec3& d) const {
    const Sheet one = sheet(a_, crossing.piece_a);
    const bool mesh_b = moved.solid.mesh() != nullptr;
    const Sheet other = mesh_b ? sheet(moved, crossing.piece_b)
                               : Sheet{moved.solid.pieces()[static_cast<std::size_t>(crossing.piece_b)], moved.pose};
    const bool ring = other.piece.base == Piece::Base::ring;
    const Stay stays = stay(one.piece, one.pose, other.piece, other.pose, d);
    double out = stays.meets && stays.in <= 0.0 && !ring ? stays.out : 0.0;
    const Vec3 middle = 0.5 * (crossing.on_a + crossing.on_b);
    const Vec3 inward = -one.pose.turn[2] - (mesh_b ? other.pose.turn[2] : Vec3{0.0});
    for (const double part : {1e-3, 1e-6}) {
      const Vec3 p = middle + inward * (part * one.piece.corners[1].x);
      if (depth(a_, p) > 0.0 && depth(moved, p) > 0.0) out = std::max(out, needed_at(p, moved, d));
    }
    return out;
  }

  [[nodiscard]] Gap finish() const {
    Gap found = start_.surfaces;
    if (!(shift_ < infinity)) return found;  // cannot be: every direction has a way beyond
    const Gap touch = meeting(a_, shifted(b_, direction_ * shift_), true).surfaces;
    found.mm = -shift_;
    found.error = touch_mm;
    found.bound = shift_ <= needed_ + touch_mm ? Bound::exact : Bound::at_least;
    found.relation = Relation::overlapping;
    found.direction = direction_;
    found.on_a = touch.on_a;
    found.on_b = touch.on_a - direction_ * shift_;
    found.piece_a = touch.piece_a;
    found.piece_b = touch.piece_b;
    return found;
  }

  const Placed& a_;
  const Placed& b_;
  const Meeting& start_;
  int most_steps_;
  std::vector<Way> ways_;
  double needed_ = 0.0;
  double shift_ = infinity;
  Vec3 direction_{1.0, 0.0, 0.0};
  int steps_ = 0;
};

Gap measured(const Placed& a, const Placed& b) {
  const Meeting met = meeting(a, b, false);
  if (met.overlapping) return WayOut(a, b, met).run();
  Gap found = met.surfaces;
  if (found.relation != Relation::apart) {
    // They touch, and nothing that lies deeper than a touch in both was found.
    found.relation = Relation::undecided;
    found.error = std::max(found.error, touch_mm + std::abs(found.mm));
  }
  if ((is_surface(a) || is_surface(b)) && boxes_meet(a, b)) {
    found.bound = Bound::surface;
    found.relation = Relation::undecided;
  }
  return found;
}

/// Any fixed order, so that the answer does not depend on which was asked about first.
bool meshes_in_order(const Placed& a, const Placed& b) {
  const auto key = [](const Placed& p) {
    return std::make_tuple(p.solid.mesh()->triangles().size(), p.pose.shift.x, p.pose.shift.y, p.pose.shift.z,
                           p.pose.turn[0].x, p.pose.turn[0].y, p.pose.turn[1].x, p.pose.turn[1].y,
                           p.solid.mesh()->bounds().high.x, p.solid.mesh()->bounds().high.y,
                           p.solid.mesh()->bounds().high.z);
  };
  return key(a) <= key(b);
}

Gap named_swapped(Gap gap) {
  gap = swapped(gap);
  std::swap(gap.piece_a, gap.piece_b);
  return gap;
}

}  // namespace

Gap mesh_gap(const Placed& a, const Placed& b) {
  const bool swap = a.solid.mesh() == nullptr || (b.solid.mesh() != nullptr && !meshes_in_order(a, b));
  return swap ? named_swapped(measured(b, a)) : measured(a, b);
}

}  // namespace baywright::geometry
