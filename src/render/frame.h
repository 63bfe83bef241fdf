#pragma once
// What one picture shows, ready to be drawn: triangles and lines in world coordinates, no drive, no file, no OpenGL. A
// canvas draws it (render/canvas.h); tests read it as it is.
#include "geometry/vectors.h"
#include "render/camera.h"

#include <array>
#include <cstdint>
#include <memory>
#include <optional>
#include <vector>

namespace baywright::render {

/// sRGB, 0..1, and how much of it covers what lies behind.
struct Colour {
  float red = 0.0F;
  float green = 0.0F;
  float blue = 0.0F;
  float cover = 1.0F;
};

/// Three corners a triangle, counter-clockwise seen from outside. Shared, never changed after it is made: a canvas
/// keeps what it has uploaded by its address.
struct Mesh {
  std::vector<std::array<float, 3>> at;      // mm
  std::vector<std::array<float, 3>> normal;  // unit, one a corner; may be left out where `lit` is false
  std::vector<Colour> colour;                // one a corner, or none: the surface's own
};

/// Two ends a line.
struct Strokes {
  std::vector<std::array<float, 3>> at;  // mm
  /// Normals of the two faces that meet there, two a line, or none at all. A line is then drawn only where one of them
  /// looks at the eye and the other does not: the outline of a round surface. Zero vectors: always drawn.
  std::vector<std::array<float, 3>> faces{};
};

enum class Pattern { none, dots, grid };  // in screen space, a pitch of 12 pixels at scale 1

struct Surface {
  std::shared_ptr<const Mesh> mesh;
  geometry::Vec3 shift{0.0};  // moved by this, mm (apart, put in)
  std::uint32_t id = 0;       // what `Ids` give back; 0: not to be picked
  Colour colour;              // cover below 1: seen through
  bool lit = true;            // shaded by its normals; else flat (caps, overlaps)
  bool cut = true;            // by the frame's plane
  bool over = false;          // drawn over everything, as if the parts before it were glass
  bool shades = true;         // throws the soft shadow
  Pattern pattern = Pattern::none;
  Colour pattern_colour;
};

struct Edges {
  std::shared_ptr<const Strokes> strokes;
  geometry::Vec3 shift{0.0};
  Colour colour;
  float width = 1.0F;  // pixels at scale 1
  bool cut = true;
  bool over = false;
  bool dashed = false;
};

struct Plane {
  geometry::Vec3 point{0.0};
  geometry::Vec3 normal{0.0, 0.0, 1.0};  // unit, toward the viewer: what lies on this side is left away
};

struct Frame {
  Camera camera;
  geometry::Bounds room;  // all that is shown, mm
  Colour background;
  float scale = 1.0F;  // of lines and patterns: pixels for what is one pixel at scale 1
  std::optional<Plane> plane;
  std::optional<Plane> ground;  // where the soft shadow falls, below what is shown; none: no shadow
  Colour shadow;                // its darkest
  bool moving = false;          // soon followed by another: a software driver then takes one sample a pixel
  std::vector<Surface> surfaces;
  std::vector<Edges> edges;
};

}  // namespace baywright::render
