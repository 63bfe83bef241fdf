#pragma once
// Drives x places as one grid of marks. Choosing a cell changes the whole screen.
#include "viewer/session.h"
#include "viewer/ui.h"

namespace baywright::viewer {

void draw_grid(Ui& ui, Session& session, const Rectangle& screen);

}  // namespace baywright::viewer
