#pragma once
// The surface of a mesh to look at: which of its edges are sharp, and normals that are smooth over the others. Internal
// to the room.
#include "geometry/mesh.h"
#include "render/shape.h"

namespace baywright::render {

[[nodiscard]] std::array<float, 3> floats(const geometry::Vec3& v);

[[nodiscard]] Shape shape_of_mesh(const geometry::Mesh& mesh, const geometry::Pose& pose);

}  // namespace baywright::render
