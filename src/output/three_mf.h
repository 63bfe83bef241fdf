#pragma once
// Writes triangles as a 3MF file: what STL cannot say, the unit, it can.
#include "output/triangle_corners.h"

#include <string>
#include <variant>

namespace baywright::output {

struct Archived {
  std::string bytes;
};

/// One object of the core specification, in millimetres, corners shared; triangles of which two corners fall together
/// are left out, which the specification forbids. The same bytes for the same triangles. A failure (no memory) in
/// words.
[[nodiscard]] std::variant<Archived, std::string> to_3mf(Corners corners);

}  // namespace baywright::output
