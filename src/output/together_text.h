#pragma once
// Several drives at once, for people at a terminal.
#include "fit/seating.h"

#include <string>

namespace baywright::output {

/// One place for each drive, what it costs the others, and which drive is left and why.
[[nodiscard]] std::string together_text(const fit::Check& check, const fit::Together& together);

}  // namespace baywright::output
