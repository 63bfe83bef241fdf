#pragma once
// Planes to cut with, and how much a cut has, for the tests of sections and overlaps.
#include "geometry/section.h"

#include <vector>

namespace baywright::geometry::cuts {

/// A view of the plane through `point` with the viewer toward `normal` (any length).
inline View facing_plane(const Vec3& point, const Vec3& normal) {
  const Vec3 n = glm::normalize(normal);
  const Vec3 right = square_to(n);
  return {point, right, glm::cross(n, right)};
}

inline double area_of(const std::vector<Region>& regions) {
  double sum = 0.0;
  for (const Region& region : regions) sum += area(region);
  return sum;
}

inline double area_cut(const Solid& solid, const Vec3& point, const Vec3& normal) {
  return area_of(section({solid, {}}, facing_plane(point, normal)));
}

}  // namespace baywright::geometry::cuts
