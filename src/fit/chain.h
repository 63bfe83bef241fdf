#pragma once
// Ordering the dimensions behind a gap.
#include "fit/finding.h"

#include <vector>

namespace baywright::fit {

/// Largest share of the variation first; a dimension open on one side counts by its other side.
void sort_by_weight(std::vector<ChainLink>& chain);

}  // namespace baywright::fit
