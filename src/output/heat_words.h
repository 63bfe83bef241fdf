#pragma once
// Every word that people read about heat and power, in English.
#include "thermal/heat.h"

#include <string>
#include <vector>

namespace baywright::output {

/// A temperature always comes as an interval, with what it was worked out for.
[[nodiscard]] std::vector<std::string> say(const thermal::Heat& heat);

/// Where the temperatures come from, for the end of an answer.
[[nodiscard]] std::string heat_basis(const thermal::Surroundings& around);

[[nodiscard]] std::string word(
    thermal::Outlook outlook);  // "stays below", "may throttle", "likely throttles", "no limit"

}  // namespace baywright::output
