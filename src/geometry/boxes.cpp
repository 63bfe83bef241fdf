#include "geometry/boxes.h"

#include "geometry/convex.h"
#include "geometry/polish.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

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

WayOut way_out_of_boxes(const Pair& pair) {
  const std::array<Vec3, 3> of_a{pair.a.u, pair.a.v, pair.a.w};
  const std::array<Vec3, 3> of_b{pair.b.u, pair.b.v, pair.b.w};
  const Vec3 half_a{pair.a.size, pair.a.half};
  const Vec3 half_b{pair.b.size, pair.b.half};
  std::array<std::array<double, 3>, 3> turn;  // turn[i][j]: axis i of a along axis j of b
  std::array<std::array<double, 3>, 3> size;  // its absolute values
  std::array<double, 3> from_a;               // the centre of b along the axes of a
  WayOut best{-std::numeric_limits<double>::infinity(), pair.a.w};
  const auto offer = [&best](double separation, double sign, const Vec3& axis) {
    if (separation > best.separation) best = {separation, sign < 0.0 ? -axis : axis};
  };
  for (std::size_t i = 0; i < 3; ++i) {
    double other = 0.0;
    for (std::size_t j = 0; j < 3; ++j) {
      turn[i][j] = glm::dot(of_a[i], of_b[j]);
      size[i][j] = std::abs(turn[i][j]);
      other += size[i][j] * half_b[static_cast<int>(j)];
    }
    from_a[i] = glm::dot(pair.apart, of_a[i]);
    offer(std::abs(from_a[i]) - half_a[static_cast<int>(i)] - other, from_a[i], of_a[i]);
  }
  for (std::size_t j = 0; j < 3; ++j) {
    const double from_b = glm::dot(pair.apart, of_b[j]);
    const double other = size[0][j] * half_a[0] + size[1][j] * half_a[1] + size[2][j] * half_a[2];
    offer(std::abs(from_b) - half_b[static_cast<int>(j)] - other, from_b, of_b[j]);
  }
  if (best.separation > 0.0) return best;
  for (std::size_t i = 0; i < 3; ++i) {
    const std::size_t i1 = (i + 1) % 3;
    const std::size_t i2 = (i + 2) % 3;
    for (std::size_t j = 0; j < 3; ++j) {
      const std::size_t j1 = (j + 1) % 3;
      const std::size_t j2 = (j + 2) % 3;
      const double square = turn[i1][j] * turn[i1][j] + turn[i2][j] * turn[i2][j];  // of the sine between the edges
      if (!(square > 0.0)) continue;
      const double along = from_a[i2] * turn[i1][j] - from_a[i1] * turn[i2][j];  // of apart on of_a[i] x of_b[j]
      const double reach = half_a[static_cast<int>(i1)] * size[i2][j] + half_a[static_cast<int>(i2)] * size[i1][j] +
                           half_b[static_cast<int>(j1)] * size[i][j2] + half_b[static_cast<int>(j2)] * size[i][j1];
      const double over = std::abs(along) - reach;
      // Rounding of `along` and `reach` is divided by the sine, so the accurate value decides.
      const double sine = std::sqrt(square);
      if (!(over > best.separation * sine - pair.rounding)) continue;
      Vec3 d = square_to_both(of_a[i], of_b[j]);
      if (d == Vec3{0.0}) continue;
      if (glm::dot(d, pair.apart) < 0.0) d = -d;
      const double exact = pair.separation(d);
      if (exact > best.separation + 0.01 * pair.rounding) best = {exact, d};
    }
  }
  return best;
}

}  // namespace baywright::geometry
