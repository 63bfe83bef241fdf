#pragma once
// Main boards as published: outline, mounting holes, height zones. Frame: x from the rear (I/O) edge forward, origin at
// the corner on the CPU side, body at y < 0, z = 0 on the component side.
#include "tolerance/dimension.h"

#include <span>
#include <string_view>
#include <vector>

namespace baywright::standards::boards {

using tolerance::Dimension;

struct Hole {
  char letter;
  double x, y;  // mm
  bool required;
  tolerance::Known known;
  std::string_view source;
};
struct Zone {  // parts of the board may stand up to `height` here
  std::string_view name;
  double x0, x1, y0, y1;  // x0 < x1, y0 < y1
  Dimension height;
};
struct Board {
  std::string_view id;          // "mini-itx" "micro-atx" "atx"
  Dimension along_x, across_y;  // sizes
  std::vector<Hole> holes;
  std::vector<Zone> zones;
};
[[nodiscard]] std::span<const Board> all();
[[nodiscard]] const Board* find(std::string_view id);
[[nodiscard]] const Dimension& thickness();      // 1.57
[[nodiscard]] const Dimension& hole_diameter();  // 3.96

}  // namespace baywright::standards::boards
