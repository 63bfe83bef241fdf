#pragma once
// The holes of a bay or panel as a table, and in its plan.
#include "output/page.h"

namespace baywright::output {

/// How much room the table takes, mm; 0 where the place has no holes.
[[nodiscard]] double hole_table_height(const Subject& s);

/// From `at` down, no wider than `width`: hole, along, across or up, diameter, and which hole of the drive it meets.
void draw_hole_table(const Subject& s, const Vec2& at, double width, Group& all);

/// Holes with their centre marks and numbers; holes of side walls as centre lines across the walls.
void draw_holes(const Subject& s, Group& group, const geometry::View& view, const Placement& placement);

}  // namespace baywright::output
