#pragma once
// For a customer: which drive of the shortlist to take where one is open, the answer large, before and after side by
// side, and how the drive goes in. Nothing else.
#include "viewer/scene_pane.h"
#include "viewer/session.h"
#include "viewer/ui.h"

namespace baywright::viewer {

/// `before` and `after` draw the scenes; `after` only where something would make it fit.
void draw_customer(Ui& ui, Session& session, ScenePane& before, ScenePane& after, const Rectangle& all, float dense,
                   double now);

}  // namespace baywright::viewer
