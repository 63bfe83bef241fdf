#pragma once
// Where along a line one piece would overlap another. Internal.
#include "geometry/gap.h"

namespace baywright::geometry {

/// A touch on the way: the points on a, and on b where b stands now, world.
struct Touch {
  Vec3 on_a{0.0};
  Vec3 on_b{0.0};
};

/// Shifts of b along a direction, mm, between which it overlaps a.
struct Stay {
  bool meets = false;  // false: never by more than a touch
  double in = 0.0;
  double out = 0.0;
  double error = 0.0;  // of both ends
  Touch at_in;
  Touch at_out;
};

/// `n` is a unit vector. A ring counts as its outer disc.
[[nodiscard]] Stay stay(const Piece& a, const Pose& pose_a, const Piece& b, const Pose& pose_b, const Vec3& n);

/// The same where one of the two is a ring, from the near side only: `in`, its error and its points hold, `out` does
/// not. What passes through a bore does not meet.
[[nodiscard]] Stay ring_stay(const Piece& a, const Pose& pose_a, const Piece& b, const Pose& pose_b, const Vec3& n);

}  // namespace baywright::geometry
