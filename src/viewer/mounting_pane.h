#pragma once
// The page for the bench: the steps of mounting with their cautions, and what they take.
#include "viewer/mounting_page.h"
#include "viewer/scroll.h"
#include "viewer/session.h"
#include "viewer/ui.h"

#include <memory>

namespace baywright::viewer {

class MountingPane {
 public:
  void draw(Ui& ui, Session& session, const Rectangle& screen);
  void closed() { scroll_.to_top(); }

 private:
  void update(const Session& session);
  /// Lays it out from (x, y), and draws it if asked. Returns its height.
  float flow(const Ui& ui, float x, float y, float room, bool drawn) const;

  MountingPage page_;
  std::shared_ptr<const Shown> of_;  // what the page was made of
  Rest rest_;
  Scroll scroll_;
};

}  // namespace baywright::viewer
