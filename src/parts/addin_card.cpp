#include "parts/addin_card.h"

#include "standards/addin_cards.h"

namespace baywright::parts {

namespace cards = standards::addin_cards;

namespace {

void add_bracket(AddInCard& card, bool full) {
  Part& part = card.part;
  const Coordinate inner = -1.0 * Coordinate::of(part.add(cards::bracket_inner()));
  const Coordinate outer = inner - Coordinate::of(part.add(cards::bracket_thickness()));
  const Coordinate tab = Coordinate::of(part.add(full ? cards::tab_full() : cards::tab_low()));
  const Coordinate tall = Coordinate::of(part.add(full ? cards::bracket_full() : cards::bracket_low()));
  const Coordinate width = Coordinate::of(part.add(cards::bracket_width()));
  const Coordinate reach = Coordinate::of(part.add(full ? cards::tab_reach_full() : cards::tab_reach_low()));
  const Coordinate sheet = inner - outer;
  // The board stands near one edge of the bracket; how near is not published where we could read: its face is flush.
  const Coordinate low = -0.5 * card.thickness;
  part.bodies.push_back(box_body("bracket", {outer, tab - tall, low}, {inner, tab, low + width}));
  part.bodies.push_back(box_body("tab", {outer - reach, tab, low}, {inner, tab + sheet, low + width}));
}

}  // namespace

AddInCard addin_card(int lanes, Bracket bracket, const MeasuredCard& measured) {
  AddInCard card;
  card.lanes = lanes;
  Part& part = card.part;
  part.id = "add-in card/x" + std::to_string(lanes);
  part.kind = "card";
  part.title = "PCIe add-in card, x" + std::to_string(lanes);
  const bool full = bracket == Bracket::full;
  card.thickness = Coordinate::of(part.add(cards::board_thickness()));
  const Coordinate half = 0.5 * card.thickness;
  const Coordinate rear = -1.0 * Coordinate::of(part.add(cards::bracket_end()));
  card.far_end = rear + Coordinate::of(part.add(measured.length.value_or(cards::half_length())));
  const tolerance::Dimension& height = bracket == Bracket::low ? cards::low_height() : cards::full_height();
  const Coordinate top = Coordinate::of(part.add(measured.height.value_or(height)));
  const Coordinate edge = Coordinate::of(part.add(cards::lower_edge()));
  const Coordinate from = -1.0 * Coordinate::of(part.add(cards::tongue_start()));
  const Coordinate to = Coordinate::of(part.add(cards::tongue_end(lanes)));
  const Coordinate over = half + Coordinate::of(part.add(measured.top.value_or(cards::component_side())));
  const Coordinate under = -1.0 * half - Coordinate::of(part.add(measured.bottom.value_or(cards::solder_side())));
  part.bodies.push_back(box_body("tongue", {from, 0.0, -1.0 * half}, {to, edge, half}));
  part.bodies.push_back(box_body("board", {rear, edge, -1.0 * half}, {card.far_end, top, half}));
  part.bodies.push_back(box_body("components", {rear, edge, half}, {card.far_end, top, over}));
  part.bodies.push_back(box_body("solder side", {rear, edge, under}, {card.far_end, top, -1.0 * half}));
  if (bracket != Bracket::none) add_bracket(card, full);
  return card;
}

Part card_slot(int lanes) {
  Part part;
  part.id = "pcie/x" + std::to_string(lanes);
  part.kind = "slot";
  part.title = "PCIe slot, x" + std::to_string(lanes);
  const Coordinate from = -1.0 * Coordinate::of(part.add(cards::slot_start()));
  const Coordinate to = from + Coordinate::of(part.add(cards::slot_length(lanes)));
  const Coordinate half = 0.5 * Coordinate::of(part.add(cards::slot_width()));
  const Coordinate floor = Coordinate::of(part.add(cards::slot_floor()));
  const Coordinate top = Coordinate::of(part.add(cards::slot_height()));
  const Coordinate gap = 0.5 * Coordinate::of(part.add(cards::board_thickness()));
  part.bodies.push_back(box_body("slot", {-1.0 * half, from, 0.0}, {half, to, floor}));
  part.bodies.push_back(box_body("slot wall 1", {-1.0 * half, from, floor}, {-1.0 * gap, to, top}));
  part.bodies.push_back(box_body("slot wall 2", {gap, from, floor}, {half, to, top}));
  return part;
}

}  // namespace baywright::parts
