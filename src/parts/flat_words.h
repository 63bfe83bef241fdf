#pragma once
// What the readers of DXF and SVG share. Internal.
#include "parts/flat_drawing.h"

#include <string>
#include <string_view>

namespace baywright::parts {

[[noreturn]] void stop_flat(const std::string& file, int line, const std::string& what, const std::string& right);

/// Without blanks at either end.
[[nodiscard]] std::string_view trimmed(std::string_view text);

/// A finite figure within 1e6; none otherwise. Decimal point, exponent allowed.
[[nodiscard]] std::optional<double> flat_figure(std::string_view text);

void add_stroke(FlatDrawing& drawing, const Stroke& stroke, const std::string& file);

/// The arc from one point to another, `sweep` radians about their common centre; a straight line where that is nothing.
[[nodiscard]] Stroke arc_between(const geometry::Vec2& from, const geometry::Vec2& to, double sweep, int line);

}  // namespace baywright::parts
