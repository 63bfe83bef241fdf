#pragma once
// Vectors and rigid poses, double precision, right-handed, millimetres.
#include <glm/geometric.hpp>
#include <glm/mat3x3.hpp>
#include <glm/vec2.hpp>
#include <glm/vec3.hpp>

namespace baywright::geometry {

using Vec2 = glm::dvec2;
using Vec3 = glm::dvec3;
using Mat3 = glm::dmat3;  // columns are the images of the axes

/// A rigid motion: x -> turn * x + shift. `turn` is a rotation (orthonormal, determinant +1); `shift` is in mm.
/// A part's pose takes its own coordinates to the world's.
struct Pose {
  Mat3 turn{1.0};
  Vec3 shift{0.0};

  [[nodiscard]] Vec3 point(const Vec3& p) const { return turn * p + shift; }
  [[nodiscard]] Vec3 direction(const Vec3& d) const { return turn * d; }
  /// First `inner`, then this.
  [[nodiscard]] Pose after(const Pose& inner) const { return {turn * inner.turn, turn * inner.shift + shift}; }
  [[nodiscard]] Pose inverse() const {
    const Mat3 back = glm::transpose(turn);
    return {back, -(back * shift)};
  }
};

/// Rotation by `degrees` about the unit vector `axis`, right-handed. Multiples of 90 degrees come out exact.
[[nodiscard]] Mat3 rotation(const Vec3& axis, double degrees);

/// How far `turn` is from a rotation: no length changes by a larger share. A rotation in doubles is off by some 1e-16.
[[nodiscard]] double skew(const Mat3& turn);

/// Any unit vector at right angles to the unit vector `axis`; the same for the same input.
[[nodiscard]] Vec3 square_to(const Vec3& axis);

/// An axis-aligned box, low <= high in each component, mm. `empty()` bounds hold nothing and grow from nothing.
struct Bounds {
  Vec3 low;
  Vec3 high;

  [[nodiscard]] static Bounds empty();
  /// One of its eight corners; bit 0, 1, 2 of `i`: the high end along x, y, z.
  [[nodiscard]] Vec3 corner(int i) const {
    return {(i & 1) != 0 ? high.x : low.x, (i & 2) != 0 ? high.y : low.y, (i & 4) != 0 ? high.z : low.z};
  }
  void add(const Vec3& p);
  void add(const Bounds& other);
  /// The distance between two boxes, mm; 0 where they touch or overlap. A lower bound of the gap of what they hold.
  [[nodiscard]] double distance(const Bounds& other) const;
};

}  // namespace baywright::geometry
