#include "render/shape.h"

#include "geometry/triangulation.h"
#include "render/creases.h"

#include <algorithm>
#include <cmath>
#include <glm/common.hpp>
#include <numbers>

namespace baywright::render {

using geometry::Outline;
using geometry::Vec2;
using geometry::Vec3;

namespace {

Outline circle(double radius, bool clockwise) {
  const double step = std::acos(std::clamp(1.0 - seen_chord_mm / radius, -1.0, 1.0));
  const int sides = static_cast<int>(std::clamp(std::ceil(std::numbers::pi / step), 24.0, 128.0));
  Outline ring;
  for (int i = 0; i < sides; ++i) {
    const double angle = (clockwise ? -2.0 : 2.0) * std::numbers::pi * i / sides;
    ring.push_back(radius * Vec2{std::cos(angle), std::sin(angle)});
  }
  return ring;
}

Vec2 outward(const Vec2& from, const Vec2& to) {
  const Vec2 along = glm::normalize(to - from);
  return {along.y, -along.x};
}

/// A base, extruded: the solid's own coordinates go in, the world's come out.
class Column {
 public:
  Column(const geometry::Pose& pose, double height) : pose_(pose), height_(height) {}

  void caps(const Outline& outline, const std::vector<Outline>& holes) {
    const std::vector<Vec2> base = geometry::triangles(outline, holes);
    for (std::size_t i = 0; i + 2 < base.size(); i += 3) {
      for (const std::size_t k : {0U, 1U, 2U}) corner(base[i + k], height_, {0.0, 0.0, 1.0});
      for (const std::size_t k : {0U, 2U, 1U}) corner(base[i + k], 0.0, {0.0, 0.0, -1.0});
    }
  }

  /// The material lies on the left of the ring.
  void walls(const Outline& ring) {
    const std::size_t count = ring.size();
    const auto side = [&](std::size_t i) { return outward(ring[i % count], ring[(i + 1) % count]); };
    const double soft = std::cos(crease_degrees * std::numbers::pi / 180.0);
    for (std::size_t i = 0; i < count; ++i) {
      const Vec2& from = ring[i];
      const Vec2& to = ring[(i + 1) % count];
      const Vec2 before = side(i + count - 1);
      const Vec2 here = side(i);
      const Vec2 after = side(i + 1);
      const bool sharp = glm::dot(before, here) < soft;
      const Vec3 first{sharp ? here : glm::normalize(before + here), 0.0};
      const Vec3 last{glm::dot(here, after) < soft ? here : glm::normalize(here + after), 0.0};
      corner(from, 0.0, first);
      corner(to, 0.0, last);
      corner(to, height_, last);
      corner(from, 0.0, first);
      corner(to, height_, last);
      corner(from, height_, first);
      for (const double z : {0.0, height_}) stroke(Vec3{from, z}, Vec3{to, z});
      const Vec2 none{0.0};
      stroke(Vec3{from, 0.0}, Vec3{from, height_}, sharp ? none : before, sharp ? none : here);
    }
  }

  [[nodiscard]] Shape shape() {
    return {std::make_shared<const Mesh>(std::move(mesh_)), std::make_shared<const Strokes>(std::move(edges_))};
  }

 private:
  void corner(const Vec2& at, double z, const Vec3& normal) {
    mesh_.at.push_back(floats(pose_.point(Vec3{at, z})));
    mesh_.normal.push_back(floats(pose_.direction(normal)));
  }
  /// Between the faces of these normals; zero for an edge that is sharp.
  void stroke(const Vec3& from, const Vec3& to, const Vec2& face = Vec2{0.0}, const Vec2& other = Vec2{0.0}) {
    edges_.at.push_back(floats(pose_.point(from)));
    edges_.at.push_back(floats(pose_.point(to)));
    edges_.faces.push_back(floats(pose_.direction(Vec3{face, 0.0})));
    edges_.faces.push_back(floats(pose_.direction(Vec3{other, 0.0})));
  }

  geometry::Pose pose_;
  double height_;
  Mesh mesh_;
  Strokes edges_;
};

}  // namespace

Shape shape_of(const geometry::Placed& placed) {
  const geometry::Solid& solid = placed.solid;
  if (solid.mesh() != nullptr) return shape_of_mesh(*solid.mesh(), placed.pose);
  Column column(placed.pose, solid.height());
  Outline outline = solid.outline();
  std::vector<Outline> holes = solid.holes();
  if (solid.diameter() > 0.0) {
    outline = circle(solid.diameter() / 2.0, false);
    if (solid.bore() > 0.0) holes.push_back(circle(solid.bore() / 2.0, true));
  }
  column.caps(outline, holes);
  column.walls(outline);
  for (const Outline& hole : holes) column.walls(hole);
  return column.shape();
}

}  // namespace baywright::render
