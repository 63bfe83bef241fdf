#pragma once
// Areas joined and shared, by the polygon library (Vatti's sweep over points on a grid). Internal to the room.
#include "geometry/section.h"

#include <vector>

namespace baywright::geometry {

/// The area that closed loops, which may cross and overlap, run round more often counter-clockwise than clockwise. On a
/// grid of `thinnest_mm`; what is no wider is left out.
[[nodiscard]] std::vector<Region> joined(const std::vector<Outline>& loops);

/// The area that two sets of regions share, on the same grid.
[[nodiscard]] std::vector<Region> shared(const std::vector<Region>& a, const std::vector<Region>& b);

}  // namespace baywright::geometry
