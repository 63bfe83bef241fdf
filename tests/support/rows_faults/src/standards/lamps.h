#pragma once
// One forgotten row of each kind that rows_complete.py has to see.
#include "tolerance/dimension.h"

#include <optional>
#include <span>
#include <vector>

namespace baywright::standards::lamps {

using tolerance::Dimension;

struct Base {
  Dimension width, pins;  // pins: forgotten
};
struct Lamp {
  Dimension width;  // forgotten: `.width` stands in rows() once, for two structs
  Base base;
  std::optional<Dimension> neck;  // forgotten
  std::vector<Dimension> rings;   // listed
};
[[nodiscard]] std::span<const Lamp> lamps();
[[nodiscard]] std::span<const Lamp> old_lamps();     // forgotten
[[nodiscard]] const Dimension& socket();             // listed
[[nodiscard]] const Dimension& thread_of(int lamp);  // only named in the body of another row
[[nodiscard]] const Dimension& cable();              // forgotten: stands in a comment

[[nodiscard]] std::vector<Dimension> rows();

}  // namespace baywright::standards::lamps
