#pragma once
// Round holes of printed parts.
#include "geometry/solid.h"
#include "standards/general_tolerances.h"

namespace baywright::plans {

using geometry::Outline;
using geometry::Vec2;

struct PrintedHole {
  Vec2 at{0.0};
  double asked = 0.0;  // mm, diameter
  double drawn = 0.0;  // mm: with what the way of printing shrinks holes by; never below `asked`
};

[[nodiscard]] PrintedHole hole(const Vec2& at, double diameter, const standards::general_tolerances::Process& process);

/// How far a polygon is off its circle at most, mm.
inline constexpr double printed_chord_mm = 0.02;

/// Corners on the circle, from angle 0 on, counter-clockwise; `sides_of` are enough for `printed_chord_mm`, within the
/// circle or round it.
[[nodiscard]] Outline ring(const Vec2& centre, double radius, int sides);
[[nodiscard]] int sides_of(double radius);

/// As drawn: a polygon round its circle, so none is smaller. Its diameter must be above 0 and finite.
[[nodiscard]] Outline round_a_hole(const PrintedHole& hole);

}  // namespace baywright::plans
