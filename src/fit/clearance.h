#pragma once
// Every pair of solids but the two features of a mate, against the clearance asked for.
#include "fit/check.h"
#include "fit/limits.h"
#include "fit/sampling.h"
#include "fit/seated.h"

#include <cstddef>
#include <vector>

namespace baywright::fit {

/// Of the gaps that are sure to be enough no more than so many are reported, the closest.
inline constexpr std::size_t shown_clear = 12;

/// One finding for each pair of parts that comes near, its closest solids deciding. Every pair that any values within
/// the limits could bring closer than asked is measured. Pairs inside the drive are reported only where they do not
/// fit. Where builds are sampled these are the worst case, and `near_pairs` gets every pair that was measured.
[[nodiscard]] std::vector<Finding> clearances(const Host& host, const build::Build& build, const Seated& seated,
                                              const build::Drive& drive, const Options& options,
                                              std::vector<Near>* near_pairs = nullptr);

/// A gap between two elements as a finding: figures, verdict against what is asked, chain, share.
[[nodiscard]] Finding gap_finding(const Scene& scene, const Element& a, const Element& b, const GapLimits& found,
                                  double asked, tolerance::Method method);

}  // namespace baywright::fit
