#pragma once
// Solids, poses and motions that the gap and travel tests share.
#include "geometry/gap.h"
#include "geometry/solid.h"
#include "support/random_turn.h"

#include <cmath>
#include <numbers>
#include <random>
#include <variant>
#include <vector>

namespace baywright::geometry::scenes {

using test::any_turn;
using test::Random;
using test::uniform;

/// Solids that are known to be good.
inline Solid box(double x, double y, double z) {
  return std::get<Solid>(Solid::box({x, y, z}));
}
inline Solid cylinder(double diameter, double height) {
  return std::get<Solid>(Solid::cylinder(diameter, 0.0, height));
}
inline Solid tube(double diameter, double bore, double height) {
  return std::get<Solid>(Solid::cylinder(diameter, bore, height));
}
inline Solid prism(Outline outline, std::vector<Outline> holes, double height) {
  return std::get<Solid>(Solid::prism(std::move(outline), std::move(holes), height));
}

/// A pose that brings the local point `from` to the world point `to`, turned by `turn` about it.
inline Pose put(const Vec3& from, const Vec3& to, const Mat3& turn = Mat3{1.0}) {
  return {turn, to - turn * from};
}

/// Stands with the middle of its bounding box at `centre`.
inline Placed centred(const Solid& solid, const Vec3& centre, const Mat3& turn = Mat3{1.0}) {
  Vec3 middle{0.0, 0.0, 0.5 * solid.height()};
  if (!solid.outline().empty()) {
    Vec2 low = solid.outline()[0];
    Vec2 high = low;
    for (const Vec2& p : solid.outline()) {
      low = glm::min(low, p);
      high = glm::max(high, p);
    }
    middle.x = 0.5 * (low.x + high.x);
    middle.y = 0.5 * (low.y + high.y);
  }
  return {solid, put(middle, centre, turn)};
}

inline Pose any_pose(Random& random, double spread) {
  const Mat3 turn = any_turn(random);
  return {turn, {uniform(random, -spread, spread), uniform(random, -spread, spread), uniform(random, -spread, spread)}};
}

inline Vec3 any_direction(Random& random) {
  std::normal_distribution<double> normal;
  const double x = normal(random);
  const double y = normal(random);
  const double z = normal(random);
  return glm::normalize(Vec3{x, y, z});
}

/// Braces, since the order in which a call's arguments are drawn is the compiler's choice.
inline Vec3 any_sides(Random& random, double low, double high) {
  return {uniform(random, low, high), uniform(random, low, high), uniform(random, low, high)};
}

/// A box, a cylinder or a convex prism with 3 to 8 corners, up to about 40 mm.
inline Solid any_convex(Random& random) {
  const auto kind = random() % 3;
  const Vec3 sides = any_sides(random, 0.5, 40);
  if (kind == 0) return box(sides.x, sides.y, sides.z);
  if (kind == 1) return cylinder(sides.x, sides.y);
  const int corners = 3 + static_cast<int>(random() % 6);
  Outline outline;
  const double size = uniform(random, 2, 20);
  for (int i = 0; i < corners; ++i) {
    const double angle = 2 * std::numbers::pi * (i + uniform(random, 0.0, 0.8)) / corners;
    outline.push_back({1.3 * size * std::cos(angle), 0.7 * size * std::sin(angle)});
  }
  return prism(outline, {}, uniform(random, 0.5, 40));
}

inline Placed moved(const Placed& placed, const Pose& motion) {
  return {placed.solid, motion.after(placed.pose)};
}
inline Placed shifted(const Placed& placed, const Vec3& by) {
  return {placed.solid, {placed.pose.turn, placed.pose.shift + by}};
}

/// The mirror image in the plane x = 0: the base is mirrored, and the pose between two mirrors is a rotation again.
inline Placed mirrored(const Placed& placed) {
  const Mat3 mirror{Vec3{-1, 0, 0}, Vec3{0, 1, 0}, Vec3{0, 0, 1}};
  const Pose pose{mirror * placed.pose.turn * mirror, mirror * placed.pose.shift};
  if (placed.solid.diameter() > 0.0) return {placed.solid, pose};
  const auto flip = [](Outline outline) {
    for (Vec2& p : outline) p.x = -p.x;
    return outline;
  };
  std::vector<Outline> holes;
  for (const Outline& hole : placed.solid.holes()) holes.push_back(flip(hole));
  return {prism(flip(placed.solid.outline()), holes, placed.solid.height()), pose};
}

}  // namespace baywright::geometry::scenes
