#include "render/creases.h"

#include <algorithm>
#include <cmath>
#include <glm/trigonometric.hpp>
#include <numeric>
#include <tuple>

namespace baywright::render {

using geometry::Vec3;

namespace {

/// Side `side` of triangle `triangle`: from its corner `side` to the next. Low and high are the vertices' indices.
struct Side {
  int low = 0;
  int high = 0;
  int triangle = 0;
  int side = 0;
};

/// Zero for what has no direction: a triangle so thin that its area is lost.
Vec3 unit(const Vec3& v) {
  const double length = glm::length(v);
  return length > 0.0 ? v / length : Vec3{0.0};
}

std::vector<Side> sides_of(std::span<const geometry::Mesh::Triangle> triangles) {
  std::vector<Side> sides;
  sides.reserve(3 * triangles.size());
  for (int t = 0; t < static_cast<int>(triangles.size()); ++t)
    for (int k = 0; k < 3; ++k) {
      const auto& triangle = triangles[static_cast<std::size_t>(t)];
      const auto [low, high] =
          std::minmax(triangle[static_cast<std::size_t>(k)], triangle[static_cast<std::size_t>((k + 1) % 3)]);
      sides.push_back({low, high, t, k});
    }
  std::sort(sides.begin(), sides.end(), [](const Side& a, const Side& b) {
    return std::tie(a.low, a.high, a.triangle, a.side) < std::tie(b.low, b.high, b.triangle, b.side);
  });
  return sides;
}

/// Corners of triangles, joined where they have one normal.
class Joined {
 public:
  explicit Joined(std::size_t count) : parent_(count) { std::iota(parent_.begin(), parent_.end(), 0); }
  std::size_t root(std::size_t i) {
    while (parent_[i] != i) i = parent_[i] = parent_[parent_[i]];
    return i;
  }
  void join(std::size_t a, std::size_t b) { parent_[root(a)] = root(b); }

 private:
  std::vector<std::size_t> parent_;
};

class Creased {
 public:
  explicit Creased(const geometry::Mesh& mesh)
      : vertices_(mesh.vertices()), triangles_(mesh.triangles()), joined_(3 * triangles_.size()) {
    for (std::size_t t = 0; t < triangles_.size(); ++t)
      faces_.push_back(unit(glm::cross(at(t, 1) - at(t, 0), at(t, 2) - at(t, 0))));
    find_edges();
    smooth();
  }

  [[nodiscard]] Shape shape(const geometry::Pose& pose) {
    Mesh mesh;
    for (std::size_t corner = 0; corner < 3 * triangles_.size(); ++corner) {
      const Vec3& sum = normals_[joined_.root(corner)];
      const double length = glm::length(sum);
      mesh.at.push_back(floats(pose.point(at(corner / 3, corner % 3))));
      mesh.normal.push_back(floats(pose.direction(length > 1e-6 ? sum / length : faces_[corner / 3])));
    }
    Strokes edges;
    for (const Side& edge : edges_)
      for (const int end : {edge.low, edge.high})
        edges.at.push_back(floats(pose.point(vertices_[static_cast<std::size_t>(end)])));
    return {std::make_shared<const Mesh>(std::move(mesh)), std::make_shared<const Strokes>(std::move(edges))};
  }

 private:
  [[nodiscard]] const Vec3& at(std::size_t triangle, std::size_t k) const {
    return vertices_[static_cast<std::size_t>(triangles_[triangle][k % 3])];
  }

  /// Corner of the side's triangle at the side's first or last vertex.
  [[nodiscard]] static std::size_t corner(const Side& side, int last) {
    return static_cast<std::size_t>(3 * side.triangle + (side.side + last) % 3);
  }

  [[nodiscard]] bool soft(const Side& a, const Side& b) const {
    const Vec3& one = faces_[static_cast<std::size_t>(a.triangle)];
    const Vec3& other = faces_[static_cast<std::size_t>(b.triangle)];
    return glm::dot(one, other) >= std::cos(glm::radians(crease_degrees)) && first_vertex(a) != first_vertex(b);
  }
  [[nodiscard]] int first_vertex(const Side& side) const {
    return triangles_[static_cast<std::size_t>(side.triangle)][static_cast<std::size_t>(side.side)];
  }

  void find_edges() {
    const std::vector<Side> sides = sides_of(triangles_);
    for (std::size_t i = 0; i < sides.size();) {
      std::size_t end = i + 1;
      while (end < sides.size() && sides[end].low == sides[i].low && sides[end].high == sides[i].high) ++end;
      if (end - i == 2 && soft(sides[i], sides[i + 1])) {
        joined_.join(corner(sides[i], 0), corner(sides[i + 1], 1));
        joined_.join(corner(sides[i], 1), corner(sides[i + 1], 0));
      } else {
        edges_.push_back(sides[i]);
      }
      i = end;
    }
  }

  /// Weighted by the angle of each triangle there, so that how a face is cut into triangles does not show.
  void smooth() {
    normals_.assign(3 * triangles_.size(), Vec3{0.0});
    for (std::size_t corner = 0; corner < normals_.size(); ++corner) {
      const std::size_t t = corner / 3;
      const Vec3 one = at(t, corner % 3 + 1) - at(t, corner % 3);
      const Vec3 other = at(t, corner % 3 + 2) - at(t, corner % 3);
      const double angle = std::atan2(glm::length(glm::cross(one, other)), glm::dot(one, other));
      normals_[joined_.root(corner)] += angle * faces_[t];
    }
  }

  std::span<const Vec3> vertices_;
  std::span<const geometry::Mesh::Triangle> triangles_;
  std::vector<Vec3> faces_;  // unit normals
  Joined joined_;
  std::vector<Vec3> normals_;  // sums, at the root of each corner
  std::vector<Side> edges_;
};

}  // namespace

std::array<float, 3> floats(const Vec3& v) {
  return {static_cast<float>(v.x), static_cast<float>(v.y), static_cast<float>(v.z)};
}

Shape shape_of_mesh(const geometry::Mesh& mesh, const geometry::Pose& pose) {
  return Creased(mesh).shape(pose);
}

}  // namespace baywright::render
