#pragma once
// Polyhedra for the exact oracle: the solid as the product makes it, and beside it the same polyhedron cut into convex
// parts by this file alone. All cuts run between given corners, so they are exact.
#include "geometry/solid.h"
#include "support/random_turn.h"

#include <array>
#include <string>
#include <vector>

namespace baywright::oracle {

using geometry::Mat3;
using geometry::Outline;
using geometry::Placed;
using geometry::Pose;
using geometry::Vec2;
using geometry::Vec3;
using test::Random;
using test::uniform;

/// A convex polytope by indices into the corners of its body.
struct Part {
  std::vector<int> corners;
  std::vector<std::array<int, 3>> planes;     // three corners of each face, one of each parallel pair
  std::vector<std::array<int, 2>> ways;       // one edge of each direction
  std::vector<std::array<int, 3>> triangles;  // its whole surface
  std::vector<std::array<int, 2>> edges;      // all of them
};

struct Body {
  geometry::Solid solid;
  std::vector<Vec3> corners;                // local, mm
  std::vector<std::array<int, 3>> surface;  // counter-clockwise seen from outside
  std::vector<Part> parts;                  // their union is the solid, their insides do not meet
  std::string code;                         // C++ that makes `solid`
};

enum class Shape { box, convex_prism, bent_prism, framed_prism, mesh };

/// A random body of about `size` mm. Half of them have corners on a grid of 1/8 mm, so that coincidences are common.
[[nodiscard]] Body any_body(Random& random, Shape shape, double size);

/// 17 digits, so that the same double comes back.
[[nodiscard]] std::string text(double value);
[[nodiscard]] std::string text(const Vec3& v);

}  // namespace baywright::oracle
