#include "standards/boards.h"

#include "standards/row.h"

#include <algorithm>
#include <array>
#include <string>

namespace baywright::standards::boards {

namespace {

constexpr double inch = 25.4;

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
std::vector<Hole> holes(std::string_view named, double shift, std::string_view source) {
  std::vector<Hole> made;
  for (const char letter : named) {
    const Letter& row = letter_row(letter);
    const bool of_micro_atx = letter == 'R' || letter == 'S';
    made.push_back({.letter = letter,
                    .x = row.from_rear * inch,
                    .y = shift - row.from_cpu_side * inch,
                    .required = letter != 'S',  // optional on a full-width microATX board, as the specification says
                    .known = Known::secondary,
                    .source = of_micro_atx ? new_hole_source : source});
  }
  return made;
}

Board atx() {
  const std::string source = std::string(micro_atx_source) + ", Table 3";
  return {.id = "atx",
          .along_x = at_most("ATX board, rear to front", 9.6 * inch, source),
          .across_y = at_most("ATX board, across", 12.0 * inch, source),
          .holes = holes("ACFGHJKLM", 0.0, hole_source),
          .zones = {}};  // the outlines of its height zones are not confirmed
}

Board micro_atx() {
  const std::string source = std::string(micro_atx_source) + ", Table 3";
  return {.id = "micro-atx",
          .along_x = at_most("microATX board, rear to front", 9.6 * inch, source),
          .across_y = at_most("microATX board, across", 9.6 * inch, source),
          .holes = holes("BCFHJLMRS", 0.0, hole_source),  // it shares the ATX board's corner at the CPU side
          .zones = {}};
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

Board mini_itx() {
  constexpr double side = 170.0;
  constexpr double hole_c_to_slot_side = 6.35;
  constexpr double under_cards = 15.0;  // width of the strip along the slot-side edge
  constexpr double rear = 27.0;
  constexpr double front = 30.0;
  const std::string source = std::string(mini_itx_source) + ", Table 1";
  // 170 rounds 6.7 in, so the corner is 0.18 nearer to the holes than a corner measured in inches.
  const double shift = letter_row('C').from_cpu_side * inch - (side - hole_c_to_slot_side);
  return {.id = "mini-itx",
          .along_x = untoleranced("Mini-ITX board, rear to front", side, source),
          .across_y = untoleranced("Mini-ITX board, across", side, source),
          .holes = holes("CFHJ", shift, mini_itx_hole_source),
          .zones = {
              mini_itx_zone("B", 0.0, side, -side, under_cards - side, 16.0),
              mini_itx_zone("D", 0.0, rear, under_cards - side, 0.0, 39.0),
              mini_itx_zone("A", rear, side - front, under_cards - side, 0.0, 57.0),
              mini_itx_zone("C", side - front, side, under_cards - side, 0.0, 38.0),
          }};
}

}  // namespace

std::span<const Board> all() {
  static const std::array rows{mini_itx(), micro_atx(), atx()};
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

}  // namespace baywright::standards::boards
