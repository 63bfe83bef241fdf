#pragma once
// What two solids share: where they run into each other, for pictures and for filing. How deep: `gap`.
#include "geometry/section.h"

#include <optional>

namespace baywright::geometry {

/// The area that the cuts of both share in the view's plane, as `section` cuts, on a grid of `thinnest_mm`. What is no
/// wider than that is left out, so solids that touch share none; nor does a mesh without an inside share any.
[[nodiscard]] std::vector<Region> overlap(const Placed& a, const Placed& b, const View& view);

/// The tightest axis-aligned world box of what both hold. None where they share no inside: apart, touching, or one of
/// them a mesh without one. Boxes, prisms and meshes: to `thinnest_mm`, as long as no face meets an edge at less than
/// a degree. Cylinders are taken for prisms with the corners of a drawn circle, so the box may be too small by
/// `drawn_chord_mm`, and by more where a cap or a side of the other slants along them.
[[nodiscard]] std::optional<Bounds> overlap_box(const Placed& a, const Placed& b);

}  // namespace baywright::geometry
