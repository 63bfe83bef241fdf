#include "geometry/section_loops.h"

#include "geometry/limits.h"
#include "geometry/outline.h"

#include <algorithm>
#include <cmath>

namespace baywright::geometry {
namespace {

double perimeter(const Outline& outline) {
  double sum = 0.0;
  for (std::size_t i = 0; i < outline.size(); ++i) sum += glm::distance(outline[i], outline[(i + 1) % outline.size()]);
  return sum;
}

/// Whether b is a corner that nobody would miss between a and c.
bool straight(const Vec2& a, const Vec2& b, const Vec2& c) {
  const Vec2 d = c - a;
  const Vec2 e = b - a;
  const double length = glm::length(d);
  if (!(length > touch_mm)) return true;  // there and back again
  return std::abs(d.x * e.y - d.y * e.x) <= touch_mm * length;
}

}  // namespace

bool is_empty(const Outline& outline, double thin) {
  return outline.size() < 3 || !(std::abs(signed_area(outline)) > thin * perimeter(outline));
}

void turn_to(Outline& outline, bool counter_clockwise) {
  if ((signed_area(outline) > 0.0) != counter_clockwise) std::reverse(outline.begin(), outline.end());
}

Outline without_repeats(const Outline& outline) {
  Outline kept;
  for (const Vec2& p : outline) {
    if (kept.empty() || glm::distance(kept.back(), p) > touch_mm) kept.push_back(p);
  }
  while (kept.size() > 1 && glm::distance(kept.front(), kept.back()) <= touch_mm) kept.pop_back();
  return kept;
}

Outline without_straight_corners(const Outline& outline) {
  Outline kept;
  for (const Vec2& p : outline) {
    while (kept.size() > 1 && straight(kept[kept.size() - 2], kept.back(), p)) kept.pop_back();
    kept.push_back(p);
  }
  std::size_t first = 0;  // the seam
  while (kept.size() - first > 3) {
    const std::size_t last = kept.size() - 1;
    if (straight(kept[last - 1], kept[last], kept[first])) {
      kept.pop_back();
    } else if (straight(kept[last], kept[first], kept[first + 1])) {
      ++first;
    } else {
      break;
    }
  }
  kept.erase(kept.begin(), kept.begin() + static_cast<std::ptrdiff_t>(first));
  return kept;
}

std::vector<Region> nested(std::vector<Outline> loops) {
  std::vector<Region> regions;
  std::vector<double> sizes;
  for (Outline& loop : loops) {
    if (!(signed_area(loop) > 0.0)) continue;
    sizes.push_back(signed_area(loop));
    regions.push_back({std::move(loop), {}});
    loop.clear();
  }
  for (Outline& hole : loops) {
    if (hole.empty()) continue;
    // Loops touch in places where rounding may put a corner of the hole outside.
    std::size_t owner = regions.size();
    std::ptrdiff_t most = 0;
    for (std::size_t i = 0; i < regions.size(); ++i) {
      if (!(sizes[i] > -signed_area(hole))) continue;
      const auto within = [&](const Vec2& p) { return contains(regions[i].outline, p); };
      const auto count = std::count_if(hole.begin(), hole.end(), within);
      if (count == 0 || count < most || (count == most && sizes[i] >= sizes[owner])) continue;
      owner = i;
      most = count;
    }
    if (owner < regions.size()) regions[owner].holes.push_back(std::move(hole));
  }
  return regions;
}

}  // namespace baywright::geometry
