#pragma once
// Points and lines within a placed solid, mesh or not. Internal.
#include "geometry/solid.h"

#include <vector>

namespace baywright::geometry {

/// How deep p (world) lies within, mm: a ball of that radius about it does too. 0 or less outside. Of a solid of
/// several pieces the deepest of the pieces, which may be less than the whole.
[[nodiscard]] double depth(const Placed& placed, const Vec3& p);

/// A stretch of a line that lies within.
struct Span {
  double in;
  double out;
};

/// The stretches of the line p + s * d (d unit, world, all s), rising for a mesh. For a mesh in plain rounding: a line
/// that runs through an edge may lose a stretch or gain one, so what follows from them has to be checked.
[[nodiscard]] std::vector<Span> spans(const Placed& placed, const Vec3& p, const Vec3& d);

}  // namespace baywright::geometry
