#pragma once
// What a place may draw, and what drives at it draw together.
#include "parts/form.h"
#include "standards/connectors.h"
#include "tolerance/dimension.h"

#include <optional>
#include <span>
#include <string_view>

namespace baywright::thermal {

struct Budget {
  double watts = 0.0;
  bool peak = false;  // a peak over less than a millisecond: what may be drawn on and on is not published, and is less
  std::string_view source;
  tolerance::Known known = tolerance::Known::memory;
};

/// M.2 socket by its key, 'M', 'B', 'A' or 'E'; none for any other.
[[nodiscard]] std::optional<Budget> m2_budget(char key);
/// PCIe slot by lanes of its body: 1, 4, 8 or 16; none for any other.
[[nodiscard]] std::optional<Budget> card_slot_budget(int lanes);
/// Plug of a cased drive; only those of SFF-8639 have a figure.
[[nodiscard]] std::optional<Budget> plug_budget(standards::connectors::Plug plug);
/// EDSFF drive by its form and thickness, mm: what it may draw on and on. None for a thickness that has no row.
[[nodiscard]] std::optional<Budget> edsff_budget(parts::Form form, double thickness);

/// Drives that draw from one budget. What one draws may be unknown: then so is the sum, though what is known may be
/// too much by itself.
struct Draw {
  double known = 0.0;  // W, of those that say
  int unknown = 0;     // how many don't
  bool over = false;   // `known` is above the budget
};
[[nodiscard]] Draw draw(const Budget& budget, std::span<const std::optional<double>> watts);

}  // namespace baywright::thermal
