#pragma once
// Directions in which the rim of a disc is extreme together with an edge or with another rim. Internal.
#include "geometry/vectors.h"

#include <array>
#include <optional>

namespace baywright::geometry {

/// A circle about `centre` in the plane square to the unit `axis`.
struct Rim {
  Vec3 centre;
  Vec3 axis;
  double radius;
};

/// Among the unit d square to the unit `edge` with d . axis >= 0: the local maximum of
///     (point - centre) . d - radius * |d less its part along axis|,
/// which is where a line along `edge` through `point` and the rim are nearest, or where the line leaves the rim's
/// cylinder by the shortest way. There is at most one such maximum; none when the line lies too far inside.
[[nodiscard]] std::optional<Vec3> rim_against_edge(const Rim& rim, const Vec3& point, const Vec3& edge);

/// Unit d near `near` at which
///     (b.centre - a.centre) . d - a.radius * |d less its part along a.axis| - the same of b
/// is stationary: from `near` uphill, and by the points of the rims where d says too little about them. Some may be
/// `near` itself; the caller judges them.
[[nodiscard]] std::array<Vec3, 4> rim_against_rim(const Rim& a, const Rim& b, const Vec3& near);

}  // namespace baywright::geometry
