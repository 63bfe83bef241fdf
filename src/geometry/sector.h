#pragma once
// Stretches of a ring between convex prisms, for branch and bound. Internal.
#include "geometry/solid.h"

#include <optional>
#include <vector>

namespace baywright::geometry {

/// A stretch of a ring's angle, or the whole of a convex piece.
struct Stretch {
  double from = 0.0;
  double to = 0.0;
  [[nodiscard]] bool whole() const { return !(to > from); }
};

/// A convex prism around the stretch of the ring; the piece itself when the stretch is whole.
[[nodiscard]] Piece hull(const Piece& ring, const Stretch& sector);

/// A convex prism within the stretch; nothing when it is so wide that the chord cuts the bore. From hull to core it is
/// a share of the angle's square.
[[nodiscard]] std::optional<Piece> core(const Piece& ring, const Stretch& sector);

/// What to begin with: a few stretches that cover a ring, or the whole of any other piece.
[[nodiscard]] std::vector<Stretch> stretches(const Piece& piece);

/// Of two stretches the wider one (if not whole) in halves, each beside the other unchanged.
struct Stretches {
  Stretch a;
  Stretch b;
};
[[nodiscard]] std::vector<Stretches> halved(const Stretches& pair);

}  // namespace baywright::geometry
