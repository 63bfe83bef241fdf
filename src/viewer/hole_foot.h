#pragma once
// The foot while holes are placed: the order of drilling in words, what to do first so that nobody is hurt, the
// template.
#include "viewer/placing.h"
#include "viewer/ui.h"

namespace baywright::viewer {

void draw_hole_foot(Ui& ui, Session& session, const Placing& placing, const Rectangle& at);

}  // namespace baywright::viewer
