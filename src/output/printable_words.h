#pragma once
// A part to print or cut: what is said of it, and its outline for machines that cut.
#include "output/sheet.h"
#include "plans/printable.h"

#include <string>

namespace baywright::output {

/// What was made, into which file, what was allowed, what to check, and cautions; lines of at most 100 columns. `cut`:
/// as a flat outline, else to print.
[[nodiscard]] std::string printable_text(const plans::Printable& part, const std::string& file, bool cut);

/// The part alone, on a sheet of its own size, for DXF: groups outline and holes, with the holes as asked for: nothing
/// is allowed for printing. Of a bent one the flat blank, with the middle of the bend in the group bend; of a marked
/// one the figures in the group mark.
[[nodiscard]] Sheet printable_cut(const plans::Printable& part);

}  // namespace baywright::output
