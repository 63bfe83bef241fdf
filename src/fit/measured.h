#pragma once
// A length that is no gap between solids against what is asked of it. Inside the room.
#include "fit/finding.h"
#include "tolerance/stack.h"

#include <vector>

namespace baywright::fit {

/// The finding with figures, verdict, share and chain of a length of that nominal value, mm.
[[nodiscard]] Finding measured(Finding out, double nominal, const std::vector<ChainLink>& chain, double asked,
                               tolerance::Method method);

}  // namespace baywright::fit
