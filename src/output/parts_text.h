#pragma once
// The library on a terminal.
#include "parts/catalogue.h"

#include <string>
#include <vector>

namespace baywright::output {

[[nodiscard]] std::string list_text(const std::vector<parts::Item>& items);

/// One part: each dimension with its limits, source, and how it is known.
[[nodiscard]] std::string part_text(const parts::Part& part);

}  // namespace baywright::output
