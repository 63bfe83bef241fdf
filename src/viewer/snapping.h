#pragma once
// Where a point that follows the hand comes to rest on a plan, and why, in words. No toolkit.
#include "viewer/hole_plan.h"

#include <optional>
#include <string>
#include <vector>

namespace baywright::viewer {

/// A place that both figures take at once: a hole of the drive.
struct SnapPoint {
  Vec2 at{0.0};
  std::string words;  // "row 1 of flat drive"
};
/// One figure, on its axis: in line with another hole, as far from one edge as from the other.
struct SnapLine {
  double at = 0.0;
  std::string words;
};

/// What there is to come to rest at. mm from the part's left and lower edge.
struct SnapTargets {
  Vec2 size{0.0};  // of the part
  std::vector<SnapPoint> points;
  std::vector<SnapLine> xs;
  std::vector<SnapLine> ys;
  bool corners = false;  // as far from an upright edge as from a level one counts too
};

struct Snapped {
  Vec2 at{0.0};
  std::string words;          // "on row 1 of flat drive"; "x in line with hole 3; y on whole mm"
  std::optional<double> x{};  // a line through there is worth showing: x of an upright one, y of a level one
  std::optional<double> y{};
};

/// Points win within `reach` mm, then lines, each axis for itself, then the grid (1 or 0.1 mm).
[[nodiscard]] Snapped snapped(const Vec2& wanted, const SnapTargets& targets, double grid, double reach);

/// What a mark of the plan can come to rest at: a hole at the holes of the drive (of the one shown where its form is
/// the place's, else of another one of the build, else of the standard), in line with other holes, in the middle
/// between edges, as far from its edge as another hole from the opposite one; a place so that its holes are in line
/// with others', or in the middle.
[[nodiscard]] SnapTargets snap_targets(const HolePlan& plan, const HoleMark& mark, const Shown& shown);

}  // namespace baywright::viewer
