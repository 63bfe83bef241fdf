#pragma once
// The colours of a picture, light and dark. Parts are quiet greys, so that what a verdict colours is what the eye meets
// (output/mark.h has the verdicts' colours).
#include "fit/verdict.h"
#include "render/frame.h"
#include "render/model.h"

#include <string>

namespace baywright::render {

struct Palette {
  std::string background;
  std::string band;   // behind words beside the picture
  std::string ink;    // letters
  std::string quiet;  // letters of less weight, at least 4.5:1
  std::string edge;   // of the machine's parts
  std::string drive_edge;
  std::string hatch;
  std::string shadow;
};
[[nodiscard]] const Palette& palette(bool dark);

[[nodiscard]] Colour colour_of(Material material, bool dark);

/// The unlit fill of a cut part: lighter than its surface, so that the hatch is seen.
[[nodiscard]] Colour cut_colour_of(Material material, bool dark);

/// "#RRGGBB"; black for anything else.
[[nodiscard]] Colour colour_of(const std::string& hex, float cover = 1.0F);
[[nodiscard]] std::string hex(const Colour& colour);

}  // namespace baywright::render
