#pragma once
// A whole picture of a seating, which answers without a word beside it: a band with the verdict, below it what is seen.
#include "output/answer_words.h"
#include "render/canvas.h"
#include "render/look.h"

#include <optional>
#include <string>
#include <variant>

namespace baywright::render {

struct Wish {
  std::optional<Side> side;  // none: `whole`, or square on the section
  bool section = false;
  bool apart = false;
  std::optional<std::string> clearance_of;
  bool dark = false;
};

/// The look that shows the drive and what is near it at a useful size, whatever the size of the machine.
/// `aspect`: width by height of what is below the band.
[[nodiscard]] Look look_at(const Model& model, const fit::Seating& seating, const Wish& wish, double aspect);

/// How high the band is, pixels, in a picture of that size.
[[nodiscard]] int band_height(int width, int height);

/// Draws the look below the band. Refused, in words for people, where letters cannot be drawn.
[[nodiscard]] std::variant<Image, std::string> picture_of(Canvas& canvas, const Model& model, const Look& look,
                                                          const output::Answer& answer, int width, int height);

}  // namespace baywright::render
