#include "standards/boards.h"

#include "standards/row.h"

#include <algorithm>
#include <array>
#include <string>

namespace baywright::standards::boards {

namespace {

constexpr double inch = 25.4;
constexpr double full_depth = 9.6 * inch;  // rear to front, of ATX, microATX and DTX; microATX is square

constexpr std::string_view micro_atx_source = "microATX Motherboard Interface Specification 1.2";
constexpr std::string_view mini_itx_source = "Mini-ITX Addendum 1.1 to the microATX specification";

/// A mounting hole of the ATX family, inches: from the rear edge, and from the CPU-side edge of an ATX board.
struct Letter {
  char letter;
  double from_rear;
  double from_cpu_side;
};
constexpr std::array<Letter, 12> letters{{
    {'A', 0.40, 11.35},
    {'B', 0.40, 8.25},
    {'C', 0.40, 6.45},
    {'F', 1.30, 0.25},
    {'G', 6.50, 11.35},
    {'H', 6.50, 6.45},
    {'J', 6.50, 0.25},
    {'K', 9.35, 11.35},
    {'L', 9.35, 6.45},
    {'M', 9.35, 0.25},
    {'R', 6.50, 9.05},
    {'S', 6.50, 8.25},
}};

constexpr std::string_view hole_source =
    "two public transcriptions of the ATX hole table, inches and mm; letters: microATX Specification 1.2, Figure 2";
constexpr std::string_view new_hole_source =
    "three public board models that agree; letters: microATX Specification 1.2, Figure 2";
constexpr std::string_view mini_itx_hole_source =
    "a public board model after the Mini-ITX Addendum 1.1: the ATX holes C F H J, hole C 6.35 from the slot-side edge";

const Letter& letter_row(char letter) {
  const auto* const found =
      std::find_if(letters.begin(), letters.end(), [&](const Letter& row) { return row.letter == letter; });
  return found == letters.end() ? letters.front() : *found;  // only letters of this file are asked for
}

/// The holes named, in the frame of a board whose CPU-side edge lies `shift` mm inside that of an ATX board.
std::vector<Hole> holes(std::string_view named, double shift, std::string_view source, Known known = Known::secondary) {
  std::vector<Hole> made;
  for (const char letter : named) {
    const Letter& row = letter_row(letter);
    const bool of_micro_atx = letter == 'R' || letter == 'S';
    made.push_back({.letter = letter,
                    .x = row.from_rear * inch,
                    .y = shift - row.from_cpu_side * inch,
                    .required = letter != 'S',  // optional on a full-width microATX board, as the specification says
                    .known = known,
                    .source = of_micro_atx ? new_hole_source : source});
  }
  return made;
}

Board atx() {
  const std::string source = std::string(micro_atx_source) + ", Table 3";
  return {.id = "atx",
          .along_x = at_most("ATX board, rear to front", full_depth, source),
          .across_y = at_most("ATX board, across", 12.0 * inch, source),
          .holes = holes("ACFGHJKLM", 0.0, hole_source),
          .zones = {},  // their outlines are not confirmed
          .total_height = {}};
}

Board micro_atx() {
  const std::string source = std::string(micro_atx_source) + ", Table 3";
  return {.id = "micro-atx",
          .along_x = at_most("microATX board, rear to front", full_depth, source),
          .across_y = at_most("microATX board, across", full_depth, source),
          .holes = holes("BCFHJLMRS", 0.0, hole_source),  // it shares the ATX board's corner at the CPU side
          .zones = {},
          .total_height = {}};
}

Zone mini_itx_zone(std::string_view name, double x0, double x1, double y0, double y1, double height) {
  return {name,
          x0,
          x1,
          y0,
          y1,
          at_most("parts in height zone " + std::string(name), height,
                  "a public board model after the Mini-ITX Addendum 1.1, Figure 4", Known::secondary)};
}

constexpr double mini_itx_side = 170.0;  // thin boards too

Dimension mini_itx_size(std::string_view which) {
  return but(
      untoleranced("Mini-ITX board, " + std::string(which), mini_itx_side, std::string(mini_itx_source) + ", Table 1"),
      "170.18 on other pages, which is 6.7 in");
}

constexpr std::string_view thin_source = "one trade page on thin Mini-ITX";

Dimension thin_mini_itx_size(std::string_view which) {
  return untoleranced("thin Mini-ITX board, " + std::string(which), mini_itx_side, std::string(thin_source),
                      Known::secondary);
}

/// 170 rounds 6.7 in, so the corner is 0.18 nearer to the holes than a corner measured in inches.
double mini_itx_shift() {
  constexpr double hole_c_to_slot_side = 6.35;
  return letter_row('C').from_cpu_side * inch - (mini_itx_side - hole_c_to_slot_side);
}

std::vector<Zone> mini_itx_zones() {
  constexpr double side = mini_itx_side;
  constexpr double under_cards = 15.0;  // width of the strip along the slot-side edge
  constexpr double rear = 27.0;
  constexpr double front = 30.0;
  return {
      mini_itx_zone("B", 0.0, side, -side, under_cards - side, 16.0),
      mini_itx_zone("D", 0.0, rear, under_cards - side, 0.0, 39.0),
      mini_itx_zone("A", rear, side - front, under_cards - side, 0.0, 57.0),
      mini_itx_zone("C", side - front, side, under_cards - side, 0.0, 38.0),
  };
}

Board mini_itx() {
  return {.id = "mini-itx",
          .along_x = mini_itx_size("rear to front"),
          .across_y = mini_itx_size("across"),
          .holes = holes("CFHJ", mini_itx_shift(), mini_itx_hole_source),
          .zones = mini_itx_zones(),
          .total_height = {}};
}

Board thin_mini_itx() {
  return {.id = "thin-mini-itx",
          .along_x = thin_mini_itx_size("rear to front"),
          .across_y = thin_mini_itx_size("across"),
          .holes = holes("CFHJ", mini_itx_shift(), "from memory: the holes of a Mini-ITX board", Known::memory),
          .zones = {},
          .total_height = at_most("thin Mini-ITX, height over the board", 25.0,
                                  std::string(thin_source) + ", which says about 25", Known::secondary)};
}

constexpr double dtx_across = 8.0 * inch;  // Mini-DTX too

Dimension dtx_size(std::string_view board, std::string_view which, double size) {
  return untoleranced(std::string(board) + " board, " + std::string(which), size,
                      "press pages and an encyclopaedia; its mounting holes are not confirmed and so not given",
                      Known::secondary);
}

Board mini_dtx() {
  return {.id = "mini-dtx",
          .along_x = dtx_size("Mini-DTX", "rear to front", 6.7 * inch),
          .across_y = dtx_size("Mini-DTX", "across", dtx_across),
          .holes = {},
          .zones = {},
          .total_height = {}};
}

Board dtx() {
  return {.id = "dtx",
          .along_x = dtx_size("DTX", "rear to front", full_depth),
          .across_y = dtx_size("DTX", "across", dtx_across),
          .holes = {},
          .zones = {},
          .total_height = {}};
}

}  // namespace

std::span<const Board> all() {
  static const std::array rows{mini_itx(), thin_mini_itx(), mini_dtx(), dtx(), micro_atx(), atx()};
  return rows;
}

const Board* find(std::string_view id) {
  const auto rows = all();
  const auto found = std::find_if(rows.begin(), rows.end(), [&](const Board& row) { return row.id == id; });
  return found == rows.end() ? nullptr : &*found;
}

const Dimension& thickness() {
  static const Dimension row =
      untoleranced("board thickness", 1.57, std::string(micro_atx_source) + ", Figure 4, note: typical 0.062 in");
  return row;
}

const Dimension& hole_diameter() {
  static const Dimension row =
      untoleranced("board mounting hole", 3.96, "a public board model of the ATX family, 0.156 in", Known::secondary);
  return row;
}

std::vector<Dimension> rows() {
  std::vector<Dimension> rows{thickness(), hole_diameter()};
  for (const Board& board : all()) {
    rows.push_back(board.along_x);
    rows.push_back(board.across_y);
    for (const Zone& zone : board.zones) rows.push_back(zone.height);
    if (board.total_height) rows.push_back(*board.total_height);
  }
  for (const Dimension* const row :
       {&aperture_across(), &aperture_up(), &aperture_below_top(), &aperture_from_hole_c(), &aperture_corner(),
        &aperture_keep_out(), &panel_thickness(), &panel_behind_hole_row(), &connector_face(), &connector_zone_across(),
        &connector_zone_up(), &clear_under(), &leads_at_holes(), &leads(), &chassis_over_cpu(),
        &chassis_over_cpu_better()}) {
    rows.push_back(*row);
  }
  return rows;
}

}  // namespace baywright::standards::boards
