#pragma once
// A part's holes, dimensions and sources as tables on a sheet.
#include "output/sheet.h"
#include "parts/part.h"

namespace baywright::output {

/// From the top of the box down: all holes, then of the dimensions and their numbered sources what has room, and a line
/// that counts what has none.
void draw_part_tables(const parts::Part& part, const Box& box, Group& all);

}  // namespace baywright::output
