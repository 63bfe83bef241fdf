#include "geometry/sweep.h"

#include "geometry/gap.h"
#include "geometry/limits.h"
#include "geometry/mesh_meeting.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace baywright::geometry {

namespace {

constexpr int most_steps = 5000;  // a step is at least `fine_mm`, so this is 50 mm of creeping along at the least gap
constexpr int most_looks = 6;     // at poses at which a mesh overlaps
constexpr double fine_share = 0.02;  // of an overlap's depth

double radians(double degrees) {
  return degrees * std::numbers::pi / 180.0;
}

double off_axis(const Vec3& p, const Movement& movement) {
  return glm::length(glm::cross(p - movement.pivot, movement.axis));
}

/// No point of the box is farther from the axis.
double farthest_from_axis(const Bounds& box, const Movement& movement) {
  double most = 0.0;
  for (int i = 0; i < 8; ++i) most = std::max(most, off_axis(box.corner(i), movement));
  return most;
}

/// Boxes that meet say nothing of how deep what they hold may overlap.
bool too_far(const Bounds& a, const Bounds& b, double cutoff) {
  const double apart = a.distance(b);
  return apart > 0.0 && apart >= cutoff;
}

/// How fast points within `radius` of the axis can move, mm per unit of t.
class Speed {
 public:
  Speed(const Movement& movement, double radius)
      : movement_(movement), turning_(std::abs(radians(movement.degrees)) * radius) {}

  [[nodiscard]] double any() const { return glm::length(movement_.shift) + turning_; }

  /// Along the unit vector n. A turning point never moves along its axis.
  [[nodiscard]] double along(const Vec3& n) const {
    const double lean = glm::dot(n, movement_.axis);
    return std::max(0.0, glm::dot(movement_.shift, n) + turning_ * std::sqrt(std::max(0.0, 1.0 - lean * lean)));
  }

 private:
  const Movement& movement_;
  double turning_;
};

/// Walks along the motion. `measure(pose)`: the gap of the moved solid; `directed`: it is a separation along its
/// direction, as that of convex pieces is, so that only motion along it counts.
template <typename Measure>
void walk(const Movement& movement, const Speed& speed, bool directed, double deep, const Measure& measure,
          Closest& best) {
  double t = 0.0;
  for (int step = 0; step < most_steps; ++step) {
    const Gap found = measure(movement.at(t));
    if (found.mm < best.mm) {
      best.mm = found.mm;
      best.t = t;
      best.met = true;
      if (best.mm < deep) return;
    }
    const double fastest = directed ? speed.along(found.direction) : speed.any();
    const double hasty = std::isfinite(deep) ? -0.25 * deep : 0.0;
    const double fine = best.met ? std::max({fine_mm, fine_share * -best.mm, hasty}) : slide_mm;
    const double room = found.mm - found.error - best.mm + fine;
    if (!(fastest * (1.0 - t) > room)) return;
    t += room / fastest;
  }
  best.sure = false;
}

/// As `walk`, where one of the two is a mesh: from the distance of the surfaces, which is quick. The true depth of an
/// overlap is not; what one crossing triangle tells is taken, at a few poses.
void walk_mesh(const Placed& moving, const Placed& fixed, const Movement& movement, const Speed& speed, double deep,
               Closest& best) {
  const bool swap = moving.solid.mesh() == nullptr;
  const double fastest = speed.any();
  double t = 0.0;
  int looks = 0;
  for (int step = 0; step < most_steps && looks < most_looks; ++step) {
    const Placed there{moving.solid, movement.at(t).after(moving.pose)};
    const Meeting met = swap ? meeting(fixed, there, true) : meeting(there, fixed, true);
    double mm = met.surfaces.mm;
    if (met.overlapping) {
      mm = -2.0 * touch_mm - met.depth;
      for (const Gap& crossing : met.crossing) mm = std::min(mm, crossing.mm);
    }
    if (mm < best.mm) {
      best.mm = mm;
      best.t = t;
      best.met = true;
      if (best.mm < deep) return;
    }
    double room = mm - met.surfaces.error - best.mm + (best.met ? fine_mm : slide_mm);
    if (met.overlapping) {
      room = std::max(room, (1.0 - t) * fastest / most_looks);
      ++looks;
    }
    if (!(fastest * (1.0 - t) > room)) return;
    t += room / fastest;
  }
  best.sure = looks == most_looks;
}

}  // namespace

Pose Movement::at(double t) const {
  if (degrees == 0.0) return {Mat3{1.0}, shift * t};
  const Mat3 turn = rotation(axis, degrees * t);
  return {turn, pivot - turn * pivot + shift * t};
}

Bounds swept(const Bounds& box, const Movement& movement) {
  const double angle = std::abs(radians(movement.degrees));
  Bounds all = box;
  // Between two of these poses a point leaves the chord by no more than the sagitta of its arc.
  constexpr int parts = 4;
  for (int i = 1; i <= parts; ++i) {
    const Pose pose = movement.at(static_cast<double>(i) / parts);
    for (int corner = 0; corner < 8; ++corner) all.add(pose.point(box.corner(corner)));
  }
  const Vec3 sagitta(farthest_from_axis(box, movement) * (1.0 - std::cos(0.5 * angle / parts)));
  return {all.low - sagitta, all.high + sagitta};
}

Closest closest(const Placed& moving, const Placed& fixed, const Movement& movement, double cutoff, double deep) {
  Closest best{cutoff, 0.0, false, true};
  if (moving.solid.mesh() != nullptr || fixed.solid.mesh() != nullptr) {
    const Bounds box = bounds(moving);
    if (too_far(swept(box, movement), bounds(fixed), best.mm)) return best;
    walk_mesh(moving, fixed, movement, Speed(movement, farthest_from_axis(box, movement)), deep, best);
    return best;
  }
  for (const Piece& a : moving.solid.pieces()) {
    const Bounds box = bounds(a, moving.pose);
    const Bounds way = swept(box, movement);
    const Speed speed(movement, farthest_from_axis(box, movement));
    for (const Piece& b : fixed.solid.pieces()) {
      if (too_far(way, bounds(b, fixed.pose), best.mm)) continue;
      const bool directed = a.base != Piece::Base::ring && b.base != Piece::Base::ring;
      walk(
          movement, speed, directed, deep, [&](const Pose& at) { return gap(a, at.after(moving.pose), b, fixed.pose); },
          best);
      if (best.mm < deep) return best;
    }
  }
  return best;
}

bool stays_clear(const Placed& moving, const Placed& fixed, const Movement& movement, double least) {
  const Closest found = closest(moving, fixed, movement, least, least);
  return !found.met && found.sure;
}

Placed box_about(const Placed& placed) {
  Bounds box = Bounds::empty();
  if (const Mesh* mesh = placed.solid.mesh()) box = mesh->bounds();
  for (const Piece& piece : placed.solid.pieces()) box.add(bounds(piece, Pose{}));
  auto made = Solid::box(box.high - box.low);
  if (std::holds_alternative<Refusal>(made)) return placed;  // a mesh without thickness
  return {std::get<Solid>(std::move(made)), placed.pose.after({Mat3{1.0}, box.low})};
}

}  // namespace baywright::geometry
