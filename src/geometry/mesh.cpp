#include "geometry/mesh.h"

#include "geometry/mesh_data.h"
#include "geometry/triangle_side.h"

#include <cmath>

namespace baywright::geometry {

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
  return data_->closed;
}
const Bounds& Mesh::bounds() const {
  return data_->box;
}
double Mesh::volume() const {
  return data_->volume;
}

bool Mesh::contains(const Vec3& p) const {
  if (!data_->closed) return false;
  bool inside = false;
  along_x(data_->tree, p, [&](int i) { inside ^= ray_meets(p, data_->tree.at(i)); });
  return inside;
}

}  // namespace baywright::geometry
