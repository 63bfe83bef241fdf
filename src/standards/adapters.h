#pragma once
// Generic adapters and cables. No standard gives them: every figure is common practice, and a measured one replaces it.
#include "tolerance/dimension.h"

#include <vector>

namespace baywright::standards::adapters {

using tolerance::Dimension;

[[nodiscard]] const Dimension& tray_sheet();      // of a bracket under a drive
[[nodiscard]] const Dimension& second_drive();    // base of the second drive over the bracket's, of two
[[nodiscard]] const Dimension& extender_strip();  // thickness of a length extender for M.2 cards
[[nodiscard]] const Dimension& carrier_up();      // first M.2 socket's centre line over the carrier's lower edge
[[nodiscard]] const Dimension& carrier_apart();   // two sockets, one over the other
[[nodiscard]] const Dimension& carrier_from();    // seating planes from the PCIe key, toward the far end
[[nodiscard]] const Dimension& carrier_column();  // the next two sockets, farther toward the far end
[[nodiscard]] const Dimension& carrier_length();  // of a carrier for four cards, bracket end to far end
[[nodiscard]] const Dimension& plug_over_base();  // top of a drive cable's plug over the drive's base

[[nodiscard]] std::vector<Dimension> rows();

}  // namespace baywright::standards::adapters
