#pragma once
// What would make a drive fit, for people and as JSON (models/plans.schema.json).
#include "plans/plan.h"
#include "plans/solve.h"

#include <optional>
#include <string>

namespace baywright::output {

/// `file` is named where the text says how to go on. `tallest`: of a seating that fits already.
[[nodiscard]] std::string plans_text(const plans::Search& search, const std::optional<plans::Tallest>& tallest,
                                     const std::string& file, bool colour);
/// Lengths in mm, rounded at 1e-9; a room without end is null.
[[nodiscard]] std::string plans_json(const plans::Search& search, const std::optional<plans::Tallest>& tallest);

}  // namespace baywright::output
