// Figures of measuring against values worked out by hand from the sizes beside them.
#include "viewer/measuring.h"

#include "support/check_mm.h"

#include <array>
#include <cmath>
#include <doctest/doctest.h>
#include <limits>
#include <numbers>
#include <string>

using namespace baywright;
using geometry::Placed;
using geometry::Solid;
using geometry::Vec3;
using test::check_mm;
using viewer::pick;
using viewer::Picked;
using viewer::Sight;

namespace {

Placed at(std::variant<Solid, geometry::Refusal> made, const Vec3& corner,
          const geometry::Mat3& turn = geometry::Mat3(1.0)) {
  auto* solid = std::get_if<Solid>(&made);
  REQUIRE(solid != nullptr);
  return {*solid, {turn, corner}};
}

/// Looks from a point along a direction.
Picked seen(const Placed& solid, const Vec3& from, const Vec3& along, double reach = 0.0,
            std::span<const viewer::HoleAxis> holes = {}) {
  auto found = pick(solid, Sight{from, glm::normalize(along), 0.0}, reach, holes);
  if (!found) FAIL("nothing is met");
  return *found;
}

const Vec3 up(0.0, 0.0, 1.0);

}  // namespace

TEST_CASE("a 22 x 80 card 9.1 under a plate: face to face, though the click is off the middle") {
  const Placed card = at(Solid::box({22.0, 80.0, 0.8}), {0.0, 0.0, -0.8});
  const Placed plate = at(Solid::box({150.0, 120.0, 1.2}), {-40.0, -20.0, 9.1});
  const Picked first = seen(card, {3.0, 70.0, 5.0}, -up);
  const Picked second = seen(plate, {-39.0, 90.0, 5.0}, up);  // not over the card
  check_mm(first.way, up, 1e-12);
  check_mm(second.way, -up, 1e-12);
  const viewer::Measurement found = viewer::measured(first, second);
  check_mm(found.distance, 9.1, 1e-9);
  check_mm(found.along, {0.0, 0.0, 9.1}, 1e-9);
  REQUIRE(found.angle);
  CHECK(std::abs(*found.angle) < 1e-9);
  REQUIRE(found.gap);
  check_mm(found.gap->mm, 9.1, 1e-9);
  CHECK(!found.gap->behind);
  const auto words = viewer::words_of(found, first, second);
  REQUIRE(words.size() == 4);
  CHECK(words[0] == "9.10 mm apart");
  CHECK(words[1] == "x 0.00, y 0.00, z 9.10");
  CHECK(words[2] == "parallel");
  CHECK(words[3] == "9.10 mm before the plane of the first face, square to it");
}

TEST_CASE("faces that do not stand over each other: 3 aside and 4 up are 5 apart, and 4 along the normal") {
  const Placed low = at(Solid::box({10.0, 10.0, 1.0}), {0.0, 0.0, -1.0});
  const Placed high = at(Solid::box({10.0, 10.0, 1.0}), {13.0, 0.0, 4.0});
  const viewer::Measurement found = viewer::measured(seen(low, {5.0, 5.0, 9.0}, -up), seen(high, {15.0, 5.0, 0.0}, up));
  check_mm(found.distance, 5.0, 1e-6);
  check_mm(found.along, {3.0, 0.0, 4.0}, 1e-6);
  check_mm(found.gap->mm, 4.0, 1e-9);
}

TEST_CASE("the two faces of a plate: its thickness, and the second is behind the first") {
  const Placed plate = at(Solid::box({165.0, 260.0, 1.5}), {0.0, 0.0, 0.0});
  const viewer::Measurement found =
      viewer::measured(seen(plate, {50.0, 50.0, 9.0}, -up), seen(plate, {50.0, 50.0, -9.0}, up));
  check_mm(found.distance, 1.5, 1e-5);
  check_mm(found.gap->mm, 1.5, 1e-5);
  CHECK(found.gap->behind);
}

TEST_CASE("a plate that leans by 10 degrees") {
  const Placed flat = at(Solid::box({50.0, 50.0, 1.0}), {0.0, 0.0, -1.0});
  const Placed lean = at(Solid::box({50.0, 50.0, 1.0}), {0.0, 0.0, 7.0}, geometry::rotation({0.0, 1.0, 0.0}, -10.0));
  const Picked second = seen(lean, {20.0, 25.0, 1.0}, up);
  const viewer::Measurement found = viewer::measured(seen(flat, {20.0, 25.0, 5.0}, -up), second);
  REQUIRE(found.angle);
  CHECK(std::abs(*found.angle - 10.0) < 1e-9);
  check_mm(found.gap->mm, 7.0, 1e-9);  // at its low edge, not where it was clicked
  check_mm(found.distance, 7.0, 1e-6);
}

TEST_CASE("an edge within reach is preferred to its face, and its length is said") {
  const Placed card = at(Solid::box({22.0, 80.0, 0.8}), {0.0, 0.0, 0.0});
  CHECK(seen(card, {21.8, 40.0, 5.0}, -up).kind == Picked::Kind::face);
  const Picked right = seen(card, {21.8, 40.0, 5.0}, -up, 0.3);
  const Picked left = seen(card, {0.1, 20.0, 5.0}, -up, 0.3);
  REQUIRE(right.kind == Picked::Kind::edge);
  check_mm(right.length, 80.0, 1e-12);
  check_mm(viewer::measured(left, right).distance, 22.0, 1e-5);
  CHECK(words_of(right) == "edge, 80.00 long");
}

TEST_CASE("a hollow bar: rim, bore and side each give their axis or diameter") {
  const Placed spacer = at(Solid::cylinder(6.0, 3.2, 5.0), {10.0, 10.0, 0.0});
  const Picked rim = seen(spacer, {10.0 + 1.65, 10.0, 9.0}, -up, 0.1);
  REQUIRE(rim.kind == Picked::Kind::hole);
  check_mm(rim.diameter, 3.2, 1e-12);
  check_mm(rim.at, {10.0, 10.0, 5.0}, 1e-12);
  CHECK(seen(spacer, {10.0 + 2.3, 10.0, 9.0}, -up, 0.1).kind == Picked::Kind::face);
  const Picked side = seen(spacer, {0.0, 10.0, 2.0}, {1.0, 0.0, 0.0}, 0.1);
  REQUIRE(side.kind == Picked::Kind::round);
  check_mm(side.diameter, 6.0, 1e-12);
  check_mm(side.at, {7.0, 10.0, 2.0}, 1e-9);
  const Picked bore = seen(spacer, {10.0, 10.0, 9.0}, {1.0, 0.0, -4.0});
  REQUIRE(bore.kind == Picked::Kind::hole);
  check_mm(bore.diameter, 3.2, 1e-12);
  // From its round side to a wall 7 from the axis: less the radius.
  const Placed wall = at(Solid::box({1.0, 40.0, 40.0}), {17.0, -10.0, -10.0});
  const viewer::Measurement found = viewer::measured(side, seen(wall, {15.0, 0.0, 1.0}, {1.0, 0.0, 0.0}));
  check_mm(found.distance, 4.0, 1e-6);
  CHECK(!found.angle);
}

TEST_CASE("holes that a part lists: from axis to axis, 76.6 and 61.72 apart as SFF-8201 has the bottom rows") {
  // From the published pattern as others quote it: rows 14.00 and 90.60 from the end, columns 61.72 apart.
  const Placed panel = at(Solid::box({165.0, 260.0, 1.5}), {0.0, 0.0, -1.5});
  const std::array<viewer::HoleAxis, 2> holes = {{{{64.0, 14.14, 0.0}, up, 3.4}, {{140.6, 75.86, 0.0}, up, 3.4}}};
  const Picked first = seen(panel, {64.9, 14.0, 5.0}, -up, 0.2, holes);
  const Picked second = seen(panel, {140.0, 76.0, 5.0}, -up, 0.2, holes);
  REQUIRE(first.kind == Picked::Kind::hole);
  check_mm(first.diameter, 3.4, 0.0);
  const viewer::Measurement found = viewer::measured(first, second);
  check_mm(found.along, {76.6, 61.72, 0.0}, 1e-5);
  check_mm(found.distance, std::hypot(76.6, 61.72), 1e-5);
  CHECK(seen(panel, {80.0, 40.0, 5.0}, -up, 0.2, holes).kind == Picked::Kind::face);
}

TEST_CASE("a mesh's flat face is all of it, not the triangle that was met") {
  // A box of 10 x 20 x 5 as twelve triangles.
  std::vector<Vec3> corners;
  for (int i = 0; i < 8; ++i)
    corners.emplace_back((i & 1) != 0 ? 10.0 : 0.0, (i & 2) != 0 ? 20.0 : 0.0, (i & 4) != 0 ? 5.0 : 0.0);
  auto made = geometry::Mesh::make(corners, {{0, 2, 1},
                                             {1, 2, 3},
                                             {4, 5, 6},
                                             {5, 7, 6},
                                             {0, 1, 4},
                                             {1, 5, 4},
                                             {2, 6, 3},
                                             {3, 6, 7},
                                             {0, 4, 2},
                                             {2, 4, 6},
                                             {1, 3, 5},
                                             {3, 7, 5}});
  REQUIRE(std::holds_alternative<geometry::Mesh>(made));
  const Placed body{Solid::mesh(std::get<geometry::Mesh>(std::move(made))), {}};
  const Picked top = seen(body, {1.0, 1.0, 9.0}, -up);
  check_mm(top.way, up, 1e-12);
  CHECK(top.outline.size() == 4);  // its rim, without the line between the two triangles
  // A lid over the far corner, beyond the triangle that was met.
  const Placed lid = at(Solid::box({2.0, 2.0, 1.0}), {8.0, 18.0, 6.25});
  check_mm(viewer::measured(top, seen(lid, {9.0, 19.0, 5.5}, up)).distance, 1.25, 1e-6);
}

TEST_CASE("a line of sight that passes by, and what is behind the eye, meet nothing") {
  const Placed card = at(Solid::box({22.0, 80.0, 0.8}), {0.0, 0.0, 0.0});
  CHECK(!pick(card, Sight{{30.0, 40.0, 5.0}, -up, 0.0}, 1.0));
  CHECK(!pick(card, Sight{{10.0, 40.0, 5.0}, up, 0.0}, 1.0));
  CHECK(pick(card, Sight{{10.0, 40.0, -5.0}, -up, -std::numeric_limits<double>::max()}, 1.0));  // true to scale: no eye
}
