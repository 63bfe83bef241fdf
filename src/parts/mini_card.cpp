#include "parts/mini_card.h"

#include "standards/mini_cards.h"

namespace baywright::parts {

namespace rows = standards::mini_cards;

MiniCard mini_card(bool half, const MeasuredMini& measured) {
  MiniCard card;
  Part& part = card.part;
  part.id = half ? "mini card/half" : "mini card/full";
  part.kind = "card";
  part.title = half ? "mini card, half length" : "mini card, full length";
  const Coordinate wide = 0.5 * Coordinate::of(part.add(rows::width()));
  const Coordinate end = Coordinate::of(part.add(half ? rows::half_length() : rows::full_length()));
  const Coordinate thick = Coordinate::of(part.add(rows::thickness()));
  const Coordinate tongue = 0.5 * Coordinate::of(part.add(rows::tongue_width()));
  const Coordinate shoulder = Coordinate::of(part.add(rows::shoulder()));
  const Coordinate over = Coordinate::of(part.add(measured.top.value_or(rows::top_parts())));
  const Coordinate under = Coordinate::of(part.add(measured.bottom.value_or(rows::bottom_parts())));
  card.underside = -1.0 * thick;
  card.hole_y = (half ? rows::half_hole() : rows::full_hole()).nominal;
  card.hole_x = 0.5 * rows::width().nominal - rows::hole_from_edge().nominal;
  part.bodies.push_back(box_body("edge", {-1.0 * tongue, 0.0, card.underside}, {tongue, shoulder, 0.0}));
  part.bodies.push_back(box_body("card", {-1.0 * wide, shoulder, card.underside}, {wide, end, 0.0}));
  // The corners at the holes are bare: parts end before them.
  const double parts_end = card.hole_y - 0.5 * rows::pad().nominal;
  part.bodies.push_back(box_body("chips", {-1.0 * wide, shoulder, 0.0}, {wide, parts_end, over}));
  part.bodies.push_back(
      box_body("chips underneath", {-1.0 * wide, shoulder, card.underside - under}, {wide, parts_end, card.underside}));
  for (const double side : {-1.0, 1.0})
    part.holes.push_back(
        {side < 0.0 ? "left" : "right", side * card.hole_x, card.hole_y, rows::hole_diameter().nominal});
  return card;
}

}  // namespace baywright::parts
