#pragma once
// Brackets: an L that stands a cased drive on a panel, screwed into the holes of its side.
#include "geometry/flat_faces.h"
#include "plans/printable.h"

#include <string_view>

namespace baywright::plans {

inline constexpr std::string_view bracket_word = "bracket";

/// `asked`: "2.5in", "3.5in" or a bay or panel of the build that takes one of them; then, each with its value behind
/// it, in any order: "thickness" (1 to 10 mm; else 2), "raised" (the drive's base over the panel; else what the place
/// has, else as much as the rules below want), "foot" (its length; else as much as they want), "screw" (the thread of
/// its holes in the foot; else the drive's own) or "insert" (of heat-set inserts there). Holes at the side are where
/// the drive's standard has them. Their middles are two diameters from each edge, as those in the foot, which have an
/// insert's wall instead; screw heads lie flat, clear of the bend. `uncut` where holes come too close to the bend for
/// sheet that is bent, or the sheet is thicker than 3 mm. Refused, in words: what contradicts that.
[[nodiscard]] Made bracket(const build::Build& build, const std::string& asked,
                           const standards::general_tolerances::Process& process);

/// What a bracket is printed as: standing on end, the foot along x, the upright along y.
[[nodiscard]] geometry::FlatFaces bracket_faces(const Printable& part);

}  // namespace baywright::plans
