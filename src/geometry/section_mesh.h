#pragma once
// The cut and the shadow of a mesh. Internal to the room.
#include "geometry/section.h"

namespace baywright::geometry {

/// As `section`, of a mesh; none unless it is closed.
[[nodiscard]] std::vector<Region> mesh_section(const Mesh& mesh, const Pose& pose, const View& view);

/// As `cut_lines`, of a mesh.
[[nodiscard]] std::vector<std::pair<Vec2, Vec2>> mesh_cut_lines(const Mesh& mesh, const Pose& pose, const View& view);

/// As `shadow`, of a mesh, closed or not.
[[nodiscard]] std::vector<Region> mesh_shadow(const Mesh& mesh, const Pose& pose, const View& view);

}  // namespace baywright::geometry
