#pragma once
// Questions that stop everything until they are answered: what becomes of changes, of a recovery copy, of a file that
// somebody else changed.
#include "viewer/session.h"
#include "viewer/ui.h"

namespace baywright::viewer {

/// `session.page` is one of `unsaved`, `recovery`, `conflict`.
void draw_question(Ui& ui, Session& session, const Rectangle& screen);

}  // namespace baywright::viewer
