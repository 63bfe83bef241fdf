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

/// A note for each sheet whose screws go in less than is asked.
[[nodiscard]] std::vector<Finding> part_screws(const build::Build& build);

}  // namespace baywright::fit
