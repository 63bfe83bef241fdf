#pragma once
// Where the bands of a stack column stand on the screen, and what a drag of so many pixels makes of a length. No
// toolkit.
#include "output/stack_column.h"
#include "viewer/layout.h"

#include <optional>
#include <vector>

namespace baywright::viewer {

/// A band, or the gap, with the place of its label.
struct StackBox {
  std::size_t band = 0;  // index in the column's `open` or `close`
  bool open = false;     // stands in the narrow bar at the left
  Rectangle at;
  float end = 0.0F;    // y of its far end, from the base: there stand its whiskers, there it is dragged
  float label = 0.0F;  // y of the top of its label
  float label_height = 0.0F;
};

struct StackLayout {
  std::vector<StackBox> boxes;
  Rectangle gap;           // between the two ends; an overlap lies on the wide bar
  float gap_label = 0.0F;  // y of the top of the gap's label
  float base = 0.0F;       // y
  float open_end = 0.0F;   // y: where the narrow bar ends, which is what the gap counts from
  float asked = 0.0F;      // y: where the wide bar may end at most
  float per_mm = 1.0F;     // pixels
  bool down = false;       // the open end is below
};

/// Heights of the labels, pixels: one a band, and the gap's.
struct LabelHeights {
  std::vector<float> open;
  std::vector<float> close;
  float gap = 0.0F;
};

/// Room for the labels at the left and at the right of the bars, and where the bars stand: x and width of the narrow
/// and of the wide one.
struct StackColumns {
  float left = 0.0F;    // width of the labels at the left
  float narrow = 0.0F;  // x
  float narrow_width = 0.0F;
  float wide = 0.0F;  // x
  float wide_width = 0.0F;
  float right = 0.0F;  // x of the labels at the right
  float right_width = 0.0F;
};
[[nodiscard]] StackColumns columns_of(const Rectangle& area, float scale);

/// `column` is not refused. `hold`: pixels a mm that are kept, so that a band follows the hand; none: as large as there
/// is room.
[[nodiscard]] StackLayout layout_of(const output::StackColumn& column, const Rectangle& area, float scale, bool down,
                                    const LabelHeights& labels, std::optional<float> hold);

}  // namespace baywright::viewer
