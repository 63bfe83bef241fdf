#pragma once
// How long something may be before it no longer fits: solved through the chain, not searched by hand.
#include "fit/check.h"

#include <optional>

namespace baywright::plans {

struct Tallest {
  double height = 0.0;    // mm, nominal, over all, of what the drive wears outermost (its heatsink), at most
  double marginal = 0.0;  // mm: beyond this it never fits; between the two only some builds do. Infinite where a limit
                          // that is not known leaves that open
  double now = 0.0;       // mm: as it is
  std::string against;    // what it would touch; "screw": no driver would come to it
};

/// The tallest heatsink with the same foot and the same limits of its height that fits (`height`), worst case or root
/// sum square as the options or the build say (sampled: worst case), with ways in and tools. Checked: it fits at
/// `height`, and not a millionth above. None where the drive wears no heatsink, or one whose form is a model (its size
/// is fixed); where something else than its height keeps it out; where nothing is over it. A "?" distance counts as it
/// stands in `build`.
[[nodiscard]] std::optional<Tallest> tallest_heatsink(const build::Build& build, const build::Drive& drive, int place,
                                                      const fit::Options& options);

}  // namespace baywright::plans
