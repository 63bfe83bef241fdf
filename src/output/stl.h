#pragma once
// Writes triangles as a binary STL file.
#include "output/triangle_corners.h"

#include <string>

namespace baywright::output {

/// 80 bytes of heading, the count, then 50 bytes a triangle, little-endian, with unit normals (zero where a triangle
/// has no area). STL has no unit: the figures are mm, as the heading says.
[[nodiscard]] std::string to_stl(Corners corners);

}  // namespace baywright::output
