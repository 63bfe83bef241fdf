#pragma once
// A PCI Express add-in card and its slot as parts. Card frame of standards/addin_cards.h: x along the edge from the key
// notch, +x away from the bracket, y up from the contact edge, z out of the component side, 0 in the board's middle.
#include "parts/part.h"

#include <optional>

namespace baywright::parts {

/// Rear brackets as machines take them.
enum class Bracket { full, low, none };

struct AddInCard {
  Part part;             // "tongue", "board", "components", "solder side"; with a bracket "bracket" and "tab"
  Coordinate far_end;    // x
  Coordinate thickness;  // of the board
  int lanes = 4;
};

struct MeasuredCard {
  std::optional<tolerance::Dimension> length;  // bracket end to far end; else a half-length card at its longest
  std::optional<tolerance::Dimension> height;  // contact edge to top; else that of the bracket
  std::optional<tolerance::Dimension> top;     // parts over the component side; else the most of a card one slot wide
  std::optional<tolerance::Dimension> bottom;  // and over the solder side
};

/// `lanes` 1 4 8 16. Without a bracket the card is as high as a full-height one.
[[nodiscard]] AddInCard addin_card(int lanes, Bracket bracket, const MeasuredCard& measured);

/// The slot's body in the slot's frame: x across, y = 0 at the key and away from the bracket, z up from the board's
/// face. Two walls with the card's gap between them, and the floor under it; bodies "slot", "slot wall 1", "slot wall
/// 2".
[[nodiscard]] Part card_slot(int lanes);

}  // namespace baywright::parts
