#pragma once
// A sheet to take to the machine: where to put the caliper, and boxes for what it reads.
#include "build/build.h"
#include "fit/seated.h"
#include "fit/seating.h"
#include "output/sheet.h"
#include "plans/measure.h"

#include <vector>

namespace baywright::output {

/// One A4 sheet, landscape: the seating's section with the faces numbered, and a line for each of `readings`, as many
/// as there is room for, in their order. `seated` and `seating` are of this build.
[[nodiscard]] Sheet draw_measure_sheet(const build::Build& build, const fit::Seated& seated,
                                       const fit::Seating& seating, const std::vector<plans::Reading>& readings);

}  // namespace baywright::output
