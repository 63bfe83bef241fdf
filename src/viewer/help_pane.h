#pragma once
// What each key does, from the table of actions.
#include "viewer/session.h"
#include "viewer/ui.h"

namespace baywright::viewer {

void draw_help(Ui& ui, Session& session, const Rectangle& screen);

}  // namespace baywright::viewer
