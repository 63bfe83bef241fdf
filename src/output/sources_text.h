#pragma once
// Every dimension of the product with where it comes from, on a terminal.
#include "standards/all_rows.h"

#include <span>
#include <string>

namespace baywright::output {

/// Family by family, source by source; at the end how many there are, and how each is known.
[[nodiscard]] std::string sources_text(std::span<const standards::Rows> families);

}  // namespace baywright::output
