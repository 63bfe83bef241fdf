#pragma once
// One seating of a survey as one line of JSON: {"host":...,"drive":...,"place":...,"verdict":...,...}.
#include "fit/seating.h"

#include <cstdint>
#include <string>
#include <string_view>

namespace baywright::output {

/// The line's beginning, up to and with the place: what tells lines apart.
/// `made_from`: a number for all that the answer depends on.
[[nodiscard]] std::string survey_head(std::string_view host, std::string_view drive, std::uint64_t made_from);

/// The rest of it from the place on, with its line end. Does not name the drive, so that equal drives share it.
[[nodiscard]] std::string survey_tail(const fit::Seating& seating, tolerance::Method method);

/// How the rest begins for that place, and what it says of the verdict.
[[nodiscard]] std::string survey_place(std::string_view place);
[[nodiscard]] bool survey_says_fits(std::string_view line, std::size_t head);

}  // namespace baywright::output
