// J. R. Shewchuk, "Adaptive Precision Floating-Point Arithmetic and Fast Robust Geometric Predicates", Discrete &
// Computational Geometry 18 (1997): the error bound of the plain determinant and sums without
// rounding (Two-Sum, Grow-Expansion). We take two stages instead of his four: a plain determinant that is
// trusted when it is larger than its error, else the sum of all six products, each split without loss by a fused
// multiply-add. The middle stages save time on inputs that our outlines rarely hold.
#include "geometry/orientation.h"

#include "geometry/exact_sum.h"

#include <cmath>
#include <limits>

namespace baywright::geometry {
namespace {

int exact_orientation(const Vec2& a, const Vec2& b, const Vec2& c) {
  ExactSum<12> sum;
  sum.add_product(a.x, b.y);
  sum.add_product(-a.y, b.x);
  sum.add_product(b.x, c.y);
  sum.add_product(-b.y, c.x);
  sum.add_product(c.x, a.y);
  sum.add_product(-c.y, a.x);
  return sum.sign();
}

}  // namespace

int orientation(const Vec2& a, const Vec2& b, const Vec2& c) {
  const double left = (a.x - c.x) * (b.y - c.y);
  const double right = (a.y - c.y) * (b.x - c.x);
  const double determinant = left - right;
  constexpr double half_ulp = std::numeric_limits<double>::epsilon() / 2.0;
  constexpr double bound = (3.0 + 16.0 * half_ulp) * half_ulp;
  const double error = bound * (std::abs(left) + std::abs(right));
  if (determinant > error) return 1;
  if (-determinant > error) return -1;
  return exact_orientation(a, b, c);
}

}  // namespace baywright::geometry
