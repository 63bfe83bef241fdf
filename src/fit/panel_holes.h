#pragma once
// Whether a panel has sheet where its holes are: off it, in an opening, over an edge, into each other or a bend.
#include "build/build.h"
#include "fit/finding.h"
#include "fit/scene.h"
#include "tolerance/stack.h"

#include <vector>

namespace baywright::fit {

/// Of one place of the build: of each fault the hole that has it worst, and how many have it. None where the place is
/// no panel. `frame` is the place's, for where they are.
[[nodiscard]] std::vector<Finding> panel_holes(const build::Build& build, const build::Drive& drive, int place,
                                               const Frame& frame, tolerance::Method method);

}  // namespace baywright::fit
