// J. R. Shewchuk, "Adaptive Precision Floating-Point Arithmetic and Fast Robust Geometric Predicates", Discrete &
// Computational Geometry 18 (1997): the error bound of the plain determinant; beyond it all 24 products of
// three coordinates are summed without rounding. Rays through edges: H. Edelsbrunner, E. P. Muecke, "Simulation of
// Simplicity", ACM Transactions on Graphics 9 (1990): the ray is shifted by (e, e^2) for an e that is smaller than any
// figure.
#include "geometry/triangle_side.h"

#include "geometry/exact_sum.h"
#include "geometry/orientation.h"

#include <array>
#include <cmath>
#include <limits>

namespace baywright::geometry {

namespace {

using Sum = ExactSum<100>;  // 24 products of four terms each

/// sense * det(u, v, w)
void add_determinant(Sum& sum, const Vec3& u, const Vec3& v, const Vec3& w, double sense) {
  sum.add_product(sense * u.x, v.y, w.z);
  sum.add_product(sense * u.y, v.z, w.x);
  sum.add_product(sense * u.z, v.x, w.y);
  sum.add_product(-sense * u.x, v.z, w.y);
  sum.add_product(-sense * u.y, v.x, w.z);
  sum.add_product(-sense * u.z, v.y, w.x);
}

int exact_side(const Vec3& a, const Vec3& b, const Vec3& c, const Vec3& p) {
  Sum sum;
  add_determinant(sum, b, c, p, 1.0);
  add_determinant(sum, a, c, p, -1.0);
  add_determinant(sum, a, b, p, 1.0);
  add_determinant(sum, a, b, c, -1.0);
  return sum.sign();
}

Vec2 without(const Vec3& p, int axis) {
  return axis == 0 ? Vec2{p.y, p.z} : axis == 1 ? Vec2{p.z, p.x} : Vec2{p.x, p.y};
}

Vec3 normal_of(const Corners& t) {
  return glm::cross(t[1] - t[0], t[2] - t[0]);
}

/// Triangles of one plane, along the axis that is most square to it: whether they share an area.
bool share_area(const Corners& a, const Corners& b) {
  const Vec3 size = glm::abs(normal_of(a));
  const int axis = size.x >= size.y && size.x >= size.z ? 0 : size.y >= size.z ? 1 : 2;
  // They do not if a side of either has the whole other on its outer side or on its line.
  const auto parted = [axis](const Corners& by, const Corners& other) {
    const int sense = orientation(without(by[0], axis), without(by[1], axis), without(by[2], axis));
    for (std::size_t i = 0; i < 3; ++i) {
      bool all = true;
      for (const Vec3& p : other) {
        all = all && orientation(without(by[i], axis), without(by[(i + 1) % 3], axis), without(p, axis)) * sense <= 0;
      }
      if (all) return true;
    }
    return false;
  };
  return !parted(a, b) && !parted(b, a);
}

/// As `orientation` of a, b and a point that is beside p by (e, e^2); 0 only where a and b are one point.
int beside(const Vec2& a, const Vec2& b, const Vec2& p) {
  const int side = orientation(a, b, p);
  if (side != 0) return side;
  if (a.y != b.y) return a.y > b.y ? 1 : -1;
  return a.x == b.x ? 0 : b.x > a.x ? 1 : -1;
}

}  // namespace

int side_of(const Vec3& a, const Vec3& b, const Vec3& c, const Vec3& p) {
  const Vec3 u = a - p;
  const Vec3 v = b - p;
  const Vec3 w = c - p;
  const double vw = v.x * w.y;
  const double wv = w.x * v.y;
  const double wu = w.x * u.y;
  const double uw = u.x * w.y;
  const double uv = u.x * v.y;
  const double vu = v.x * u.y;
  const double determinant = u.z * (vw - wv) + v.z * (wu - uw) + w.z * (uv - vu);
  const double size = (std::abs(vw) + std::abs(wv)) * std::abs(u.z) + (std::abs(wu) + std::abs(uw)) * std::abs(v.z) +
                      (std::abs(uv) + std::abs(vu)) * std::abs(w.z);
  constexpr double half_ulp = std::numeric_limits<double>::epsilon() / 2.0;
  constexpr double bound = (7.0 + 56.0 * half_ulp) * half_ulp;
  // The determinant of the corners seen from p is negative where p is above.
  if (determinant > bound * size) return -1;
  if (-determinant > bound * size) return 1;
  return exact_side(a, b, c, p);
}

bool pierces(const Vec3& p, const Vec3& q, const Corners& t) {
  const int from = side_of(t[0], t[1], t[2], p);
  if (from == 0 || side_of(t[0], t[1], t[2], q) != -from) return false;
  const int first = side_of(p, q, t[0], t[1]);
  return first != 0 && side_of(p, q, t[1], t[2]) == first && side_of(p, q, t[2], t[0]) == first;
}

bool cross(const Corners& a, const Corners& b) {
  const std::array<int, 3> sides{side_of(b[0], b[1], b[2], a[0]), side_of(b[0], b[1], b[2], a[1]),
                                 side_of(b[0], b[1], b[2], a[2])};
  if (sides[0] != 0 && sides[0] == sides[1] && sides[0] == sides[2]) return false;
  if (sides[0] == 0 && sides[1] == 0 && sides[2] == 0) {
    return glm::dot(normal_of(a), normal_of(b)) > 0.0 && share_area(a, b);
  }
  for (std::size_t i = 0; i < 3; ++i) {
    if (sides[i] * sides[(i + 1) % 3] < 0 && pierces(a[i], a[(i + 1) % 3], b)) return true;
  }
  for (std::size_t i = 0; i < 3; ++i) {
    if (pierces(b[i], b[(i + 1) % 3], a)) return true;
  }
  return false;
}

bool ray_meets(const Vec3& p, const Corners& t) {
  const Vec2 at{p.y, p.z};
  const int first = beside({t[0].y, t[0].z}, {t[1].y, t[1].z}, at);
  if (first == 0 || beside({t[1].y, t[1].z}, {t[2].y, t[2].z}, at) != first) return false;
  if (beside({t[2].y, t[2].z}, {t[0].y, t[0].z}, at) != first) return false;
  // Counter-clockwise in y, z is counter-clockwise seen from +x, so p is before the triangle where it is below it.
  return side_of(t[0], t[1], t[2], p) * first < 0;
}

}  // namespace baywright::geometry
