#pragma once
// How large a pattern's holes have to be that every screw enters whatever the limits do, off along both axes at once.
#include "build/build.h"
#include "fit/fixing.h"
#include "geometry/vectors.h"
#include "tolerance/dimension.h"

#include <vector>

namespace baywright::fit {

/// A drive's holes against the pattern: nominal differences, and the dimensions that move them.
struct HoleMatch {
  std::vector<geometry::Vec2> at;          // the pattern's, along and to the right, mm
  std::vector<geometry::Vec2> off;         // hole less screw at nominal, mm
  std::vector<tolerance::Dimension> wide;  // by hole: its diameter
  std::vector<std::vector<int>> along;     // by hole: indices of `dimensions`
  std::vector<std::vector<int>> across;
  std::vector<tolerance::Dimension> dimensions;  // each that has limits, once
};

/// Of a bay with `fixing` and the holes that the drive meets.
[[nodiscard]] HoleMatch hole_match(const build::Drive& drive, const build::Bay& bay, const std::vector<UsedHole>& used);

/// mm, diameter: where the drive's own holes may be, and by how much the two patterns differ.
[[nodiscard]] double drive_zone(const HoleMatch& match);

/// mm, diameter: of the circle through the corners of a square of ± limits.
[[nodiscard]] double position_zone(const tolerance::Dimension& position);

/// mm, nominal: screw and both zones, the fixed fastener of ASME Y14.5 (from memory: no text of the standard was at
/// hand), and `under`, by which a hole may come out smaller than asked for.
[[nodiscard]] double sure_hole(const HoleMatch& match, double screw, const tolerance::Dimension& position,
                               double under);

}  // namespace baywright::fit
