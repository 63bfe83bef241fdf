#pragma once
// What a plan asks for, what it costs and what it leaves to the user, in English.
#include "plans/plan.h"

#include <string>

namespace baywright::output {

/// "a heatsink at most 3.20 mm high in place of tall fin heatsink (4.00)": no sentence, for lists and joining.
[[nodiscard]] std::string say(const plans::Change& change);
/// The changes of a plan, joined.
[[nodiscard]] std::string say(const plans::Plan& plan);
/// "runs warmer", "money not known".
[[nodiscard]] std::string in_words(plans::Price price);
/// One sentence: what the file does not describe, and what to see to with that plan.
[[nodiscard]] std::string say(const plans::Plan& plan, plans::Caution caution);
/// What the seating comes to: "1.60 clear of tray, 1.02 in the worst case; 0.50 asked".
[[nodiscard]] std::string say_result(const plans::Plan& plan, tolerance::Method method);
/// One or two sentences: what cannot share the space, and which single length would have to change.
[[nodiscard]] std::string say(const plans::Contradiction& contradiction);

}  // namespace baywright::output
