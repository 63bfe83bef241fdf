#pragma once
// A part on a sheet of A4: three views in first angle, its largest sizes with their limits, its holes, all its
// dimensions, and where they come from.
#include "geometry/solid.h"
#include "output/sheet.h"
#include "parts/part.h"

#include <variant>

namespace baywright::output {

/// At nominal sizes, at the largest usual scale that has room (20:1, 10:1, 5:1 ... 1:2, 1:5 ...). Every hole is in the
/// table; of dimensions and sources what has room, with a line that says where the rest is. Refused: a part without a
/// solid, or one that is none at its nominal sizes.
[[nodiscard]] std::variant<Sheet, geometry::Refusal> draw_part(const parts::Part& part);

}  // namespace baywright::output
