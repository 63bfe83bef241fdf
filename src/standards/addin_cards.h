#pragma once
// PCI Express add-in cards, their brackets and their slots. Card frame: x along the edge with 0 at the centre of the
// key notch and +x away from the bracket, y = 0 at the contact edge and up, z out of the component side, 0 at the
// middle of the board's thickness. A distance "on the bracket's side" is positive and lies at negative x. Heights
// "above the board" are above the main board's component side. The component side of a seated card faces away from the
// CPU. All lengths in mm. PCI Express CEM itself was not read: figures come from libraries and models that cite its
// revision 1.1. `lanes` is one of `lane_counts`; any other count takes the row of the next larger one, and above 16
// that of 16.
#include "tolerance/dimension.h"

#include <span>
#include <vector>

namespace baywright::standards::addin_cards {

using tolerance::Dimension;

[[nodiscard]] std::span<const int> lane_counts();  // 1 4 8 16

// Card
[[nodiscard]] const Dimension& full_height();          // 111.15 at most, contact edge to top
[[nodiscard]] const Dimension& low_height();           // 68.90 at most
[[nodiscard]] const Dimension& half_length();          // 167.65 at most, bracket end to far end
[[nodiscard]] const Dimension& full_length();          // 312.00 at most
[[nodiscard]] const Dimension& bracket_end();          // 57.15 from the key on the bracket's side
[[nodiscard]] const Dimension& tongue_start();         // 12.15 from the key on the bracket's side
[[nodiscard]] const Dimension& tongue_end(int lanes);  // +8.15, +22.15, +39.15, +72.15
[[nodiscard]] const Dimension& first_segment();        // 11.20, tongue start to the notch
[[nodiscard]] const Dimension& notch_width();          // 1.90
[[nodiscard]] const Dimension& notch_depth();          // 8.40
[[nodiscard]] const Dimension& chamfer();              // 0.50, 45 degrees, at the corners of the tongue
[[nodiscard]] const Dimension& lower_edge();           // y 12.75, past the tongue
[[nodiscard]] const Dimension& tail_edge();            // y 4.50, of the bracket tail and of the foot before the tongue
[[nodiscard]] const Dimension& tail_end();         // 42.15 from the key on the bracket's side, `bracket_end` to here
[[nodiscard]] const Dimension& foot_start();       // 23.80 from the key on the bracket's side
[[nodiscard]] const Dimension& foot_end();         // 15.80 from the key on the bracket's side
[[nodiscard]] const Dimension& hook_start();       // x 74.90: the retention hook of an x16 card
[[nodiscard]] const Dimension& hook_end();         // x 87.60
[[nodiscard]] const Dimension& hook_low();         // y 2.95
[[nodiscard]] const Dimension& hook_high();        // y 7.95
[[nodiscard]] const Dimension& board_thickness();  // 1.57
[[nodiscard]] const Dimension& component_side();   // 14.47 at most, memory
[[nodiscard]] const Dimension& solder_side();      // 2.67 at most, memory
[[nodiscard]] const Dimension& bracket_hole();     // diameter 3.20
[[nodiscard]] const Dimension& bracket_hole_from_key();    // 49.65 from the key on the bracket's side
[[nodiscard]] const Dimension& bracket_hole_lower();       // y 9.35
[[nodiscard]] const Dimension& bracket_hole_upper_full();  // y 94.75
[[nodiscard]] const Dimension& bracket_hole_upper_low();   // y 63.25
[[nodiscard]] const Dimension& bracket_holes_full();       // 85.40 apart, derived
[[nodiscard]] const Dimension& bracket_holes_low();        // 53.90 apart, derived
[[nodiscard]] const Dimension& far_hole_from_key();        // x 249.77, on full-length cards
[[nodiscard]] const Dimension& far_hole_lower();           // y 16.60
[[nodiscard]] const Dimension& far_hole_upper();           // y 106.13
[[nodiscard]] const Dimension& far_holes();                // 89.53 apart, on full-length cards, derived

// Bracket
[[nodiscard]] const Dimension& bracket_full();            // 120.02 overall, tab to tip
[[nodiscard]] const Dimension& bracket_low();             // 79.20
[[nodiscard]] const Dimension& bracket_width();           // 18.42
[[nodiscard]] const Dimension& bracket_width_full_tab();  // 21.59 over the tab, which is offset
[[nodiscard]] const Dimension& bracket_width_low_tab();   // 18.59
[[nodiscard]] const Dimension& bracket_thickness();       // 0.86
[[nodiscard]] const Dimension& bracket_inner();           // 58.18 from the key, its inner face
[[nodiscard]] const Dimension& tab_full();                // y 104.86: lower face of the tab, which rests on the chassis
[[nodiscard]] const Dimension& tab_low();                 // y 68.09
[[nodiscard]] const Dimension& tab_reach_full();          // 11.43 beyond the outer face
[[nodiscard]] const Dimension& tab_reach_low();           // 11.84
[[nodiscard]] const Dimension& tab_slot();                // diameter 4.42
[[nodiscard]] const Dimension& tab_slot_full();           // 5.08 from the bend
[[nodiscard]] const Dimension& tab_slot_low();            // 6.35 from the bend
[[nodiscard]] const Dimension& tip_full();                // 15.14 below the contact edge
[[nodiscard]] const Dimension& tip_low();                 // 11.11 below the contact edge
[[nodiscard]] const Dimension& tip_width();               // 10.19
[[nodiscard]] const Dimension& tip_from_edge();           // 4.11 from one edge of the bracket; bent by 5 degrees
[[nodiscard]] const Dimension& window_width();            // 12.06
[[nodiscard]] const Dimension& window_full();             // 89.90
[[nodiscard]] const Dimension& window_low();              // 54.53
[[nodiscard]] const Dimension& window_below_tab_full();   // 10.16 below the tab
[[nodiscard]] const Dimension& window_below_tab_low();    // 9.04 below the tab

// Slot
[[nodiscard]] const Dimension& slot_pitch();              // 20.32
[[nodiscard]] const Dimension& slot_length(int lanes);    // 25.00 39.00 56.00 89.00
[[nodiscard]] const Dimension& slot_start();              // 14.50 from the key on the bracket's side
[[nodiscard]] const Dimension& slot_width();              // 7.50
[[nodiscard]] const Dimension& slot_height();             // 11.25 above the board
[[nodiscard]] const Dimension& slot_floor();              // 3.40 above the board: where the contact edge stands
[[nodiscard]] const Dimension& key_from_hole_row();       // 46.94, from the hole-B row of an ATX board forward
[[nodiscard]] const Dimension& first_slot_from_hole_c();  // 1.57 toward the CPU; `slot_pitch` to the next, away from it

/// How far the tongue of a card stands past that of a smaller card, and so past the body of an open-ended slot of that
/// size, mm; 0 where it does not. Derived. The parts of the machine under such a tongue must stay below `slot_floor`,
/// past it below `lower_edge` + floor. A larger card in a smaller slot is outside the standard: only an open end
/// permits it.
[[nodiscard]] double past_the_body(int card_lanes, int body_lanes);

/// Every row of this file, for the list of sources.
[[nodiscard]] std::vector<Dimension> rows();

}  // namespace baywright::standards::addin_cards
