#pragma once
// Whether washers belong under the heads of the screws of a place: one rule for template, shopping list and steps.
#include "build/build.h"
#include "fit/seating.h"

#include <string>

namespace baywright::plans {

/// Over holes wider than the medium series of ISO 273: common practice, no source. `widest`: mm.
[[nodiscard]] bool wide_for(const std::string& thread, double widest);

enum class Washers { none, wanted, would_not_hold };

/// Of a bay with `fixing` and that thread. `longer`: mm by which the screws to buy are longer than those of the build.
/// A stand-off's stud holds no less for a washer on the sheet's other side.
[[nodiscard]] Washers washers_under_heads(const build::Bay& bay, const std::string& thread, const fit::Seating& seating,
                                          double longer);

}  // namespace baywright::plans
