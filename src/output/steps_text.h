#pragma once
// The mounting order for people at a bench, and as JSON. The text fits on one page.
#include "plans/mounting.h"

#include <string>
#include <vector>

namespace baywright::output {

/// What to do, as one sentence.
[[nodiscard]] std::string say(const plans::Step& step);
/// What to beware of, as one sentence.
[[nodiscard]] std::string say(plans::Hazard hazard);

/// What stands above the steps, a sentence each: which seating, how many steps, the tools; where there are none, why.
[[nodiscard]] std::vector<std::string> steps_heading(const plans::Mounting& mounting);

/// The steps alone, numbered, each with its cautions; empty where there are none.
[[nodiscard]] std::string steps_list(const plans::Mounting& mounting);

/// `others`: drives and places where one of the build fits, for when this one does not; "card in slot".
[[nodiscard]] std::string steps_text(const plans::Mounting& mounting, const std::vector<std::string>& others);
[[nodiscard]] std::string steps_json(const plans::Mounting& mounting);

}  // namespace baywright::output
