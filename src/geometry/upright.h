#pragma once
// A ring and a piece whose axes are parallel: the question splits into the plane of the base and the axis. Internal.
#include "geometry/gap.h"

#include <optional>
#include <vector>

namespace baywright::geometry {

/// `other` as a base over an interval of the ring's axis: corners, or a disc with a bore of its own.
struct Upright {
  std::vector<Vec2> corners;
  Vec2 centre{0.0};
  double radius = 0.0;
  double bore = 0.0;
  double low = 0.0;
  double high = 0.0;
};

/// `other` seen from a ring; `relative` takes its coordinates to the ring's. Nothing when no axis of it is parallel to
/// the ring's. A box may lie on any of its faces.
[[nodiscard]] std::optional<Upright> upright(const Pose& relative, const Piece& other);

/// The gap in the ring's coordinates. Exact where they are apart or touch. Overlapping by more than a touch, `mm` is
/// minus a depth that any way out needs at least, and the points mean nothing.
[[nodiscard]] Gap upright_gap(const Piece& ring, const Upright& other, double rounding);

}  // namespace baywright::geometry
