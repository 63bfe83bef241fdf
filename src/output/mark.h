#pragma once
// What tells verdicts apart: a colour, a mark and a pattern, so that none of them is needed alone. Marks follow the
// three kinds of fit of ISO 286-1: two squares apart, meeting at a corner, or running into each other.
#include "fit/verdict.h"
#include "output/sheet.h"

#include <string>
#include <vector>

namespace baywright::output {

/// For marks, overlaps and gap arrows, never for text. On white and light greys; `dark`: on near black. At least 3:1
/// against the background for every kind of colour vision, and apart from each other in grey print.
[[nodiscard]] std::string colour(fit::Verdict verdict, bool dark = false);

/// The mark in the square of `size` mm whose upper left corner is `at`.
void draw_mark(Group& group, fit::Verdict verdict, const Vec2& at, double size, bool dark = false);

/// The area of a gap or an overlap, holes among its outlines: its pattern, its colour, and an outline that stands off
/// from what lies under it. The grid is for what two parts both claim; a gap that is too small is empty.
void draw_verdict_area(Group& group, fit::Verdict verdict, bool overlap, const std::vector<Outline>& outlines);

/// The strokes of the area's pattern within its outlines: pairs of ends for `hatch` and `grid`, points for `dots`. They
/// are laid out from the sheet's corner, so that areas side by side join.
struct Strokes {
  std::vector<std::pair<Vec2, Vec2>> lines;
  std::vector<Vec2> dots;
};
[[nodiscard]] Strokes strokes(const Area& area);

}  // namespace baywright::output
