#pragma once
// Drivers for cross-recessed screws and what holds a nut: how much room each takes. All lengths mm. No tool standard
// was at hand, so the blades are from memory or a trade page and the handles are habit; each row says which.
#include "tolerance/dimension.h"

#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace baywright::standards::tools {

using tolerance::Dimension;

struct Driver {
  std::string_view kind;    // "ordinary" "long" "stubby" "low": a bit in a low ratchet
  std::string_view recess;  // "PH0" "PH1" "PH2"
  Dimension shaft;          // diameter; of a low one the bit's, across its corners
  Dimension shaft_length;   // from the screw's head to the handle
  Dimension handle;         // diameter; of a low one that of the ratchet's head
  Dimension handle_length;
  std::optional<Dimension> lever;  // low: from the axis to the lever's end
};
/// By recess; of one recess in the order in which one tries them.
[[nodiscard]] std::span<const Driver> drivers();

/// The recess of a pan head screw of that thread: ISO 7045, as the table of heads has it; of the inch threads as a
/// public chart gives it. Empty: no such thread.
[[nodiscard]] std::string_view recess(std::string_view thread);

/// Room at the end of a screw for the hand that holds its nut, round the screw's axis from the nut's seat outward.
struct Holder {
  std::string_view name;  // "fingers" "flat spanner"
  Dimension across;       // of two finger tips, or of the spanner's head
  Dimension height;
  std::optional<Dimension> grip;  // spanner: from the axis to its end
};
[[nodiscard]] std::span<const Holder> holders();

[[nodiscard]] const Dimension& lever_width();  // of a ratchet's lever or a spanner
[[nodiscard]] double lever_swing();            // degrees that it has to turn each time: practice

/// Every row of this family, for the list of sources.
[[nodiscard]] std::vector<Dimension> rows();

}  // namespace baywright::standards::tools
