#pragma once
// An outline with holes as a set of convex outlines. Internal to the room.
#include "geometry/solid.h"

#include <vector>

namespace baywright::geometry {

/// Convex, counter-clockwise parts whose union is `outline` (counter-clockwise) less `holes` (clockwise) and whose
/// insides do not meet. Wants a base without `fault`. Corners that lie on a line to rounding are left out.
[[nodiscard]] std::vector<Outline> convex_parts(const Outline& outline, const std::vector<Outline>& holes);

}  // namespace baywright::geometry
