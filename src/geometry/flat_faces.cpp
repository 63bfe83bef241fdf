#include "geometry/flat_faces.h"

#include "geometry/triangulation.h"

#include <cmath>
#include <map>

namespace baywright::geometry {

namespace {

/// Square to the loop, twice its area long (M. E. Newell's sum over the sides).
Vec3 normal_of(const FlatFaces::Loop& loop) {
  Vec3 sum(0.0);
  for (std::size_t i = 0; i < loop.size(); ++i)
    sum += glm::cross(loop[i] - loop[0], loop[(i + 1) % loop.size()] - loop[0]);
  return sum;
}

}  // namespace

void FlatFaces::add(const Loop& outline, const std::vector<Loop>& holes) {
  const Vec3 normal = normal_of(outline);
  int axis = 2;  // seen along the axis nearest to the normal, corners keep two of their figures as they are
  for (int i = 0; i < 2; ++i)
    if (std::abs(normal[i]) > std::abs(normal[axis])) axis = i;
  std::map<std::pair<double, double>, Vec3> at;
  const auto flat = [&](const Loop& loop) {
    Outline out;
    for (const Vec3& p : loop) {
      out.emplace_back(p[(axis + 1) % 3], p[(axis + 2) % 3]);
      at.emplace(std::pair(out.back().x, out.back().y), p);
    }
    return out;
  };
  const Outline border = flat(outline);
  std::vector<Outline> inner;
  inner.reserve(holes.size());
  for (const Loop& hole : holes) inner.push_back(flat(hole));
  const std::vector<Vec2> cut = triangles(border, inner);
  for (std::size_t i = 0; i + 2 < cut.size(); i += 3)
    for (const std::size_t k : {0U, 1U, 2U}) {
      const Vec2& p = cut[i + (normal[axis] > 0.0 ? k : 2 - k)];
      corners_.push_back(at.at({p.x, p.y}));
    }
}

std::variant<Mesh, Refusal> FlatFaces::mesh() const {
  std::vector<Mesh::Triangle> triangles;
  for (int i = 0; i + 2 < static_cast<int>(corners_.size()); i += 3) triangles.push_back({i, i + 1, i + 2});
  return Mesh::make(corners_, std::move(triangles));
}

}  // namespace baywright::geometry
