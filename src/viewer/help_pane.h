#pragma once
// All keys, from the table of actions, and what is done with the hand.
#include "viewer/scroll.h"
#include "viewer/session.h"
#include "viewer/ui.h"

namespace baywright::viewer {

class HelpPane {
 public:
  void draw(Ui& ui, Session& session, const Rectangle& screen);
  void closed() { scroll_.to_top(); }

 private:
  Scroll scroll_;
};

}  // namespace baywright::viewer
