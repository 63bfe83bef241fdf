#pragma once
// On which side of a line a point lies, without rounding. Internal to the room.
#include "geometry/vectors.h"

namespace baywright::geometry {

/// +1: a, b, c turn left (counter-clockwise). -1: right. 0: exactly on one line. Correct for every input whose products
/// neither overflow nor underflow: coordinates up to `largest_mm`, and none but zero below 1e-130 mm.
[[nodiscard]] int orientation(const Vec2& a, const Vec2& b, const Vec2& c);

}  // namespace baywright::geometry
