#pragma once
// Figures of seven straight strokes each, to sink into a printed face.
#include "geometry/solid.h"

#include <string>
#include <vector>

namespace baywright::plans {

/// Outlines of the strokes, counter-clockwise, 0.8 mm broad, 0.4 or more apart: so they may go right through, and
/// nothing falls out of a nought. `at`: the lower left corner of the text. Knows 0 to 9 and the point; else nothing.
[[nodiscard]] std::vector<geometry::Outline> stroke_figures(const std::string& text, const geometry::Vec2& at);

/// How much they cover, mm.
[[nodiscard]] geometry::Vec2 figures_size(const std::string& text);

}  // namespace baywright::plans
