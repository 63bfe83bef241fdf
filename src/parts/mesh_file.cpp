#include "parts/mesh_file.h"

#include <algorithm>
#include <fstream>
#include <system_error>
#include <utility>

namespace baywright::parts {

namespace {

constexpr std::uintmax_t largest_file = 256u << 20;  // bytes: two million triangles of text at 130 bytes each

[[noreturn]] void stop_file(const std::string& file, const std::string& what, const std::string& right) {
  throw Stop{{file, 0, 0, what, right}};
}

std::string ending_of(const std::filesystem::path& path) {
  std::string ending = path.extension().string();
  for (char& c : ending)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return ending;
}

std::string read_bytes(const std::filesystem::path& path) {
  const std::string file = path.string();
  std::error_code failed;
  const auto status = std::filesystem::status(path, failed);
  if (!std::filesystem::exists(status))
    stop_file(file, "there is no such file", "a model's path is beside this file's");
  if (std::filesystem::is_directory(status)) stop_file(file, "this is a folder", "give a file inside it");
  if (!std::filesystem::is_regular_file(status)) stop_file(file, "this is no plain file", "give an OBJ or STL file");
  const auto size = std::filesystem::file_size(path, failed);
  if (failed || size > largest_file)
    stop_file(file, "the file has more than 256 MB", "bring the model with fewer triangles");
  std::ifstream in(path, std::ios::binary);
  std::string bytes(static_cast<std::size_t>(size), '\0');
  if (!in || !in.read(bytes.data(), static_cast<std::streamsize>(size)))
    stop_file(file, "the file cannot be read", "check its permissions");
  return bytes;
}

/// Vertices that no triangle uses would count in the size.
void drop_unused(RawMesh& mesh) {
  std::vector<int> place(mesh.vertices.size(), -1);
  std::vector<geometry::Vec3> used;
  for (auto& triangle : mesh.triangles)
    for (int& corner : triangle) {
      int& at = place[static_cast<std::size_t>(corner)];
      if (at < 0) {
        at = static_cast<int>(used.size());
        used.push_back(mesh.vertices[static_cast<std::size_t>(corner)]);
      }
      corner = at;
    }
  mesh.vertices = std::move(used);
}

}  // namespace

RawMesh read_mesh_bytes(std::string_view bytes, const std::string& file) {
  const std::string ending = ending_of(file);
  if (ending != ".obj" && ending != ".stl")
    stop_file(file, "a model in this format is not read", "bring it as .obj or .stl");
  if (bytes.empty()) stop_file(file, "the file is empty", "bring the model again from where it was drawn");
  RawMesh mesh = ending == ".obj" ? read_obj(bytes, file) : read_stl(bytes, file);
  if (mesh.triangles.empty())
    stop_file(file, "the file has no triangles", "bring the model as a surface of triangles, not as lines or curves");
  drop_unused(mesh);
  return mesh;
}

RawMesh read_mesh_file(const std::filesystem::path& path) {
  return read_mesh_bytes(read_bytes(path), path.string());
}

}  // namespace baywright::parts
