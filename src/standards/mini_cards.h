#pragma once
// PCI Express mini cards, and mSATA cards, which have the same outline: what tells them apart is the bus and no length.
// Frame: x across with 0 at the notch's centre, the near side edge at negative x; y from the contact edge; z up from
// the component face. All lengths in mm. The standard itself (PCI Express Mini CEM 1.2) was not read.
#include "tolerance/dimension.h"

#include <vector>

namespace baywright::standards::mini_cards {

using tolerance::Dimension;

// Outline
[[nodiscard]] const Dimension& width();            // 30.00: 11.15 on the near side of the notch, 18.85 on the other
[[nodiscard]] const Dimension& edge_to_notch();    // 11.15: the card's near side edge from the notch's centre
[[nodiscard]] const Dimension& full_length();      // 50.95
[[nodiscard]] const Dimension& half_length();      // 26.80
[[nodiscard]] const Dimension& tongue_width();     // 25.60
[[nodiscard]] const Dimension& tongue_start();     // 8.95 from the notch's centre on the near side
[[nodiscard]] const Dimension& shoulder();         // y 3.30: full width starts
[[nodiscard]] const Dimension& shoulder_corner();  // radius 0.80
[[nodiscard]] const Dimension& notch_width();      // 1.50
[[nodiscard]] const Dimension& notch_depth();      // 4.00

// Screw holes, two on a card
[[nodiscard]] const Dimension& full_hole();       // y 48.05
[[nodiscard]] const Dimension& half_hole();       // y 23.90
[[nodiscard]] const Dimension& hole_from_edge();  // 2.90, from both side edges
[[nodiscard]] const Dimension& hole_diameter();   // 2.60
[[nodiscard]] const Dimension& pad();             // 5.80 square at the holes, bare to the card's corner

// Further bare areas on the bottom of cards for dual-use sockets, at both side edges, `pad` square
[[nodiscard]] const Dimension& full_bare_near();  // y 21.00: where the nearer one of a full card starts
[[nodiscard]] const Dimension& full_bare_far();   // y 30.45
[[nodiscard]] const Dimension& half_bare();       // y 6.10

// Socket
[[nodiscard]] const Dimension& posts_apart();      // 25.00, on y = 0
[[nodiscard]] const Dimension& large_post_hole();  // diameter 1.60
[[nodiscard]] const Dimension& small_post_hole();  // diameter 1.10
[[nodiscard]] const Dimension& pitch();            // 0.80 of the 26 contacts of a side
[[nodiscard]] const Dimension& side_offset();      // 0.40 from the contacts of the other side

// Thickness and heights
[[nodiscard]] const Dimension& thickness();     // 1.00 ±0.10, memory
[[nodiscard]] const Dimension& top_parts();     // at most 2.40, memory
[[nodiscard]] const Dimension& bottom_parts();  // at most 1.35, memory

/// Every row of this file, for the list of sources.
[[nodiscard]] std::vector<Dimension> rows();

}  // namespace baywright::standards::mini_cards
