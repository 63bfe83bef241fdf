#pragma once
// All keys, from the table of actions, and what is done with the hand.
#include "viewer/session.h"
#include "viewer/ui.h"

namespace baywright::viewer {

class HelpPane {
 public:
  void draw(Ui& ui, Session& session, const Rectangle& screen);
  void closed() { scrolled_ = 0.0F; }

 private:
  float scrolled_ = 0.0F;  // pixels
};

}  // namespace baywright::viewer
