#pragma once
// The section through the drive, and the detail of the place that decides.
#include "output/page.h"
#include "output/views.h"

namespace baywright::output {

/// Returns the y below all that it drew.
double draw_section(const Subject& s, const SectionView& section, const Layout& layout, Group& all);

/// Below y = `top`, right of the views. Wants a gap that decides. Returns its scale, 0 where there is no room for one
/// or none is needed.
double draw_detail(const Subject& s, const SectionView& section, const Layout& layout, double top, Group& all);

}  // namespace baywright::output
