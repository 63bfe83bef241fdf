#pragma once
// Where the arrows lead in the grid of drives and places. No toolkit.
#include <cstddef>
#include <string_view>

namespace baywright::viewer {

struct GridCell {
  std::size_t drive = 0;
  std::size_t place = 0;
  bool operator==(const GridCell&) const = default;
};

/// From a cell by a key, "Up" to "Right", "Home" to "End"; at the edge, and by any other key, it stays.
[[nodiscard]] GridCell grid_step(GridCell at, std::string_view key, std::size_t drives, std::size_t places);

}  // namespace baywright::viewer
