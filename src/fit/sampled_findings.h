#pragma once
// Sampling the gaps of a seating.
#include "fit/sampling.h"
#include "fit/seated.h"
#include "tolerance/proportion.h"

#include <optional>
#include <span>
#include <vector>

namespace baywright::fit {

/// Draws the builds of a seating whose findings were made at worst case, and gives each gap its sampled limits, verdict
/// and share. A gap with an open side keeps its own. The result is the share of builds in which all of it fits, with
/// its 95 % interval; none where an open side or something that is no gap leaves it open.
struct JointShare {
  double share = 0.0;
  tolerance::Interval sure;
};
[[nodiscard]] std::optional<JointShare> sample_findings(std::vector<Finding>& findings, const Seated& seated,
                                                        const build::Drive& drive, const build::Place& place,
                                                        std::span<const Near> near, const Options& options);

}  // namespace baywright::fit
