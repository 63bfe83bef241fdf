#pragma once
// An M.2 card, its screw, a socket and a stand-off as parts, from the published rows.
#include "parts/part.h"
#include "standards/m2.h"

#include <optional>

namespace baywright::parts {

/// A card in its own frame: x across toward pin 1, y from the leading edge to the screw, z up from the component face.
/// The envelope that the standard allows: components may stand anywhere outside the keep-outs up to the height code.
struct M2Card {
  Part part;              // bodies "edge", "card", "chips" and, on double-sided cards, "chips underneath"
  Coordinate underside;   // z of the bare card's lower face
  Coordinate chips_top;   // z
  Coordinate chips_from;  // y where components may start on top
  double chips_to = 0.0;  // y where they end at the centre line, mm
  Coordinate screw_end;   // y of the outline's end
  double hole_y = 0.0;    // y of the screw hole, basic, mm
};

/// Heights that the user measured replace those of the code; required where the code is "?". The bare card's thickness
/// replaces that of the standard.
struct MeasuredHeights {
  std::optional<tolerance::Dimension> top;
  std::optional<tolerance::Dimension> bottom;
  std::optional<tolerance::Dimension> thickness{};
};

/// `name` must name published widths, lengths and keys (read_card_name refuses others).
[[nodiscard]] M2Card m2_card(const standards::m2::CardName& name, const MeasuredHeights& measured);

/// The screw that holds a card: the head as the standard allows it, from z = 0 (the card's top) up, about x = y = 0.
[[nodiscard]] Part m2_screw();

/// A socket in its slot's frame: y = 0 at the seating plane, +y toward the screw, z up from the board's face.
/// Bodies "socket" and "ledge".
[[nodiscard]] Part m2_socket(const standards::m2::SocketClass& height_class);

/// A stand-off about z, from the board's face up: `height` and the solder under it. Its coordinates are in the caller's
/// list of dimensions, since the height also tilts the card.
[[nodiscard]] Part m2_standoff(const Coordinate& diameter, const Coordinate& height);

}  // namespace baywright::parts
