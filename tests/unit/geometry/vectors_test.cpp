#include "geometry/vectors.h"

#include "support/check_mm.h"

#include <cmath>
#include <doctest/doctest.h>
#include <limits>
#include <random>

using namespace baywright::geometry;
using baywright::test::check_mm;

TEST_CASE("quarter turns about the coordinate axes are exact") {
  // A right-handed quarter turn about z takes x to y and y to -x; the others follow in cyclic order.
  CHECK(rotation({0, 0, 1}, 90) == Mat3({0, 1, 0}, {-1, 0, 0}, {0, 0, 1}));
  CHECK(rotation({1, 0, 0}, 90) == Mat3({1, 0, 0}, {0, 0, 1}, {0, -1, 0}));
  CHECK(rotation({0, 1, 0}, -90) == Mat3({0, 0, 1}, {0, 1, 0}, {-1, 0, 0}));
  CHECK(rotation({0, 0, -1}, 270) == Mat3({0, 1, 0}, {-1, 0, 0}, {0, 0, 1}));
  CHECK(rotation({0, 1, 0}, 180) == Mat3({-1, 0, 0}, {0, 1, 0}, {0, 0, -1}));
  CHECK(rotation({0, 1, 0}, -36000360) == Mat3(1.0));
}

TEST_CASE("a turn by thirty degrees") {
  // sin 30 = 1/2, cos 30 = sqrt(3)/2.
  check_mm(rotation({0, 0, 1}, 30) * Vec3{2, 0, 5}, Vec3{std::sqrt(3.0), 1, 5}, 1e-15);
  // A third of a turn about the diagonal of a cube permutes the axes.
  check_mm(rotation(glm::normalize(Vec3{1, 1, 1}), 120) * Vec3{1, 2, 3}, Vec3{3, 1, 2}, 1e-14);
  CHECK(std::isnan(rotation({0, 0, 1}, std::numeric_limits<double>::quiet_NaN())[0][0]));
}

TEST_CASE("turns are rotations, poses undo themselves, and square_to is square") {
  std::mt19937_64 random(20240501);
  std::normal_distribution<double> normal;
  std::uniform_real_distribution<double> angle(-720, 720);
  for (int i = 0; i < 1000; ++i) {
    const Vec3 axis = glm::normalize(Vec3{normal(random), normal(random), normal(random)});
    const Pose pose{rotation(axis, angle(random)), {normal(random), normal(random), normal(random)}};
    const Mat3 product = glm::transpose(pose.turn) * pose.turn;
    for (int column = 0; column < 3; ++column) check_mm(product[column], Mat3(1.0)[column], 1e-15 * 8);
    check_mm(glm::dot(glm::cross(pose.turn[0], pose.turn[1]), pose.turn[2]), 1.0, 1e-14);
    const Vec3 p{normal(random), normal(random), normal(random)};
    check_mm(pose.inverse().after(pose).point(p), p, 1e-14);
    check_mm(glm::dot(square_to(axis), axis), 0.0, 1e-15);
    check_mm(glm::length(square_to(axis)), 1.0, 1e-15);
  }
}

TEST_CASE("distance of boxes") {
  const Bounds unit{{0, 0, 0}, {1, 1, 1}};
  CHECK(unit.distance({{4, 5, 0.5}, {9, 9, 9}}) == 5.0);  // 3, 4, 0
  CHECK(unit.distance({{-3, 0, 0}, {-1, 1, 1}}) == 1.0);
  CHECK(unit.distance({{1, 1, 1}, {2, 2, 2}}) == 0.0);
  CHECK(unit.distance({{0.2, 0.2, 0.2}, {0.3, 0.3, 0.3}}) == 0.0);
  Bounds grown = Bounds::empty();
  CHECK(std::isinf(unit.distance(grown)));
  grown.add(Bounds::empty());
  grown.add(Vec3{2, 3, 4});
  grown.add(Bounds{{1, 5, 4}, {1, 6, 4}});
  CHECK(grown.low == Vec3{1, 3, 4});
  CHECK(grown.high == Vec3{2, 6, 4});
}
