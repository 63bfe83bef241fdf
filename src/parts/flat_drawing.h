#pragma once
// What a DXF or SVG file draws in its plane, as far as an outline is made of it: strokes and circles, x to the right
// and y up.
#include "geometry/solid.h"
#include "parts/part.h"

#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace baywright::parts {

/// Of a circle: from an angle on, counter-clockwise where `sweep` is positive. Radians.
struct Arc {
  geometry::Vec2 centre{0.0};
  double radius = 0.0;
  double start = 0.0;
  double sweep = 0.0;
};

/// A straight line from `from` to `to`, or an arc between them. The file's own units.
struct Stroke {
  geometry::Vec2 from{0.0};
  geometry::Vec2 to{0.0};
  std::optional<Arc> arc;
  int line = 0;  // of the file
};

struct DrawnCircle {
  geometry::Vec2 centre{0.0};
  double radius = 0.0;
  int line = 0;
};

struct FlatDrawing {
  std::vector<Stroke> strokes;
  std::vector<DrawnCircle> circles;
  std::vector<Stroke> bends;               // DXF: straight lines on a layer named BEND
  std::optional<double> unit_mm;           // mm of one of its units; none: the file does not say
  std::map<std::string, int> passed_over;  // what was there and is not understood, by its name
};

/// ASCII DXF, R12 to 2018: LINE, ARC, CIRCLE, LWPOLYLINE and POLYLINE (with bulges) of the model, on any layer;
/// what is on a layer named BEND, in capitals or not, must be a LINE. Throws Stop: a line that is no group code, a
/// figure that is none, a file that ends before its EOF, an entity without its points or drawn from behind, more than
/// `most_strokes`.
[[nodiscard]] FlatDrawing read_flat_dxf(std::string_view text, const std::string& file);

/// SVG: path (M L H V Z A C), rect, circle, polygon, polyline and line, in groups, with transforms. `unit_mm` from
/// width, height and viewBox where width has mm, cm or in. Throws Stop: tags that do not close, a figure or a path
/// command that is not understood, width and height of different scales, more than `most_strokes`.
[[nodiscard]] FlatDrawing read_flat_svg(std::string_view text, const std::string& file);

/// Of one drawing: many times a panel with a grille.
inline constexpr std::size_t most_strokes = 5000;
/// Ends this near are joined, mm.
inline constexpr double joined_mm = 0.01;
/// Curves become corners on them with chords no farther from them than this, mm; drawn circles, which are holes mostly,
/// and thereby a little smaller than drawn, than that: each corner costs time in every check.
inline constexpr double curved_mm = 0.01;
inline constexpr double hole_mm = 0.05;

struct FlatOutline {
  geometry::Outline outline;             // counter-clockwise, mm
  std::vector<geometry::Outline> holes;  // mm
  std::vector<Hole> round;               // those of the holes that are circles
  std::vector<Bend> bends;
  std::map<std::string, int> passed_over;
};

/// The loop of the largest area with the others as its holes; round holes' corners lie on the circle, so that no hole
/// is larger than drawn. `unit_mm` counts in place of the drawing's own. Throws Stop: no unit, nothing drawn, an
/// outline that is open (where), lines that branch, what crosses or touches.
[[nodiscard]] FlatOutline outline_of(const FlatDrawing& drawing, const std::string& file,
                                     std::optional<double> unit_mm);

/// From a file whose name ends in .dxf or .svg, any case. Throws Stop.
[[nodiscard]] FlatOutline read_outline_file(const std::filesystem::path& path, std::optional<double> unit_mm);

}  // namespace baywright::parts
