#pragma once
// What would make it fit, as tiles along the foot; where all fits, how much room is left.
#include "viewer/session.h"
#include "viewer/ui.h"

namespace baywright::viewer {

class FootPane {
 public:
  void draw(Ui& ui, Session& session, const Rectangle& at);

 private:
  void draw_tiles(Ui& ui, Session& session, const plans::Search& search, const Rectangle& at);
  void draw_room(Ui& ui, const Session& session, const Rectangle& at);

  std::size_t first_ = 0;  // tile at the left, where not all have room
  bool pointed_ = false;   // a tile is shown because the mouse is on it
};

}  // namespace baywright::viewer
