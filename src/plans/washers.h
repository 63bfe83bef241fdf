#pragma once
// Whether washers belong under the heads of the screws of a place, and what lies between a part and what it is screwed
// to: one rule for template, shopping list and steps.
#include "build/build.h"
#include "fit/seating.h"

#include <string>

namespace baywright::plans {

/// Over holes wider than the medium series of ISO 273: common practice, no source. `widest`: mm.
[[nodiscard]] bool wide_for(const std::string& thread, double widest);

/// Would not hold: under no usual length, or it would go too deep.
enum class Washers { none, wanted, would_not_hold };

struct UnderHeads {
  Washers washers = Washers::none;
  double longer = 0.0;  // mm over the build's: of the screw that holds with them, where one has to be
};

/// Of a bay with `fixing` and that thread. `longer`: mm by which the screws to buy are longer than those of the build;
/// where these would not hold with a washer, the next usual length that does and does not go too deep.
/// A stand-off's stud holds no less for a washer on the sheet's other side.
[[nodiscard]] UnderHeads washers_under_heads(const build::Bay& bay, const std::string& thread,
                                             const fit::Seating& seating, double longer);

/// mm across that a spacer or stand-off over such a hole should have: 1 mm of seat round it; common practice, no
/// source.
[[nodiscard]] double seat_asked(double hole);

/// Whether the usual one, two screw diameters wide, has less over that hole; common practice, no source.
[[nodiscard]] bool wants_wide_spacer(const std::string& thread, double hole);

/// How many plain washers of that thread come to the length of the `spacers` of a part, 1 or 2; empty: of M3, the size
/// that most cases are screwed with (common practice, no source). 0: they are spacers, as all are that are sold so
/// long, unless their source is the washers'.
[[nodiscard]] int washers_between(const tolerance::Dimension& spacers, const std::string& thread);

}  // namespace baywright::plans
