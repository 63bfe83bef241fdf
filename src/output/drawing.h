#pragma once
// One seating on a sheet of A4: the answer, a section, a detail of the place that decides, a plan, and the stack.
#include "build/build.h"
#include "fit/seated.h"
#include "fit/seating.h"
#include "output/sheet.h"

namespace baywright::output {

/// All three of one build, drive and place. `seated` may hold no elements of its own, where the drive cannot be put at
/// the place: then the sheet gives the answers and what each side offers in words. Limits are called by the build's
/// method.
[[nodiscard]] Sheet draw_seating(const build::Build& build, const fit::Seated& seated, const fit::Seating& seating);

}  // namespace baywright::output
