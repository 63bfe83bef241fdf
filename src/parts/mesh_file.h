#pragma once
// Mesh files: OBJ, and STL as text or binary. What says where something is wrong is FILE:LINE:COL for text, and
// FILE: byte N for binary.
#include "parts/mesh_bytes.h"

#include <filesystem>
#include <string_view>

namespace baywright::parts {

/// The triangles of a file, at least one, with the vertices that they use, in the file's own unit and axes; polygons
/// are cut. The name's ending (.obj, .stl, any case) says which format. Throws Stop: missing, a folder, no plain file,
/// larger than 256 MB, no triangles, and all that the format does not allow.
[[nodiscard]] RawMesh read_mesh_file(const std::filesystem::path& path);

/// The same for the file's bytes; `file` is what messages name, and its ending counts.
[[nodiscard]] RawMesh read_mesh_bytes(std::string_view bytes, const std::string& file);

}  // namespace baywright::parts
