// Add-in cards: PCI Express CEM 1.1 as a public footprint library draws it, and figures 6-1, 6-3 and 9-3 to 9-9 as a
// public case model cites them. CEM itself was not read. Parts' heights: memory.
#include "standards/addin_cards.h"
#include "standards/boards.h"
#include "support/check_mm.h"

#include <array>
#include <doctest/doctest.h>

using namespace baywright::standards;
using baywright::test::check_mm;
using baywright::tolerance::Known;

namespace {

constexpr double exactly = 1e-9;

}  // namespace

TEST_CASE("PCI Express CEM: card outline") {
  check_mm(addin_cards::full_height().high(), 111.15, exactly);
  check_mm(addin_cards::low_height().high(), 68.90, exactly);
  // The outline runs from -57.15 to 110.50 or 254.85.
  check_mm(addin_cards::half_length().high(), 110.50 + 57.15, exactly);
  check_mm(addin_cards::full_length().high(), 254.85 + 57.15, exactly);
  check_mm(addin_cards::half_length().high(), 167.65, exactly);
  check_mm(addin_cards::full_length().high(), 312.00, exactly);
  check_mm(addin_cards::bracket_end().nominal, 57.15, exactly);
  check_mm(addin_cards::lower_edge().nominal, 12.75, exactly);
  check_mm(addin_cards::tail_edge().nominal, 4.50, exactly);
  check_mm(addin_cards::tail_end().nominal, 42.15, exactly);
  check_mm(addin_cards::foot_start().nominal, 23.80, exactly);
  check_mm(addin_cards::foot_end().nominal, 15.80, exactly);
  check_mm(addin_cards::board_thickness().nominal, 1.57, exactly);
}

TEST_CASE("PCI Express CEM: tongue, key notch and retention hook") {
  check_mm(addin_cards::tongue_start().nominal, 12.15, exactly);
  // The first segment runs from -12.15 to -0.95, where the notch of 1.90 begins.
  check_mm(addin_cards::tongue_start().nominal - addin_cards::first_segment().nominal, 0.95, exactly);
  check_mm(addin_cards::notch_width().nominal, 1.90, exactly);
  check_mm(addin_cards::notch_depth().nominal, 8.40, exactly);
  check_mm(addin_cards::chamfer().nominal, 0.50, exactly);
  check_mm(addin_cards::hook_start().nominal, 74.90, exactly);
  check_mm(addin_cards::hook_end().nominal, 87.60, exactly);
  check_mm(addin_cards::hook_low().nominal, 2.95, exactly);
  check_mm(addin_cards::hook_high().nominal, 7.95, exactly);
}

TEST_CASE("PCI Express CEM, Figures 6-1 and 6-3: tongues and slot bodies by lanes") {
  struct Row {
    int lanes;
    double tongue_end, tongue, body;
  };
  constexpr std::array<Row, 4> rows{
      {{1, 8.15, 20.30, 25.00}, {4, 22.15, 34.30, 39.00}, {8, 39.15, 51.30, 56.00}, {16, 72.15, 84.30, 89.00}}};
  CHECK(addin_cards::lane_counts().size() == rows.size());
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const Row& row = rows[i];
    CAPTURE(row.lanes);
    CHECK(addin_cards::lane_counts()[i] == row.lanes);
    check_mm(addin_cards::tongue_end(row.lanes).nominal, row.tongue_end, exactly);
    check_mm(addin_cards::tongue_start().nominal + addin_cards::tongue_end(row.lanes).nominal, row.tongue, exactly);
    check_mm(addin_cards::slot_length(row.lanes).nominal, row.body, exactly);
    // Each body ends 2.35 past its tongue, the one closure that all four share.
    check_mm(addin_cards::slot_length(row.lanes).nominal - addin_cards::slot_start().nominal -
                 addin_cards::tongue_end(row.lanes).nominal,
             2.35, exactly);
  }
  // Any other count takes the next larger row.
  check_mm(addin_cards::tongue_end(2).nominal, 22.15, exactly);
  check_mm(addin_cards::slot_length(32).nominal, 89.00, exactly);
}

TEST_CASE("PCI Express CEM: a card in a smaller, open-ended slot") {
  struct Row {
    int card, body;
    double past;
  };
  constexpr std::array<Row, 9> rows{{{4, 1, 14.00},
                                     {8, 1, 31.00},
                                     {16, 1, 64.00},
                                     {8, 4, 17.00},
                                     {16, 4, 50.00},
                                     {16, 8, 33.00},
                                     {1, 16, 0.0},
                                     {4, 4, 0.0},
                                     {4, 8, 0.0}}};
  for (const Row& row : rows) {
    CAPTURE(row.card);
    CAPTURE(row.body);
    check_mm(addin_cards::past_the_body(row.card, row.body), row.past, exactly);
  }
}

TEST_CASE("PCI Express CEM: holes of brackets and of full-length cards") {
  check_mm(addin_cards::bracket_hole().nominal, 3.20, exactly);
  check_mm(addin_cards::bracket_hole_from_key().nominal, 49.65, exactly);
  check_mm(addin_cards::bracket_hole_lower().nominal, 9.35, exactly);
  check_mm(addin_cards::bracket_holes_full().nominal, 85.40, exactly);  // 94.75 - 9.35
  check_mm(addin_cards::bracket_holes_low().nominal, 53.90, exactly);   // 63.25 - 9.35
  check_mm(addin_cards::far_holes().nominal, 89.53, exactly);           // 106.13 - 16.60; conventional PCI had the same
  check_mm(addin_cards::far_hole_from_key().nominal, 249.77, exactly);
  CHECK(addin_cards::bracket_holes_full().known == Known::derived);
}

TEST_CASE("PCI Express CEM: brackets") {
  check_mm(addin_cards::bracket_width().nominal, 18.42, exactly);
  check_mm(addin_cards::bracket_width_full_tab().nominal, 21.59, exactly);
  check_mm(addin_cards::bracket_width_low_tab().nominal, 18.59, exactly);
  check_mm(addin_cards::bracket_thickness().nominal, 0.86, exactly);
  check_mm(addin_cards::bracket_inner().nominal + addin_cards::bracket_thickness().nominal, 59.04, exactly);
  check_mm(addin_cards::tab_reach_full().nominal, 11.43, exactly);
  check_mm(addin_cards::tab_reach_low().nominal, 11.84, exactly);
  check_mm(addin_cards::tab_slot().nominal, 4.42, exactly);
  check_mm(addin_cards::tab_slot_full().nominal, 5.08, exactly);
  check_mm(addin_cards::tab_slot_low().nominal, 6.35, exactly);
  check_mm(addin_cards::tip_width().nominal, 10.19, exactly);
  check_mm(addin_cards::tip_from_edge().nominal, 4.11, exactly);
  check_mm(addin_cards::window_width().nominal, 12.06, exactly);
  check_mm(addin_cards::window_full().nominal, 89.90, exactly);
  check_mm(addin_cards::window_low().nominal, 54.53, exactly);
  check_mm(addin_cards::window_below_tab_full().nominal, 10.16, exactly);
  check_mm(addin_cards::window_below_tab_low().nominal, 9.04, exactly);
  // Tab to tip: 120.02 by the models and 104.86 + 15.14 by the library; 79.20 by both.
  check_mm(addin_cards::bracket_full().nominal, 120.02, exactly);
  check_mm(addin_cards::tab_full().nominal + addin_cards::tip_full().nominal, 120.00, exactly);
  check_mm(addin_cards::bracket_low().nominal, 79.20, exactly);
  check_mm(addin_cards::tab_low().nominal + addin_cards::tip_low().nominal, 79.20, exactly);
}

TEST_CASE("PCI Express CEM: heights of a seated card above the board") {
  const double floor = addin_cards::slot_floor().nominal;
  check_mm(floor + addin_cards::full_height().high(), 114.55, exactly);
  check_mm(floor + addin_cards::low_height().high(), 72.30, exactly);
  check_mm(floor + addin_cards::tab_full().nominal, 108.26, exactly);
  check_mm(floor + addin_cards::tab_low().nominal, 71.49, exactly);
  check_mm(floor + addin_cards::tail_edge().nominal, 7.90, exactly);
  check_mm(addin_cards::tip_full().nominal - floor, 11.74, exactly);  // below the board's top
  check_mm(addin_cards::tip_low().nominal - floor, 7.71, exactly);
  check_mm(addin_cards::slot_height().nominal, 11.25, exactly);
  check_mm(addin_cards::slot_width().nominal, 7.50, exactly);
  // Past the tongue a card's edge clears what may stand in height zone B of a Mini-ITX board (16).
  check_mm(floor + addin_cards::lower_edge().nominal, 16.15, exactly);
  REQUIRE(boards::find("mini-itx") != nullptr);
  CHECK(boards::find("mini-itx")->zones.front().name == "B");
  CHECK(floor + addin_cards::lower_edge().nominal > boards::find("mini-itx")->zones.front().height.high());
}

TEST_CASE("air between two full cards: memory, since parts' heights are") {
  check_mm(addin_cards::slot_pitch().nominal, 20.32, exactly);
  check_mm(addin_cards::component_side().high(), 14.47, exactly);
  check_mm(addin_cards::solder_side().high(), 2.67, exactly);
  // 20.32 - 1.57 - 14.47 - 2.67.
  check_mm(addin_cards::slot_pitch().nominal - addin_cards::board_thickness().nominal -
               addin_cards::component_side().high() - addin_cards::solder_side().high(),
           1.61, exactly);
  CHECK(addin_cards::component_side().known == Known::memory);
  CHECK(addin_cards::solder_side().known == Known::memory);
}

TEST_CASE("the slot on an ATX board, and the bracket before the chassis panel") {
  const double key = addin_cards::key_from_hole_row().nominal;
  check_mm(key, 46.94, exactly);
  check_mm(addin_cards::first_slot_from_hole_c().nominal, 1.57, exactly);
  // From hole B it is 47.29: 45.72 to hole C and 1.57.
  check_mm(45.72 + addin_cards::first_slot_from_hole_c().nominal, 47.29, exactly);
  // The bracket's outer face lies 59.04 from the key, so 12.10 behind the hole row; the panel's inner face 12.27.
  const double outer = addin_cards::bracket_inner().nominal + addin_cards::bracket_thickness().nominal;
  check_mm(outer - key, 12.10, exactly);
  check_mm(boards::panel_behind_hole_row().nominal - (outer - key), 0.17, exactly);
  // A card's bracket end lies 0.05 behind the board's rear edge, 10.16 behind the row.
  check_mm(addin_cards::bracket_end().nominal - key - 10.16, 0.05, exactly);
}
