#pragma once
// All that was found of a seating, as a list. Choosing one turns the scene and the column to it.
#include "viewer/session.h"
#include "viewer/ui.h"

namespace baywright::viewer {

class FindingsPane {
 public:
  void draw(Ui& ui, Session& session, const Rectangle& at);

 private:
  std::size_t first_ = 0;  // at the top
};

}  // namespace baywright::viewer
