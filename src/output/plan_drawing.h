#pragma once
// The drive from above or, for what stands up, from its side, with what holds it.
#include "output/page.h"
#include "output/views.h"

namespace baywright::output {

/// `detailed`: the place that decides has a detail of its own, A.
void draw_outer(const Subject& s, const OuterView& outer, const Layout& layout, bool detailed, Group& all);

}  // namespace baywright::output
