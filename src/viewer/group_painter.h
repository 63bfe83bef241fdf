#pragma once
// Draws an output::Group into a list of Dear ImGui: marks and notes look in the window as they do in pictures.
#include "output/sheet.h"
#include "viewer/theme.h"

namespace baywright::viewer {

/// Units of the group are those of the window; its origin comes to (x, y). `halo`: round letters that ask for one.
void paint(const output::Group& group, ImDrawList& list, const Fonts& fonts, float x, float y, ImU32 halo);

}  // namespace baywright::viewer
