#pragma once
// What the DXF and SVG files of a build hold that was passed over.
#include "build/build.h"
#include "fit/finding.h"

#include <vector>

namespace baywright::fit {

/// A note for each file in which something was not understood.
[[nodiscard]] std::vector<Finding> drawing_notes(const build::Build& build);

}  // namespace baywright::fit
