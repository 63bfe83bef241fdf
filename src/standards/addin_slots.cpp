// Slots for add-in cards, and where they stand on a main board.
#include "standards/addin_cards.h"
#include "standards/addin_cards_source.h"
#include "standards/row.h"

#include <array>

namespace baywright::standards::addin_cards {

namespace {

Dimension slot_length_row(int lanes, double length) {
  return untoleranced("slot body length, x" + std::to_string(lanes), length, model() + ", Figure 6-1",
                      Known::secondary);
}

}  // namespace

const Dimension& slot_length(int lanes) {
  static const std::array rows{slot_length_row(1, 25.00), slot_length_row(4, 39.00), slot_length_row(8, 56.00),
                               slot_length_row(16, 89.00)};
  return rows[lane_row(lanes)];
}

const Dimension& slot_pitch() {
  static const Dimension row = untoleranced("slot pitch", 20.32, model(), Known::secondary);
  return row;
}

const Dimension& slot_start() {
  static const Dimension row = untoleranced("key from the slot body's end", 14.50, model(), Known::secondary);
  return row;
}

const Dimension& slot_width() {
  static const Dimension row = untoleranced("slot body width", 7.50, model(), Known::secondary);
  return row;
}

const Dimension& slot_height() {
  static const Dimension row = untoleranced("slot body above the board", 11.25, model(), Known::secondary);
  return row;
}

const Dimension& slot_floor() {
  static const Dimension row = untoleranced("contact edge above the board", 3.40, model(), Known::secondary);
  return row;
}

const Dimension& key_from_hole_row() {
  static const Dimension row = untoleranced("key from the hole-B row", 46.94, model(), Known::secondary);
  return row;
}

const Dimension& first_slot_from_hole_c() {
  static const Dimension row =
      but(untoleranced("first slot from hole C", 1.57, model(), Known::secondary),
          "a sister model puts the slot of a microATX board 80.00 from the slot-side edge, where this gives 81.58");
  return row;
}

std::vector<Dimension> slot_rows() {
  std::vector<Dimension> rows{slot_pitch(),
                              slot_start(),
                              slot_width(),
                              slot_height(),
                              slot_floor(),
                              key_from_hole_row(),
                              first_slot_from_hole_c()};
  for (const int lanes : lane_counts()) rows.push_back(slot_length(lanes));
  return rows;
}

}  // namespace baywright::standards::addin_cards
