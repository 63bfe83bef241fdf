#pragma once
// Main boards as published: outline, mounting holes, height zones, the rear aperture and what must stay clear. Frame: x
// from the rear (I/O) edge forward, origin at the corner on the CPU side, body at y < 0, z = 0 on the component side.
// All lengths in mm.
#include "tolerance/dimension.h"

#include <optional>
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
  std::string_view id;                    // "mini-itx" "thin-mini-itx" "mini-dtx" "dtx" "micro-atx" "atx"
  Dimension along_x, across_y;            // sizes
  std::vector<Hole> holes;                // empty where no page gives them: the size's source says so
  std::vector<Zone> zones;                // empty where their outlines are not confirmed
  std::optional<Dimension> total_height;  // over the board, of boards that are made to be low
};
[[nodiscard]] std::span<const Board> all();
[[nodiscard]] const Board* find(std::string_view id);  // null: no such board
[[nodiscard]] const Dimension& thickness();            // 1.57
[[nodiscard]] const Dimension& hole_diameter();        // 3.96

// Rear (I/O) aperture of the chassis panel, the same for the whole family. The hole-B row is 10.16 from the rear edge.
[[nodiscard]] const Dimension& aperture_across();        // 158.75
[[nodiscard]] const Dimension& aperture_up();            // 44.45
[[nodiscard]] const Dimension& aperture_below_top();     // 3.81: its lower edge lies below the board's component side
[[nodiscard]] const Dimension& aperture_from_hole_c();   // 7.52: its near end from hole C, toward the CPU side
[[nodiscard]] const Dimension& aperture_corner();        // radius, at most 0.99
[[nodiscard]] const Dimension& aperture_keep_out();      // 2.54 round it
[[nodiscard]] const Dimension& panel_thickness();        // 0.94 to 1.32, which the shield clips to
[[nodiscard]] const Dimension& panel_behind_hole_row();  // 12.27 from the hole-B row backward to the panel's inner face
[[nodiscard]] const Dimension& connector_face();         // 11.30 from the hole-B row backward
[[nodiscard]] const Dimension& connector_zone_across();  // 152.15 in the aperture
[[nodiscard]] const Dimension& connector_zone_up();      // 37.34

// Under and over the board
[[nodiscard]] const Dimension& clear_under();              // at least 6.35 from its bottom surface to the tray
[[nodiscard]] const Dimension& leads_at_holes();           // at most 0.25 below the board, about mounting holes
[[nodiscard]] const Dimension& leads();                    // at most 2.49 elsewhere, memory
[[nodiscard]] const Dimension& chassis_over_cpu();         // at least 76.20 over area A of a microATX board
[[nodiscard]] const Dimension& chassis_over_cpu_better();  // at least 88.90, preferred

/// Every row of this file, for the list of sources. Holes are not among them: they have sources, but no limits.
[[nodiscard]] std::vector<Dimension> rows();

}  // namespace baywright::standards::boards
