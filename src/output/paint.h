#pragma once
// Sheets and groups drawn into pixels or onto PDF pages, with the font that the program was built with.
#include "output/sheet.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace baywright::output {

// What has a coordinate that is no number, or one beyond a million of its units, is left out. Colours are "#RRGGBB".

/// Why nothing can be drawn here: the font that is missing, and the package that brings it. None: all is well.
[[nodiscard]] std::optional<std::string> font_fault();

/// Draws the group over a picture: four bytes a pixel (red, green, blue, 255), rows from the top. The group's units are
/// pixels. Returns why it could not be done; none: done.
[[nodiscard]] std::optional<std::string> paint_over(std::vector<std::uint8_t>& rgba, int width, int height,
                                                    const Group& group);

/// A PNG file of the picture. The same bytes for the same picture. Empty where the sides are not what the bytes make,
/// or beyond 32767 pixels.
[[nodiscard]] std::string to_png(const std::vector<std::uint8_t>& rgba, int width, int height);

/// A sheet as a picture of so many pixels a millimetre. Empty with a font fault, and with a side that is less than one
/// pixel or more than 32767.
[[nodiscard]] std::string to_png(const Sheet& sheet, double pixels_a_mm);

/// One page a sheet, each true to scale; the title is the first sheet's. The same bytes for the same sheets. Empty with
/// a font fault or without sheets.
[[nodiscard]] std::string to_pdf(const std::vector<Sheet>& sheets);

}  // namespace baywright::output
