#pragma once
// Writes a sheet as DXF, for CAD and for machines that cut.
#include "output/sheet.h"

#include <string>

namespace baywright::output {

/// Release 2000 (AC1015), plain text, units of one mm ($INSUNITS 4), x to the right and y up from the sheet's lower
/// left corner, to 1e-9 mm. Each thing lies on the layer of the group that holds it: "scale check bar" on
/// SCALE_CHECK_BAR, what no named group holds on SHEET. Lines, circles, patterns and letters only: a fill hides nothing
/// here, so what is white (halos, masks) is left out, and of filled areas those with three corners (arrows) are drawn.
/// What a clip hides is cut off; circles and letters go by their middle. What has a coordinate that is no number is
/// left out. The same bytes for the same sheet.
[[nodiscard]] std::string to_dxf(const Sheet& sheet);

}  // namespace baywright::output
