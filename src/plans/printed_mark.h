#pragma once
// A length written on a part to print.
#include "geometry/flat_faces.h"
#include "plans/printable.h"

namespace baywright::plans {

/// The part with its length sunk into it, of a guide the diameter of its holes: figures 5.4 mm high of strokes 0.8
/// broad, 0.4 deep or, where less than 0.4 would be left under them, right through. On a guide where it is free; a
/// spacer, shim or stand-off gets a tab beside itself, as high as it is itself and 2 mm at most. So no face that seats
/// anything changes. Refused, in words: a plate, bracket or adapter; a guide without room.
[[nodiscard]] Made marked(Printable part);

/// The outline of a marked part, its tab included.
[[nodiscard]] Outline marked_outline(const Printable& part);

/// What a marked part is printed as.
[[nodiscard]] geometry::FlatFaces marked_faces(const Printable& part);

}  // namespace baywright::plans
