#pragma once
// The plan: the drive in its slot seen from above its component face, with its main dimensions.
#include "output/page.h"

namespace baywright::output {

/// `detailed`: the place that decides is called A, as in the detail.
void draw_plan(const Subject& s, const geometry::View& view, const Window& window, const Layout& layout, bool detailed,
               Group& all);

}  // namespace baywright::output
