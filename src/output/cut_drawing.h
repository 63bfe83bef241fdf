#pragma once
// Cut parts with their hatches, and the gap that decides where a section shows it.
#include "output/page.h"
#include "output/views.h"

namespace baywright::output {

/// What a section sees: hatched cuts over plain outlines of what lies behind. Parts that lie side by side differ in
/// hatch.
void draw_seen(const Subject& s, Group& group, const std::vector<Seen>& seen, const geometry::View& view,
               const Placement& placement);

void draw_edges(Group& group, const std::vector<std::vector<Vec2>>& edges, const Placement& placement, const Pen& pen);

/// The areas that both parts claim.
void draw_overlap(Group& group, const Spot& spot, const fit::Finding& finding, const Placement& placement);

/// The overlap as an area, the gap as a pair of arrows on its faces.
void draw_spot(Group& group, const Spot& spot, const fit::Finding& finding, const Placement& placement);

inline constexpr const char* drive_fill = "#E9ECEF";

}  // namespace baywright::output
