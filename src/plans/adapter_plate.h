#pragma once
// Adapter plates: flat, with the base holes of a drive and of the larger place that it goes into.
#include "plans/printable.h"

#include <string_view>

namespace baywright::plans {

inline constexpr std::string_view adapter_word = "adapter";

/// `asked`: "2.5in in 3.5in"; then, each with its value behind it, in any order: "thickness" (1 to 10 mm; else 3),
/// "width" (else that of a 3.5-inch drive), "screw" (the thread of its outer holes; else M3) or "insert" (of heat-set
/// inserts there). The smaller drive lies in the middle, connector end flush with the larger one's, as
/// parts::in_adapter has it. Each hole has the wall that printing wants. `uncut` where a middle is nearer to an edge
/// than two diameters. Refused, in words: what contradicts that.
[[nodiscard]] Made adapter_plate(const std::string& asked, const standards::general_tolerances::Process& process);

}  // namespace baywright::plans
