#pragma once
// The first line of the screen: the answer. It never moves.
#include "viewer/session.h"
#include "viewer/ui.h"

namespace baywright::viewer {

void draw_answer(Ui& ui, Session& session, const Rectangle& at);

}  // namespace baywright::viewer
