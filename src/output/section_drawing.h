#pragma once
// The section through the drive, and the detail of the place that decides.
#include "output/page.h"
#include "output/views.h"

namespace baywright::output {

/// `heights`: with them beside it. Returns the y below all that it drew.
double draw_section(const Subject& s, const SectionView& section, const Layout& layout, bool heights, Group& all);

/// In `region`, with its figures below it, or to its right where `figures_beside`. Wants a gap that decides. Returns
/// its scale, 0 where there is no room for one or none is needed.
double draw_detail(const Subject& s, const SectionView& section, const Layout& layout, const Box& region,
                   bool figures_beside, Group& all);

}  // namespace baywright::output
