#pragma once
// The points at which two bodies face each other along a known direction. Internal.
#include "geometry/body.h"

namespace baywright::geometry {

/// In coordinates about the centre of a. Where the direction is the one of least distance or shortest way out,
/// on_b - on_a is direction * separation.
struct Witness {
  Vec3 on_a{0.0};
  Vec3 on_b{0.0};
  double lean = 0.0;  // mm by which a face may lean that was taken as level: the points are that near to their bodies
};

/// Takes of a what is extreme along `direction` (unit) and of b what is extreme against it (points, edges, faces,
/// discs, within the pair's rounding) and returns their nearest points; the middle of what they share where they share
/// more than a point.
[[nodiscard]] Witness witness(const Pair& pair, const Vec3& direction);

}  // namespace baywright::geometry
