#pragma once
// How a model is to be looked at, and the frame that shows it so.
#include "geometry/section.h"
#include "output/sheet.h"
#include "render/camera.h"
#include "render/frame.h"
#include "render/model.h"

#include <optional>
#include <set>
#include <string>

namespace baywright::render {

struct Look {
  Camera camera;
  bool dark = false;
  double scale = 1.0;                       // of lines, letters and patterns, 0.75..3
  std::optional<geometry::View> cut;        // section plane, its normal toward the viewer
  double apart = 0.0;                       // 0 together .. 1 apart, in the mounting order
  double put_in = 1.0;                      // 0 before the way in .. 1 seated
  std::optional<std::size_t> finding;       // whose gap or overlap is in focus; none: all overlaps, the deciding gap
  std::optional<std::string> clearance_of;  // a part: its surface is coloured by the distance to everything else
  std::set<std::string> hidden;             // parts
  std::set<std::string> ghosted;            // parts shown as glass
  std::optional<int> chosen;                // element: outlined
};

/// The section through the gap of a finding, or along the drive's middle.
[[nodiscard]] geometry::View cut_through(const Model& model, const fit::Seating& seating,
                                         std::optional<std::size_t> finding);

/// The gap that is dimensioned: that of `look.finding`, else the deciding one. Null: none, or things do not stand where
/// they are measured.
[[nodiscard]] const Measured* focused(const Model& model, const Look& look);

[[nodiscard]] Frame frame_of(const Model& model, const Look& look);

/// What is written over the picture, in pixels from its upper left corner: gap dimensions with their figures, the scale
/// bar (true views), the scale of a clearance map. Text is `look.scale` times 13 pixels or more.
[[nodiscard]] output::Group notes_on(const Model& model, const Look& look, int width, int height);

}  // namespace baywright::render
