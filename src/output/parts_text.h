#pragma once
// The library on a terminal.
#include "parts/catalogue.h"

#include <string>
#include <vector>

namespace baywright::output {

/// Ids and titles. Of more than a screen holds, those of one group (catalogue.h) take one line.
[[nodiscard]] std::string list_text(const std::vector<parts::Item>& items);

/// One part: each dimension with its limits, source, and how it is known; the figure of another source below it.
/// Sources that several share stand once, above them, where that is shorter.
[[nodiscard]] std::string part_text(const parts::Part& part);

}  // namespace baywright::output
