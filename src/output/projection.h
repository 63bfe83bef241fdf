#pragma once
// A scene cut by a plane and seen through a window, ready to be drawn: areas to fill and edges to draw, where a part
// that goes on beyond the window ends in a break line.
#include "fit/scene.h"
#include "geometry/section.h"
#include "output/sheet.h"

#include <string>
#include <vector>

namespace baywright::output {

/// A rectangle in view coordinates, mm: low left and high right, since views have y up.
struct Window {
  Vec2 low{0.0};
  Vec2 high{0.0};
};

/// Where a view stands on the sheet: the paper point of its origin, and its scale, paper mm per mm.
struct Placement {
  Vec2 origin{0.0};
  double scale = 1.0;

  [[nodiscard]] Vec2 at(const Vec2& seen) const { return {origin.x + scale * seen.x, origin.y - scale * seen.y}; }
  [[nodiscard]] Box box(const Window& window) const {
    return {at({window.low.x, window.high.y}), at({window.high.x, window.low.y})};
  }
};

struct Seen {
  int element = -1;
  bool cut = false;                       // else it is what is seen of a part behind the plane
  double depth = 0.0;                     // of its nearest point toward the viewer
  std::vector<Outline> outlines;          // view coordinates, within the window; holes among them. None where a mesh
                                          // without an inside is cut: that has edges only, which may leave the window
  std::vector<std::vector<Vec2>> edges;   // of the part
  std::vector<std::vector<Vec2>> breaks;  // where the window ends it
};

/// What the plane cuts and, if asked for, what lies behind it, farthest first; the cuts come last.
/// `scale` is that of the drawing, so that break lines look alike at any. Edges between solids of one piece (same
/// `piece` name) are left out.
[[nodiscard]] std::vector<Seen> cut_scene(const fit::Scene& scene, const geometry::View& view, const Window& window,
                                          double scale, bool behind);

/// The shadows of all elements on the view's plane, farthest first.
[[nodiscard]] std::vector<Seen> seen_from(const fit::Scene& scene, const geometry::View& view, const Window& window,
                                          double scale);

/// The bounds of an element in view coordinates.
[[nodiscard]] Window bounds_in(const geometry::View& view, const fit::Element& element);

/// How far toward the viewer it begins and ends, mm from the view's plane.
struct Depths {
  double low = 0.0;
  double high = 0.0;
};
[[nodiscard]] Depths depths_in(const geometry::View& view, const fit::Element& element);

/// Solids that are of one piece: those of a part, but that a card and the chips on it are told apart.
[[nodiscard]] std::string piece(const fit::Scene& scene, int element);

/// What of the outline lies in the convex, counter-clockwise `clip`. An outline that is not convex may keep edges of no
/// width along the clip's sides, which change no area.
[[nodiscard]] Outline clipped(Outline outline, const Outline& clip);

}  // namespace baywright::output
