#pragma once
// What people must know of the model files in a build: how they were read, and what is wrong with their surfaces.
#include "build/build.h"
#include "fit/finding.h"

#include <vector>

namespace baywright::fit {

/// Notes, at most three a model: a unit or an axis that was guessed, what was mended, what leaves it without an inside.
/// A part that several drives wear is told once.
[[nodiscard]] std::vector<Finding> mesh_notes(const build::Build& build);

}  // namespace baywright::fit
