#pragma once
// Ways out of two cylinders that lead over both rims. Internal.
#include "geometry/search.h"

namespace baywright::geometry {

/// Offers every direction in which both rims are extreme and that could be the shortest way out, better than what the
/// search already holds. Bodies are discs.
void rims_against_rims(const Pair& pair, Search& search);

}  // namespace baywright::geometry
