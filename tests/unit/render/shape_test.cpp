#include "render/shape.h"

#include "support/random_turn.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <map>
#include <numbers>

using namespace baywright::render;
using baywright::geometry::Outline;
using baywright::geometry::Placed;
using baywright::geometry::Pose;
using baywright::geometry::Solid;
using baywright::geometry::Vec2;
using baywright::geometry::Vec3;
using baywright::test::any_turn;
using baywright::test::Random;
using baywright::test::uniform;

namespace {

using Point = std::array<float, 3>;

Vec3 vec(const Point& p) {
  return {p[0], p[1], p[2]};
}

/// By the divergence theorem, about a point near by, so that floats do not cancel.
double volume(const Mesh& mesh) {
  const Vec3 about = vec(mesh.at.front());
  double six = 0.0;
  for (std::size_t i = 0; i < mesh.at.size(); i += 3)
    six += glm::dot(vec(mesh.at[i]) - about, glm::cross(vec(mesh.at[i + 1]) - about, vec(mesh.at[i + 2]) - about));
  return six / 6.0;
}

/// Each side of each triangle is met by exactly one that runs the other way: no hole, no seam, no corner on a side.
bool watertight(const Mesh& mesh) {
  std::map<std::pair<Point, Point>, int> sides;
  for (std::size_t i = 0; i < mesh.at.size(); ++i) ++sides[{mesh.at[i], mesh.at[i % 3 == 2 ? i - 2 : i + 1]}];
  for (const auto& [side, count] : sides) {
    const auto back = sides.find({side.second, side.first});
    if (count != 1 || back == sides.end() || back->second != 1) return false;
  }
  return !sides.empty();
}

/// Normals are unit and lean no more than the crease from their faces.
bool normals_hold(const Mesh& mesh) {
  for (std::size_t i = 0; i < mesh.at.size(); ++i) {
    const std::size_t t = i / 3 * 3;
    const Vec3 face =
        glm::normalize(glm::cross(vec(mesh.at[t + 1]) - vec(mesh.at[t]), vec(mesh.at[t + 2]) - vec(mesh.at[t])));
    const Vec3 normal = vec(mesh.normal[i]);
    if (!(std::abs(glm::length(normal) - 1.0) < 1e-5 && glm::dot(face, normal) > std::cos(std::numbers::pi / 6)))
      return false;
  }
  return mesh.normal.size() == mesh.at.size();
}

/// Lines that are drawn whatever the view.
std::size_t sharp_edges(const Strokes& strokes) {
  std::size_t count = 0;
  for (std::size_t i = 0; i < strokes.at.size(); i += 2)
    if (strokes.faces.empty() || vec(strokes.faces[i]) == Vec3(0.0)) ++count;
  return count;
}

Solid solid(std::variant<Solid, baywright::geometry::Refusal> made) {
  REQUIRE(std::holds_alternative<Solid>(made));
  return std::get<Solid>(made);
}

Outline circle(const Vec2& centre, double radius, int sides) {
  Outline ring;
  for (int i = 0; i < sides; ++i) {
    const double angle = 2 * std::numbers::pi * i / sides;
    ring.push_back(centre + radius * Vec2{std::cos(angle), std::sin(angle)});
  }
  return ring;
}

Solid board() {
  return solid(
      Solid::prism({{0, 0}, {80, 0}, {80, 22}, {50, 22}, {50, 40}, {20, 40}, {20, 22}, {0, 22}},
                   {circle({10, 11}, 3, 48), circle({70, 11}, 3, 48), {{30, 25}, {30, 35}, {40, 35}, {40, 25}}}, 1.6));
}

Solid ball(double radius, int rings, int sides) {
  std::vector<Vec3> at{{0, 0, radius}, {0, 0, -radius}};
  std::vector<std::array<int, 3>> faces;
  for (int i = 1; i < rings; ++i)
    for (int k = 0; k < sides; ++k) {
      const double down = std::numbers::pi * i / rings;
      const double round = 2 * std::numbers::pi * k / sides;
      at.push_back(radius * Vec3{std::sin(down) * std::cos(round), std::sin(down) * std::sin(round), std::cos(down)});
    }
  const auto index = [&](int ring, int k) { return 2 + (ring - 1) * sides + k % sides; };
  for (int k = 0; k < sides; ++k) {
    faces.push_back({0, index(1, k), index(1, k + 1)});
    faces.push_back({1, index(rings - 1, k + 1), index(rings - 1, k)});
    for (int i = 1; i + 1 < rings; ++i) {
      faces.push_back({index(i, k), index(i + 1, k), index(i + 1, k + 1)});
      faces.push_back({index(i, k), index(i + 1, k + 1), index(i, k + 1)});
    }
  }
  auto mesh = baywright::geometry::Mesh::make(at, faces);
  return Solid::mesh(std::get<baywright::geometry::Mesh>(std::move(mesh)));
}

std::vector<Vec3> cube_corners() {
  std::vector<Vec3> at;
  for (int i = 0; i < 8; ++i) at.push_back({(i & 1) * 10.0, (i >> 1 & 1) * 10.0, (i >> 2) * 10.0});
  return at;
}
std::vector<std::array<int, 3>> cube_faces() {
  return {{0, 2, 1}, {1, 2, 3}, {4, 5, 6}, {5, 7, 6}, {0, 1, 4}, {1, 5, 4},
          {2, 6, 3}, {3, 6, 7}, {0, 4, 2}, {2, 4, 6}, {1, 3, 5}, {3, 7, 5}};
}

}  // namespace

TEST_CASE("boxes, prisms and meshes become closed surfaces of their own volume, wherever they stand") {
  Random random(81);
  for (const Solid& each : {solid(Solid::box({80, 22, 3})), board(), ball(10, 24, 48)})
    for (int i = 0; i < 5; ++i) {
      const Placed placed{each, {any_turn(random), {uniform(random, -50, 50), uniform(random, -50, 50), 0}}};
      const Shape shape = shape_of(placed);
      CHECK(watertight(*shape.mesh));
      CHECK(normals_hold(*shape.mesh));
      CHECK(std::abs(volume(*shape.mesh) / each.volume() - 1.0) < 1e-5);  // floats
    }
}

TEST_CASE("round solids stray by no more than their chord error") {
  for (const double diameter : {0.5, 3.0, 12.0, 120.0})
    for (const double bore : {0.0, 0.6}) {
      const Solid tube = solid(Solid::cylinder(diameter, bore * diameter, 7));
      const Shape shape = shape_of({tube, Pose{}});
      CHECK(watertight(*shape.mesh));
      CHECK(normals_hold(*shape.mesh));
      // A polygon inside a circle is smaller by two thirds of its sagitta times the circumference; a bore gives it
      // back.
      const double most = std::numbers::pi * diameter * seen_chord_mm * 7 * (diameter > 100 ? 2.0 : 1.0);
      CHECK(std::abs(volume(*shape.mesh) - tube.volume()) < most);
      for (std::size_t i = 0; i < shape.mesh->at.size(); ++i) {  // smooth: radial
        const Vec3 normal = vec(shape.mesh->normal[i]);
        const Vec3 at = vec(shape.mesh->at[i]);
        if (std::abs(normal.z) < 0.5)
          CHECK(std::abs(std::abs(glm::dot(glm::normalize(Vec3(at.x, at.y, 0)), normal)) - 1.0) < 1e-5);
      }
    }
}

TEST_CASE("only sharp edges are edges") {
  CHECK(sharp_edges(*shape_of({solid(Solid::box({1, 2, 3})), Pose{}}).edges) == 12);

  const Shape pin = shape_of({solid(Solid::cylinder(4, 0, 10)), Pose{}});
  std::size_t rims = 0;
  for (std::size_t i = 0; i < pin.edges->at.size(); i += 2)
    if (pin.edges->at[i][2] == pin.edges->at[i + 1][2]) ++rims;
  CHECK(sharp_edges(*pin.edges) == rims);              // none along it
  CHECK(pin.edges->at.size() / 2 == rims + rims / 2);  // its outline, of which two are seen at a time

  const auto cube = baywright::geometry::Mesh::make(cube_corners(), cube_faces());
  const Solid closed = Solid::mesh(std::get<baywright::geometry::Mesh>(cube));
  CHECK(sharp_edges(*shape_of({closed, Pose{}}).edges) == 12);  // no diagonals
  CHECK(sharp_edges(*shape_of({ball(10, 24, 48), Pose{}}).edges) == 0);
}

TEST_CASE("an open surface shows its border") {
  auto faces = cube_faces();
  faces.resize(2);  // one face of the cube
  const auto made = baywright::geometry::Mesh::make(cube_corners(), faces);
  const Shape shape = shape_of({Solid::mesh(std::get<baywright::geometry::Mesh>(made)), Pose{}});
  CHECK(shape.mesh->at.size() == 6);
  CHECK(sharp_edges(*shape.edges) == 4);
}
