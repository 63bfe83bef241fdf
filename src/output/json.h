#pragma once
// `check --json`: stable, as models/check.schema.json says.
#include "fit/seating.h"

#include <string>

namespace baywright::output {

/// Lengths in mm, rounded at 1e-9; an open limit is null.
/// `together`: null where it was not asked for.
[[nodiscard]] std::string check_json(const fit::Check& check, const fit::Together* together = nullptr);

}  // namespace baywright::output
