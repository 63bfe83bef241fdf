#pragma once
// How near the machine's own parts come to each other, within the limits of what places them.
#include "build/build.h"
#include "fit/finding.h"
#include "fit/host.h"
#include "tolerance/stack.h"

#include <vector>

namespace baywright::fit {

/// The least gap between two of the machine's elements at any values within the limits, mm: below 0 they run into each
/// other. Limits are added up as `method` has it, where builds are sampled by worst case. -infinity where a limit is
/// open.
[[nodiscard]] double least_gap(const Host& host, int a, int b, tolerance::Method method);

/// Parts of the machine that run into each other, or may within their limits: a measure is wrong somewhere, or the two
/// have to be fitted to each other. Notes: they change no verdict. What `stands on` another touches it and is left out
/// unless it runs into it; so is what only an open limit could bring together.
[[nodiscard]] std::vector<Finding> host_overlaps(const Host& host, const build::Build& build, tolerance::Method method);

}  // namespace baywright::fit
