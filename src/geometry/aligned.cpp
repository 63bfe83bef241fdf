#include "geometry/aligned.h"

#include "geometry/convex.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace baywright::geometry {

namespace {

/// Edges that lean by less differ by less than the pair's rounding over the whole box.
constexpr double parallel = 5e-16;

}  // namespace

std::optional<Gap> aligned_gap(const Pair& pair) {
  if (pair.a.base != Body::Base::rectangle || pair.b.base != Body::Base::rectangle) return std::nullopt;
  if (!std::isfinite(pair.rounding)) return std::nullopt;
  const std::array<Vec3, 3> axes{pair.a.u, pair.a.v, pair.a.w};
  const std::array<Vec3, 3> other{pair.b.u, pair.b.v, pair.b.w};
  const Vec3 half_a{pair.a.size, pair.a.half};
  const Vec3 half_b{pair.b.size, pair.b.half};
  Vec3 link{0.0};  // from a to b, along a's axes: what separates them
  Vec3 on_a{0.0};
  Vec3 on_b{0.0};
  int deepest = 0;
  double least = 0.0;
  bool apart = false;
  for (int i = 0; i < 3; ++i) {
    const Vec3& axis = axes[static_cast<std::size_t>(i)];
    double half = -1.0;
    for (int j = 0; j < 3; ++j) {
      const double along = std::abs(glm::dot(axis, other[static_cast<std::size_t>(j)]));
      if (along <= parallel) continue;
      if (half >= 0.0) return std::nullopt;
      half = half_b[j];
    }
    if (half < 0.0) return std::nullopt;
    const double centre = glm::dot(pair.apart, axis);
    const double gap = std::abs(centre) - half_a[i] - half;
    const double sign = centre < 0.0 ? -1.0 : 1.0;
    if (gap > 0.0) {
      apart = true;
      link[i] = sign * gap;
      on_a[i] = sign * half_a[i];
      on_b[i] = centre - sign * half;
    } else {
      const double low = std::max(-half_a[i], centre - half);
      const double high = std::min(half_a[i], centre + half);
      on_a[i] = on_b[i] = 0.5 * (low + high);
    }
    if (i == 0 || gap > least) {
      least = gap;
      deepest = i;
    }
  }
  Gap found;
  if (apart) {
    found.mm = glm::length(link);
    link = link / found.mm;
  } else {
    const double sign = glm::dot(pair.apart, axes[static_cast<std::size_t>(deepest)]) < 0.0 ? -1.0 : 1.0;
    found.mm = least;
    link[deepest] = sign;
    on_a[deepest] = sign * half_a[deepest];
    on_b[deepest] = on_a[deepest] + sign * least;
  }
  const auto world = [&axes](const Vec3& p) { return axes[0] * p.x + axes[1] * p.y + axes[2] * p.z; };
  found.direction = world(link);
  found.on_a = world(on_a);
  found.on_b = world(on_b);
  found.error = pair.rounding;
  found.relation = relation(found.mm, found.error, Bound::exact);
  return found;
}

}  // namespace baywright::geometry
