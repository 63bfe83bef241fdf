#pragma once
// A part looked at along an axis: what of its edges is seen and what is hidden.
#include "geometry/section.h"
#include "output/projection.h"
#include "parts/part.h"

#include <string>
#include <variant>
#include <vector>

namespace baywright::output {

/// A solid of a part at the nominal values of its dimensions.
struct PartSolid {
  std::string piece;  // solids of one piece show no line where their faces go on
  geometry::Placed placed;
  geometry::Bounds bounds;
};

/// Refused: a part without bodies, a body that is no solid at the nominal values.
[[nodiscard]] std::variant<std::vector<PartSolid>, geometry::Refusal> solids_of(const parts::Part& part);

struct PartView {
  geometry::View view;
  Window window;                                  // what the part fills
  std::vector<std::vector<Outline>> areas;        // view coordinates, farthest first; holes among the outlines of each
  std::vector<std::vector<geometry::Vec2>> seen;  // edges, open lines
  std::vector<std::vector<geometry::Vec2>> hidden;  // behind a nearer solid
  std::vector<std::vector<geometry::Vec2>> within;  // where solids of one piece go on: no edge
};

/// `view` along an axis of the part. Edges are exact for solids that stand along or square to it.
[[nodiscard]] PartView part_view(const std::vector<PartSolid>& solids, const geometry::View& view);

/// Three views in first angle, the plan in the middle as in the drawings of seatings: the front over it, the left side
/// to its right. The longer side of the part lies level.
struct ThreeViews {
  PartView front;
  PartView plan;
  PartView left;
};
[[nodiscard]] ThreeViews three_views(const std::vector<PartSolid>& solids);

/// A drive's holes are threads in its base, not through it.
[[nodiscard]] bool holes_in_base(const parts::Part& part);

/// Whether the plan shows material all round the hole, so that its rim is an edge of the part.
[[nodiscard]] bool has_rim(const PartView& plan, const geometry::Vec2& centre, double diameter);

}  // namespace baywright::output
