#pragma once
// Sheets as files: the ending of the name says the format.
#include "output/sheet.h"

#include <optional>
#include <string>
#include <vector>

namespace baywright::cli {

/// Whether a file of that name can be written: it ends in .svg, .pdf, .png or .dxf, or is "-", standard output. Prints
/// what is wrong.
[[nodiscard]] bool names_a_drawing(const std::string& path);

/// Writes one sheet, whole or not at all; "-": SVG. Returns the exit status, and prints what went wrong.
[[nodiscard]] int write_sheet(const std::string& path, const output::Sheet& sheet);

/// Writes several: one PDF ("-" too), or one file a sheet, NAME-1.svg, NAME-2.svg and so on. Not DXF, which has no
/// pages. `written`: their names.
[[nodiscard]] int write_sheets(const std::string& path, const std::vector<output::Sheet>& sheets,
                               std::vector<std::string>& written);

}  // namespace baywright::cli
