#include "geometry/mesh.h"

#include "geometry/solid.h"

namespace baywright::geometry {

struct Mesh::Data {
  std::vector<Vec3> vertices;
  std::vector<Triangle> triangles;
  std::vector<MeshFlaw> flaws;
  Bounds box = Bounds::empty();
};

std::variant<Mesh, Refusal> Mesh::make(std::vector<Vec3> vertices, std::vector<Triangle> triangles) {
  auto data = std::make_shared<Data>();
  data->vertices = std::move(vertices);
  data->triangles = std::move(triangles);
  for (const Vec3& v : data->vertices) data->box.add(v);
  return Mesh{std::move(data)};
}
std::span<const Vec3> Mesh::vertices() const {
  return data_->vertices;
}
std::span<const Mesh::Triangle> Mesh::triangles() const {
  return data_->triangles;
}
const std::vector<MeshFlaw>& Mesh::flaws() const {
  return data_->flaws;
}
bool Mesh::closed() const {
  return false;
}
const Bounds& Mesh::bounds() const {
  return data_->box;
}
double Mesh::volume() const {
  return 0.0;
}
bool Mesh::contains(const Vec3&) const {
  return false;
}

}  // namespace baywright::geometry
