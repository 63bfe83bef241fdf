#pragma once
// The screws that hold a removable sheet of the machine: how far they go into their thread.
#include "build/build.h"
#include "fit/finding.h"

#include <string>
#include <vector>

namespace baywright::fit {

/// Beyond the sheet and its spacers at their longest, mm; `screw` long under its head. Below 0 it does not pass them.
[[nodiscard]] double goes_in(const build::HostPart& sheet, double screw);

/// What rules of thumb ask of a thread in steel, mm: one diameter.
[[nodiscard]] double asked_of_thread(const std::string& thread);

/// The shortest screw that goes in so far, mm, if its thread is so deep; 0: those that the sheet names do, or it names
/// none.
[[nodiscard]] double longer_screw(const build::HostPart& sheet);

/// A note for each sheet whose screws go in less than is asked.
[[nodiscard]] std::vector<Finding> part_screws(const build::Build& build);

}  // namespace baywright::fit
