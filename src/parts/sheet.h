#pragma once
// Parts that are a flat sheet.
#include "parts/part.h"

namespace baywright::parts {

/// The part's size along an axis (0 x, 1 y, 2 z), mm, nominal.
[[nodiscard]] double size_along(const Part& part, int axis);

/// Beyond it is no sheet that is filed by hand or stands on spacers; common practice, no source.
inline constexpr double thickest_sheet = 3.0;  // mm

/// Whether a part is a sheet along that axis: one flat solid, no thicker than sheet metal.
[[nodiscard]] bool is_sheet(const Part& part, int axis);

}  // namespace baywright::parts
