#pragma once
// A solid as triangles and edges to look at.
#include "geometry/solid.h"
#include "render/frame.h"

namespace baywright::render {

/// Chord error of a round surface, mm, as long as it has 24 to 128 sides: finer than a pixel of any picture of a drive.
inline constexpr double seen_chord_mm = 0.02;
/// Faces that meet at less than this, degrees, are one curved surface to the eye: no edge, smooth normals.
inline constexpr double crease_degrees = 30.0;

struct Shape {
  std::shared_ptr<const Mesh> mesh;  // normals flat on flat faces, smooth over soft edges
  std::shared_ptr<const Strokes>
      edges;  // where faces meet at more than `crease_degrees`, open borders, outlines of round sides
};

/// World coordinates.
[[nodiscard]] Shape shape_of(const geometry::Placed& placed);

}  // namespace baywright::render
