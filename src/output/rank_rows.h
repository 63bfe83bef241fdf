#pragma once
// A shortlist in order for other programs: a table (CSV) and JSON, as models/rank.schema.json says.
#include "output/rank_text.h"

#include <string>

namespace baywright::output {

/// Commas and points whatever the locale; a figure that is missing is an empty field.
[[nodiscard]] std::string rank_csv(const plans::Buying& rank);

/// A figure that is missing is null.
[[nodiscard]] std::string rank_json(const plans::Buying& rank);

}  // namespace baywright::output
