// The room that two solids share, against closed forms and against areas summed over a sweep of planes.
#include "render/overlap_region.h"

#include "geometry/overlap.h"
#include "support/check_mm.h"

#include <cmath>
#include <doctest/doctest.h>
#include <numbers>

using namespace baywright;
using geometry::Placed;
using geometry::Pose;
using geometry::Solid;
using geometry::Vec2;
using geometry::Vec3;

namespace {

Placed box(const Vec3& at, const Vec3& size) {
  return {std::get<Solid>(Solid::box(size)), {geometry::Mat3(1.0), at}};
}

Placed cylinder(const Vec3& at, double diameter, double bore, double height) {
  return {std::get<Solid>(Solid::cylinder(diameter, bore, height)), {geometry::Mat3(1.0), at}};
}

/// The volume that the triangles enclose, from what is drawn.
double enclosed(const render::Mesh& mesh) {
  double out = 0.0;
  const auto at = [&](std::size_t i) { return Vec3(mesh.at[i][0], mesh.at[i][1], mesh.at[i][2]); };
  for (std::size_t i = 0; i + 2 < mesh.at.size(); i += 3)
    out += glm::dot(at(i), glm::cross(at(i + 1), at(i + 2))) / 6.0;
  return out;
}

/// Areas in the middle of n slices.
double swept_volume(const Placed& a, const Placed& b, int slices) {
  const geometry::Bounds box = geometry::bounds(a);
  const double thickness = (box.high.x - box.low.x) / slices;
  double out = 0.0;
  for (int i = 0; i < slices; ++i) {
    const geometry::View view{{box.low.x + (i + 0.5) * thickness, 0.0, 0.0}, {0.0, 1.0, 0.0}, {0.0, 0.0, 1.0}};
    for (const geometry::Region& region : geometry::overlap(a, b, view)) out += geometry::area(region) * thickness;
  }
  return out;
}

}  // namespace

TEST_CASE("two boxes share a box") {
  const render::SharedRoom room = render::shared_room(box({0, 0, 0}, {10, 8, 6}), box({7, 5, 4}, {10, 8, 6}));
  REQUIRE(room.mesh != nullptr);
  CHECK(std::abs(room.volume - 3.0 * 3.0 * 2.0) < 1e-4);
  CHECK(std::abs(enclosed(*room.mesh) - room.volume) < 1e-3);
  CHECK(room.mesh->at.size() == 36);   // six faces of two triangles
  CHECK(room.edges->at.size() == 24);  // twelve edges
}

TEST_CASE("faces in one plane count once, and what only touches shares nothing") {
  // The second stands in the first with three faces in the planes of the first's, as a part set flush does.
  const render::SharedRoom flush = render::shared_room(box({0, 0, 0}, {10, 8, 6}), box({0, 0, 0}, {4, 3, 2}));
  CHECK(std::abs(flush.volume - 24.0) < 1e-4);
  CHECK(flush.mesh->at.size() == 36);
  const render::SharedRoom same = render::shared_room(box({1, 2, 3}, {4, 3, 2}), box({1, 2, 3}, {4, 3, 2}));
  CHECK(std::abs(same.volume - 24.0) < 1e-4);
  CHECK(same.mesh->at.size() == 36);
  CHECK(render::shared_room(box({0, 0, 0}, {10, 8, 6}), box({10, 0, 0}, {4, 3, 2})).mesh == nullptr);
  CHECK(render::shared_room(box({0, 0, 0}, {10, 8, 6}), box({2, 2, 6}, {4, 3, 2})).mesh == nullptr);
  CHECK(render::shared_room(box({0, 0, 0}, {10, 8, 6}), box({30, 0, 0}, {4, 3, 2})).mesh == nullptr);
}

TEST_CASE("a box and a cylinder share what the circle's area says") {
  const double full = std::numbers::pi * 25.0;
  // Inscribed in the circle with a chord error of 0.001 mm: short by two thirds of that along the circumference at
  // most.
  const double short_by = 10.0 * std::numbers::pi * 0.001;
  const Placed post = cylinder({0, 0, 0}, 10.0, 0.0, 20.0);
  const double whole = render::shared_room(box({-20, -20, 5}, {40, 40, 3}), post).volume;
  CHECK(whole <= 3.0 * full);
  CHECK(whole >= 3.0 * (full - short_by));
  const double half = render::shared_room(box({0, -20, 5}, {40, 40, 3}), post).volume;
  CHECK(half <= 1.5 * full);
  CHECK(half >= 1.5 * (full - short_by));
  const double ring = render::shared_room(box({-20, -20, 5}, {40, 40, 3}), cylinder({0, 0, 0}, 10.0, 6.0, 20.0)).volume;
  CHECK(std::abs(ring - 3.0 * std::numbers::pi * 16.0) < 3.0 * short_by);
}

TEST_CASE("turned solids share the volume that planes swept through them add up to") {
  const Placed angle{std::get<Solid>(Solid::prism({{0, 0}, {20, 0}, {20, 4}, {4, 4}, {4, 15}, {0, 15}}, {}, 9.0)),
                     {geometry::rotation(glm::normalize(Vec3(1, 2, 3)), 35.0), {1.0, -2.0, 0.5}}};
  for (const Placed& other : {box({3, -4, -3}, {9, 12, 7}), cylinder({5, 2, -4}, 8.0, 0.0, 14.0)}) {
    const render::SharedRoom room = render::shared_room(angle, other);
    const double swept = swept_volume(angle, other, 400);
    REQUIRE(room.mesh != nullptr);
    REQUIRE(swept > 20.0);
    CHECK(std::abs(room.volume - swept) < 0.005 * swept);
    CHECK(std::abs(enclosed(*room.mesh) - room.volume) < 1e-3 * room.volume);
    CHECK(std::abs(render::shared_room(other, angle).volume - room.volume) < 1e-3 * room.volume);
  }
}

TEST_CASE("a mesh shares a solid region where it is closed, and none where it is open") {
  const std::vector<Vec3> corners = {{0, 0, 0}, {6, 0, 0}, {0, 6, 0}, {0, 0, 6}};
  std::vector<geometry::Mesh::Triangle> faces = {{0, 2, 1}, {0, 1, 3}, {0, 3, 2}, {1, 2, 3}};
  const auto placed = [&] {
    return Placed{Solid::mesh(std::get<geometry::Mesh>(geometry::Mesh::make(corners, faces))), {}};
  };
  // Below z = 3 of a corner of 6 mm: the whole less the corner of 3.
  const double volume = render::shared_room(placed(), box({-1, -1, -1}, {9, 9, 4})).volume;
  CHECK(std::abs(volume - (36.0 - 4.5)) < 1e-3);
  faces.pop_back();
  CHECK(render::shared_room(placed(), box({-1, -1, -1}, {9, 9, 4})).mesh == nullptr);
}
