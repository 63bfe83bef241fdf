#pragma once
// A panel's holes on paper, 1:1, to be laid on the panel and drilled through, with what has to be known beside it.
#include "output/sheet.h"
#include "plans/drilling.h"

#include <string>
#include <variant>
#include <vector>

namespace baywright::output {

struct DrillPaper {
  double width = 210.0;  // mm, upright
  double height = 297.0;
};
inline constexpr DrillPaper a4{210.0, 297.0};
inline constexpr DrillPaper letter{215.9, 279.4};

/// Template sheets, then sheets with the hole table, the ways of drilling and the order. Each template sheet has two
/// bars to check the scale by; a panel that is larger than a sheet is shared out over several that overlap, with
/// crosses to lay them on each other. `mirrored`: seen from the other side; distances are from the same two edges.
/// Refused, in words: more than 60 template sheets.
[[nodiscard]] std::variant<std::vector<Sheet>, std::string> drill_sheets(const plans::Drilling& drilling,
                                                                         const std::string& title,
                                                                         const DrillPaper& paper_size, bool mirrored);

/// The panel alone, on a sheet of its own size, for DXF: groups outline, holes, centres, datum, notes.
[[nodiscard]] Sheet drill_cut(const plans::Drilling& drilling, const std::string& title, bool mirrored);

}  // namespace baywright::output
