#include "fit/limits.h"

#include "fit/piece_limits.h"

#include <algorithm>
#include <limits>
#include <utility>

namespace baywright::fit {

using geometry::Piece;
using geometry::Vec3;
using tolerance::Method;

GapLimits limits(const Scene& scene, const Element& a, const Element& b, Method method, double enough) {
  Relative relative(scene, a, b);
  if (a.placed.solid.mesh() != nullptr || b.placed.solid.mesh() != nullptr) {
    GapLimits found = mesh_limits(relative, a, b, method, enough);
    found.terms = relative.terms(found.on_a, found.on_b, found.direction);
    return found;
  }
  GapLimits least;
  least.min = std::numeric_limits<double>::infinity();
  double max = std::numeric_limits<double>::infinity();
  bool first = true;
  const Vec3 swing = a.swing + b.swing;
  for (const Piece& piece_a : a.placed.solid.pieces()) {
    geometry::Bounds box_a = geometry::bounds(piece_a, a.placed.pose);
    box_a = {box_a.low - swing, box_a.high + swing};
    for (const Piece& piece_b : b.placed.solid.pieces()) {
      // A pair that cannot come closer than one that is known already decides nothing.
      if (!first && box_a.distance(geometry::bounds(piece_b, b.placed.pose)) > std::max(least.min, 0.0)) continue;
      GapLimits found =
          piece_limits(relative, {piece_a, a.placed.pose, a.swing}, {piece_b, b.placed.pose, b.swing}, method, enough);
      max = std::min(max, found.max);
      if (first || found.min < least.min) least = std::move(found);
      first = false;
    }
  }
  least.terms = relative.terms(least.on_a, least.on_b, least.direction);
  least.max = std::max(max, least.min);
  return least;
}

}  // namespace baywright::fit
