#pragma once
// Closed loops made into regions. Internal to the room.
#include "geometry/section.h"

#include <vector>

namespace baywright::geometry {

/// Too thin to be an area: less than `thin` mm wide.
[[nodiscard]] bool is_empty(const Outline& outline, double thin);

void turn_to(Outline& outline, bool counter_clockwise);

[[nodiscard]] Outline without_repeats(const Outline& outline);

/// Without corners on the line between their neighbours, spikes among them.
[[nodiscard]] Outline without_straight_corners(const Outline& outline);

/// Counter-clockwise loops with the clockwise ones that are holes in them, each in the smallest that holds it.
[[nodiscard]] std::vector<Region> nested(std::vector<Outline> loops);

}  // namespace baywright::geometry
