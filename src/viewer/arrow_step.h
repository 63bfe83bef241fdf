#pragma once
// What the arrows do to a length or a place.
#include "geometry/vectors.h"
#include "viewer/ui.h"

namespace baywright::viewer {

/// mm: 0.1, with Shift 1, with Alt 0.01; x to the right, y up. Uses the key up; 0 where none was pressed.
[[nodiscard]] geometry::Vec2 arrow_step(Ui& ui);

}  // namespace baywright::viewer
