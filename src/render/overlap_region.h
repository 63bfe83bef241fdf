#pragma once
// The room that two solids both take up, as a solid of its own.
#include "geometry/solid.h"
#include "render/frame.h"

namespace baywright::render {

struct SharedRoom {
  std::shared_ptr<const Mesh> mesh;      // closed, normals outward; null: they share no room, or see below
  std::shared_ptr<const Strokes> edges;  // where its faces meet at more than 30 degrees
  double volume = 0.0;                   // mm³
};

/// Its faces are the faces of each that lie within the other; a face that both have in one plane counts once. Cylinders
/// are taken as prisms with the corners of a drawn circle. On a grid of `geometry::thinnest_mm`. None for a mesh
/// without an inside, and none where more than `most_faces` faces would have to be cut.
[[nodiscard]] SharedRoom shared_room(const geometry::Placed& a, const geometry::Placed& b);

inline constexpr std::size_t most_faces = 20000;

}  // namespace baywright::render
