#include "viewer/grid_step.h"

namespace baywright::viewer {

GridCell grid_step(GridCell at, std::string_view key, std::size_t drives, std::size_t places) {
  if (drives == 0 || places == 0) return at;
  if (key == "Up" && at.drive > 0) --at.drive;
  if (key == "Down" && at.drive + 1 < drives) ++at.drive;
  if (key == "Left" && at.place > 0) --at.place;
  if (key == "Right" && at.place + 1 < places) ++at.place;
  if (key == "Home") at = {0, 0};
  if (key == "End") at = {drives - 1, places - 1};
  return at;
}

}  // namespace baywright::viewer
