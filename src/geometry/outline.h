#pragma once
// Flat outlines: what is refused, what they contain and share. Internal to the room.
#include "geometry/solid.h"

#include <optional>
#include <string>
#include <vector>

namespace baywright::geometry {

/// Shoelace area, mm²: positive where the outline runs counter-clockwise.
[[nodiscard]] double signed_area(const Outline& outline);

/// Whether p is of the inside or the boundary, without rounding; either sense.
[[nodiscard]] bool contains(const Outline& outline, const Vec2& p);

/// Whether the closed lines p-q and c-d share a point, without rounding.
[[nodiscard]] bool meet(const Vec2& p, const Vec2& q, const Vec2& c, const Vec2& d);

/// Why the base of a prism is refused (see `Solid::prism`), or nothing. Either sense, without closing points.
/// Sides that come within `thinnest_mm` of each other count as touching, as a wall that thin would be no wall.
[[nodiscard]] std::optional<std::string> fault(const Outline& outline, const std::vector<Outline>& holes);

/// What of `subject` lies in the convex, counter-clockwise `window` (at least 3 corners) or within `slack` mm (>= 0)
/// outside one of its sides. `subject` may be a convex outline in either sense, a line or a point. The result may
/// repeat points.
[[nodiscard]] Outline clipped(Outline subject, const Outline& window, double slack);

/// The counter-clockwise convex hull, no three corners on a line. Points on one line give its two ends, equal points
/// one, none none.
[[nodiscard]] Outline hull(std::vector<Vec2> points);

}  // namespace baywright::geometry
