#include "geometry/section_areas.h"

#include "geometry/limits.h"
#include "geometry/section_loops.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <polyclipping/clipper.hpp>

namespace baywright::geometry {
namespace {

using ClipperLib::cInt;
using ClipperLib::Path;
using ClipperLib::PolyNode;

constexpr double grid = thinnest_mm;
constexpr double farthest = 1e12;  // mm: on the grid still within the integers that the library takes

/// Nothing where a coordinate is no figure or too large: the library would throw.
std::optional<Path> on_grid(const Outline& outline) {
  Path path;
  for (const Vec2& p : outline) {
    if (!(std::abs(p.x) <= farthest && std::abs(p.y) <= farthest)) return std::nullopt;
    path.emplace_back(static_cast<cInt>(std::llround(p.x / grid)), static_cast<cInt>(std::llround(p.y / grid)));
  }
  return path;
}

Outline off_grid(const Path& path) {
  Outline outline;
  for (const auto& p : path) outline.emplace_back(static_cast<double>(p.X) * grid, static_cast<double>(p.Y) * grid);
  return outline;
}

bool add(ClipperLib::Clipper& clipper, const Outline& outline, ClipperLib::PolyType as) {
  const std::optional<Path> path = on_grid(outline);
  if (path) clipper.AddPath(*path, as, true);  // false where nothing of it is left on the grid, which is no fault
  return path.has_value();
}

bool add(ClipperLib::Clipper& clipper, const std::vector<Region>& regions, ClipperLib::PolyType as) {
  return std::all_of(regions.begin(), regions.end(), [&](const Region& region) {
    return add(clipper, region.outline, as) && std::all_of(region.holes.begin(), region.holes.end(),
                                                           [&](const Outline& hole) { return add(clipper, hole, as); });
  });
}

void add_regions(const PolyNode& above, std::vector<Region>& regions) {
  for (const PolyNode* outer : above.Childs) {
    Region region{off_grid(outer->Contour), {}};
    for (const PolyNode* inner : outer->Childs) {
      region.holes.push_back(off_grid(inner->Contour));
      turn_to(region.holes.back(), false);
      if (is_empty(region.holes.back(), grid)) region.holes.pop_back();
      add_regions(*inner, regions);
    }
    if (is_empty(region.outline, grid)) continue;
    turn_to(region.outline, true);
    regions.push_back(std::move(region));
  }
}

std::vector<Region> result(ClipperLib::Clipper& clipper, ClipperLib::ClipType what) {
  ClipperLib::PolyTree tree;
  std::vector<Region> regions;
  if (clipper.Execute(what, tree, ClipperLib::pftPositive, ClipperLib::pftPositive)) add_regions(tree, regions);
  return regions;
}

}  // namespace

std::vector<Region> joined(const std::vector<Outline>& loops) {
  try {
    ClipperLib::Clipper clipper;
    for (const Outline& loop : loops) {
      if (!add(clipper, loop, ClipperLib::ptSubject)) return {};
    }
    return result(clipper, ClipperLib::ctUnion);
  } catch (const ClipperLib::clipperException&) {  // its own assertions; none is known to fail
    return {};
  }
}

std::vector<Region> shared(const std::vector<Region>& a, const std::vector<Region>& b) {
  if (a.empty() || b.empty()) return {};
  try {
    ClipperLib::Clipper clipper;
    if (!add(clipper, a, ClipperLib::ptSubject) || !add(clipper, b, ClipperLib::ptClip)) return {};
    return result(clipper, ClipperLib::ctIntersection);
  } catch (const ClipperLib::clipperException&) {
    return {};
  }
}

}  // namespace baywright::geometry
