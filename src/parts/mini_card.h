#pragma once
// A PCI Express mini card, or an mSATA card, which has the same outline. Frame: x across with 0 on the card's centre
// line, y from the contact edge, z up from the component face. The key's side is +x.
#include "parts/part.h"

#include <optional>

namespace baywright::parts {

struct MiniCard {
  Part part;             // bodies "edge", "card", "chips", "chips underneath"
  Coordinate underside;  // z of the bare card's lower face
  double hole_y = 0.0;   // y of the two screw holes, mm
  double hole_x = 0.0;   // they stand at minus and plus this
};

struct MeasuredMini {
  std::optional<tolerance::Dimension> top;
  std::optional<tolerance::Dimension> bottom;
};

[[nodiscard]] MiniCard mini_card(bool half, const MeasuredMini& measured);

}  // namespace baywright::parts
