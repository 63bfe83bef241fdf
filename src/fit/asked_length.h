#pragma once
// The one length that a build leaves open, "?": what it has to be so that a drive fits at a place.
#include "fit/check.h"

namespace baywright::fit {

/// Works out the range of the length in which every gap that hangs on it, screws and holes among them, is sure at the
/// limits that the length will have when it is measured, each end found to a millionth. Puts the length into `build`:
/// its least, else its most, or the middle where it has both, so that the caller can check the seating again. What else
/// decides (ways in, tools, gaps that do not hang on it) is for that check to say.
/// The finding says it; none where the build asks for nothing, or for a length that this drive at this place does not
/// see. `drive` and `place`: indices in the build; the drive must be one that can be put there (`seats`).
[[nodiscard]] std::optional<Finding> answer_asked(build::Build& build, std::size_t drive, std::size_t place,
                                                  const Options& options);

}  // namespace baywright::fit
