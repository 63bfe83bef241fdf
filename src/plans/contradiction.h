#pragma once
// Why nothing helps. Inside the room.
#include "plans/plan.h"

namespace baywright::plans {

/// The two parts that cannot share the space, and the smallest change of any one length of the build with which the
/// seating fits: worked out through the chain, then checked.
[[nodiscard]] Contradiction contradict(const build::Build& build, const fit::Seating& seating,
                                       const fit::Options& options);

}  // namespace baywright::plans
