#pragma once
// What to measure, in words.
#include "plans/measure.h"

#include <string>

namespace baywright::output {

/// What to do about a marginal seating: "Measure `tray under board` to ±0.10 (now 9.10 ±0.20). If it reads as now, the
/// drive then fits. ..."
[[nodiscard]] std::string say(const plans::Settling& settling);

/// What a reading tells: "fits from 9.32 up; does not at 9.02 or less". Empty where one alone tells nothing.
[[nodiscard]] std::string say_thresholds(const plans::Reading& reading);

/// How closely a length has to be read: "±0.10".
[[nodiscard]] std::string closeness(const plans::Reading& reading);

}  // namespace baywright::output
