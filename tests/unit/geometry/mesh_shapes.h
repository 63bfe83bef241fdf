#pragma once
// Meshes whose volume and distances are known by hand.
#include "geometry/mesh.h"
#include "geometry/solid.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <variant>
#include <vector>

namespace baywright::geometry::scenes {

struct Surface {
  std::vector<Vec3> vertices;
  std::vector<Mesh::Triangle> triangles;

  void add(const Surface& other, const Vec3& shift = Vec3{0.0}) {
    const int first = static_cast<int>(vertices.size());
    for (const Vec3& v : other.vertices) vertices.push_back(v + shift);
    for (const Mesh::Triangle& t : other.triangles) triangles.push_back({t[0] + first, t[1] + first, t[2] + first});
  }
  [[nodiscard]] Surface inverted() const {
    Surface other = *this;
    for (Mesh::Triangle& t : other.triangles) std::swap(t[1], t[2]);
    return other;
  }
  [[nodiscard]] Mesh mesh() const { return std::get<Mesh>(Mesh::make(vertices, triangles)); }
  [[nodiscard]] Solid solid() const { return Solid::mesh(mesh()); }
};

/// A convex base, counter-clockwise, from z = 0 to `height`.
inline Surface prism_surface(const Outline& base, double height) {
  Surface made;
  const int n = static_cast<int>(base.size());
  for (const double z : {0.0, height}) {
    for (const Vec2& p : base) made.vertices.emplace_back(p, z);
  }
  for (int i = 1; i + 1 < n; ++i) {
    made.triangles.push_back({0, i + 1, i});
    made.triangles.push_back({n, n + i, n + i + 1});
  }
  for (int i = 0; i < n; ++i) {
    const int j = (i + 1) % n;
    made.triangles.push_back({i, j, n + j});
    made.triangles.push_back({i, n + j, n + i});
  }
  return made;
}

inline Surface box_surface(const Vec3& size) {
  return prism_surface({{0, 0}, {size.x, 0}, {size.x, size.y}, {0, size.y}}, size.z);
}

/// Of a torus with `around` by `across` corners.
inline Surface torus_surface(double large, double small, int around, int across) {
  Surface made;
  for (int i = 0; i < around; ++i) {
    for (int j = 0; j < across; ++j) {
      const double u = 2 * std::numbers::pi * i / around;
      const double v = 2 * std::numbers::pi * j / across;
      const double r = large + small * std::cos(v);
      made.vertices.emplace_back(r * std::cos(u), r * std::sin(u), small * std::sin(v));
      const int i1 = (i + 1) % around;
      const int j1 = (j + 1) % across;
      made.triangles.push_back({i * across + j, i1 * across + j, i1 * across + j1});
      made.triangles.push_back({i * across + j, i1 * across + j1, i * across + j1});
    }
  }
  return made;
}

/// An octahedron, each triangle split in four `times` times, its corners on the sphere: 8 * 4^times triangles.
inline Surface sphere_surface(double radius, int times) {
  Surface made;
  made.vertices = {{1, 0, 0}, {-1, 0, 0}, {0, 1, 0}, {0, -1, 0}, {0, 0, 1}, {0, 0, -1}};
  made.triangles = {{0, 2, 4}, {2, 1, 4}, {1, 3, 4}, {3, 0, 4}, {2, 0, 5}, {1, 2, 5}, {3, 1, 5}, {0, 3, 5}};
  for (int round = 0; round < times; ++round) {
    std::map<std::pair<int, int>, int> middles;
    std::vector<Mesh::Triangle> finer;
    const auto middle = [&](int a, int b) {
      const auto [place, fresh] = middles.try_emplace(std::minmax(a, b), static_cast<int>(made.vertices.size()));
      if (fresh) {
        made.vertices.push_back(
            glm::normalize(made.vertices[static_cast<std::size_t>(a)] + made.vertices[static_cast<std::size_t>(b)]));
      }
      return place->second;
    };
    for (const Mesh::Triangle& t : made.triangles) {
      const int a = middle(t[0], t[1]);
      const int b = middle(t[1], t[2]);
      const int c = middle(t[2], t[0]);
      finer.insert(finer.end(), {{t[0], a, c}, {a, t[1], b}, {c, b, t[2]}, {a, b, c}});
    }
    made.triangles = std::move(finer);
  }
  for (Vec3& v : made.vertices) v *= radius;
  return made;
}

}  // namespace baywright::geometry::scenes
