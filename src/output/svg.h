#pragma once
// Writes a sheet as SVG that prints true to scale.
#include "output/sheet.h"

#include <string>

namespace baywright::output {

/// Width and height in mm, user units of one mm, so that 1:1 on the sheet is 1:1 on paper at 100 %. Text stays text.
/// The same bytes for the same sheet. Coordinates are written to a thousandth of a mm.
[[nodiscard]] std::string to_svg(const Sheet& sheet);

}  // namespace baywright::output
