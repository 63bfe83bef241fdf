#pragma once
// What a section plane cuts, as flat areas with their outlines and hatches.
#include "geometry/section.h"
#include "render/frame.h"

#include <string>
#include <vector>

namespace baywright::render {

/// The exact cut of one thing.
struct Cap {
  std::size_t thing = 0;                                         // index in the model
  std::vector<geometry::Region> regions;                         // view coordinates
  std::vector<std::pair<geometry::Vec2, geometry::Vec2>> lines;  // of a surface without an inside: no area
};

/// How the hatch of a part is laid: neighbours differ.
struct Hatch {
  double degrees = 45.0;
  double pitch = 1.0;  // times the usual
};

/// One a cap. Caps of parts (by name) that come near each other get different ones, those of one part the same.
[[nodiscard]] std::vector<Hatch> hatches(const std::vector<Cap>& caps, const std::vector<std::string>& parts);

[[nodiscard]] Mesh area_mesh(const std::vector<geometry::Region>& regions, const geometry::View& view);
[[nodiscard]] Strokes outline_strokes(const std::vector<geometry::Region>& regions, const geometry::View& view);
[[nodiscard]] Strokes hatch_strokes(const std::vector<geometry::Region>& regions, const geometry::View& view,
                                    const Hatch& hatch, double pitch);

}  // namespace baywright::render
