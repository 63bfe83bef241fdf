#include "geometry/upright.h"

#include "geometry/convex.h"
#include "geometry/limits.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace baywright::geometry {

namespace {

constexpr double parallel = 1e-14;  // sine between axes: 1e-9 mm over the largest solid

bool along_axis(const Vec3& direction) {
  return std::hypot(direction.x, direction.y) <= parallel;
}

/// The bases in their plane: how far apart, and where. On the material of both where apart, any point where not.
struct Flat {
  double gap;
  Vec2 on_ring;
  Vec2 on_other;
  Vec2 way;  // unit, from the ring toward the other
};

Vec2 unit_or_x(const Vec2& p) {
  const double length = glm::length(p);
  return length > 0.0 ? p / length : Vec2{1.0, 0.0};
}

Vec2 nearest_of_polygon(const std::vector<Vec2>& corners) {
  Vec2 best = corners[0];
  double area = 0.0;
  bool left = true;
  bool right = true;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Vec2& p = corners[i];
    const Vec2 side = corners[(i + 1) % corners.size()] - p;
    const double square = glm::dot(side, side);
    const Vec2 foot = p + side * (square > 0.0 ? std::clamp(-glm::dot(p, side) / square, 0.0, 1.0) : 0.0);
    if (glm::dot(foot, foot) < glm::dot(best, best)) best = foot;
    const double turn = side.y * p.x - side.x * p.y;  // (0 - p) to the left of the side: > 0
    left = left && turn >= 0.0;
    right = right && turn <= 0.0;
    area += turn;
  }
  return area != 0.0 && (left || right) ? Vec2{0.0} : best;
}

Flat flat_gap(const Piece& ring, const Upright& other) {
  Flat best{-std::numeric_limits<double>::infinity(), Vec2{0.0}, Vec2{0.0}, Vec2{1.0, 0.0}};
  const auto take = [&best](double gap, const Vec2& on_ring, const Vec2& on_other, const Vec2& way) {
    if (gap > best.gap) best = {gap, on_ring, on_other, way};
  };
  if (other.corners.empty()) {
    const double off = glm::length(other.centre);
    const Vec2 out = unit_or_x(other.centre);
    take(off - other.radius - ring.radius, out * ring.radius, other.centre - out * other.radius, out);
    take(ring.bore - off - other.radius, out * ring.bore, other.centre + out * other.radius, -out);
    if (other.bore > 0.0) {
      take(other.bore - off - ring.radius, -out * ring.radius, other.centre - out * other.bore, -out);
    }
    return best;
  }
  const Vec2 inner = nearest_of_polygon(other.corners);
  take(glm::length(inner) - ring.radius, unit_or_x(inner) * ring.radius, inner, unit_or_x(inner));
  const Vec2 far = *std::max_element(other.corners.begin(), other.corners.end(),
                                     [](const Vec2& p, const Vec2& q) { return glm::dot(p, p) < glm::dot(q, q); });
  take(ring.bore - glm::length(far), unit_or_x(far) * ring.bore, far, -unit_or_x(far));
  if (!(best.gap > 0.0)) {
    // Over the material somewhere: where it is nearest to the axis, or on the way from there to where it is farthest.
    Vec2 shared = inner;
    if (glm::length(inner) < ring.bore) {
      const Vec2 way = far - inner;
      const double aim = std::min(glm::length(far), 0.5 * (ring.bore + ring.radius));
      const double along = glm::dot(inner, way);
      const double square = std::max(glm::dot(way, way), 1e-300);
      const double root = along * along - square * (glm::dot(inner, inner) - aim * aim);
      shared = inner + way * std::clamp((-along + std::sqrt(std::max(0.0, root))) / square, 0.0, 1.0);
    }
    best.on_ring = shared;
    best.on_other = shared;
  }
  return best;
}

/// Ends that face each other: some point over the material of both. Its distances from the two centres and theirs from
/// each other are the sides of a triangle. The middles of the walls are tried; where they make no triangle, both
/// distances move toward the bounds that do.
Vec2 shared_point(const Piece& ring, const Upright& other) {
  const double off = glm::length(other.centre);
  double here = 0.5 * (ring.bore + ring.radius);
  double there = 0.5 * (other.bore + other.radius);
  const auto move = [&](double lacking, double to_here, double to_there) {
    const double gained = std::abs(to_here - here) + std::abs(to_there - there);
    if (!(lacking > 0.0 && gained > 0.0)) return;
    const double share = std::min(1.0, lacking / gained);
    here += share * (to_here - here);
    there += share * (to_there - there);
  };
  move(off - here - there, ring.radius, other.radius);
  move(here - there - off, ring.bore, other.radius);
  move(there - here - off, ring.radius, other.bore);
  const Vec2 out = unit_or_x(other.centre);
  const double along = off > 0.0 ? std::clamp(0.5 * ((here - there) * (here + there) / off + off), -here, here) : here;
  const double aside = std::sqrt((here - along) * (here + along));
  return out * along + Vec2{-out.y, out.x} * aside;
}

}  // namespace

std::optional<Upright> upright(const Pose& relative, const Piece& other) {
  Upright found;
  const auto span = [&](double z0, double z1) {
    found.low = std::min(z0, z1);
    found.high = std::max(z0, z1);
  };
  if (along_axis(relative.turn[2])) {
    span(relative.shift.z, relative.shift.z + relative.turn[2].z * other.height);
    found.centre = {relative.shift.x, relative.shift.y};
    found.radius = other.radius;
    found.bore = other.bore;
    for (const Vec2& corner : other.corners) {
      const Vec3 p = relative.point(Vec3{corner, 0.0});
      found.corners.push_back({p.x, p.y});
    }
    return found;
  }
  if (other.base != Piece::Base::polygon || other.corners.size() != 4) return std::nullopt;
  // A box that lies on its side stands on another of its faces.
  const auto& c = other.corners;
  for (const std::size_t i : {0U, 1U}) {
    const Vec2 side = c[i + 1] - c[i];
    const Vec2 next = c[(i + 2) % 4] - c[i + 1];
    const Vec2 opposite = c[(i + 3) % 4] - c[(i + 2) % 4];
    if (side != -opposite || glm::dot(side, next) != 0.0) continue;
    const Vec3 axis = relative.direction(Vec3{side, 0.0});
    if (!along_axis(glm::normalize(axis))) continue;
    const Vec3 p = relative.point(Vec3{c[i], 0.0});
    const Vec3 across = relative.direction(Vec3{next, 0.0});
    const Vec3 up = relative.turn[2] * other.height;
    span(p.z, p.z + axis.z);
    for (const Vec3& q : {p, p + across, p + across + up, p + up}) found.corners.push_back({q.x, q.y});
    return found;
  }
  return std::nullopt;
}

Gap upright_gap(const Piece& ring, const Upright& standing, double rounding) {
  Flat flat = flat_gap(ring, standing);
  const double rise = std::max(standing.low - ring.height, -standing.high);
  Gap gap;
  if (std::max(flat.gap, rise) < -touch_mm) {
    gap.mm = std::max(flat.gap, rise);
    gap.error = rounding;
    gap.relation = Relation::overlapping;
    gap.bound = Bound::at_least;
    return gap;
  }
  if (!(flat.gap > 0.0) && standing.corners.empty()) {
    flat.on_ring = flat.on_other = shared_point(ring, standing);
  }
  double z_ring = 0.0;
  double z_other = 0.0;
  if (rise > 0.0) {
    const bool over = standing.low > ring.height;
    z_ring = over ? ring.height : 0.0;
    z_other = over ? standing.low : standing.high;
  } else {
    z_ring = z_other = 0.5 * (std::max(0.0, standing.low) + std::min(ring.height, standing.high));
  }
  const double aside = std::max(0.0, flat.gap);
  const double above = std::max(0.0, rise);
  const Vec3 up{0.0, 0.0, standing.low + standing.high < ring.height ? -1.0 : 1.0};
  Vec3 direction = rise > flat.gap ? up : Vec3{flat.way, 0.0};
  if (aside > 0.0 && above > 0.0) direction = glm::normalize(Vec3{flat.way * aside, 0.0} + up * above);
  gap.mm = std::max(flat.gap, rise) > 0.0 ? std::hypot(aside, above) : std::max(flat.gap, rise);
  gap.error = rounding + (gap.mm < 0.0 ? -gap.mm : 0.0);  // less than a touch: the closed forms hold from outside only
  gap.relation = relation(gap.mm, gap.error, Bound::exact);
  gap.direction = direction;
  gap.on_a = {flat.on_ring, z_ring};
  gap.on_b = {flat.on_other, z_other};
  return gap;
}

}  // namespace baywright::geometry
