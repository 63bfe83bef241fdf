#include "render/caps.h"

#include "geometry/triangulation.h"
#include "output/mark.h"

#include <algorithm>
#include <array>
#include <map>

namespace baywright::render {

using geometry::Outline;
using geometry::Region;
using geometry::Vec2;
using geometry::Vec3;
using geometry::View;

namespace {

std::array<float, 3> floats(const Vec3& p) {
  return {static_cast<float>(p.x), static_cast<float>(p.y), static_cast<float>(p.z)};
}

Vec3 in_space(const View& view, const Vec2& p) {
  return view.point + view.right * p.x + view.up * p.y;
}

geometry::Bounds bounds_of(const Cap& cap) {
  geometry::Bounds out = geometry::Bounds::empty();
  for (const Region& region : cap.regions)
    for (const Vec2& p : region.outline) out.add({p, 0.0});
  return out;
}

bool is_near(const Cap& a, const Cap& b) {
  constexpr double near = 0.5;  // mm
  if (a.regions.empty() || b.regions.empty()) return false;
  return bounds_of(a).distance(bounds_of(b)) < near;
}

}  // namespace

std::vector<Hatch> hatches(const std::vector<Cap>& caps, const std::vector<std::string>& parts) {
  // Two senses and three spacings: six kinds, more than what usually meets at one place.
  constexpr std::array<Hatch, 6> kinds = {
      {{45.0, 1.0}, {135.0, 1.0}, {45.0, 0.6}, {135.0, 0.6}, {45.0, 1.6}, {135.0, 1.6}}};
  std::map<std::string, std::size_t> chosen;
  for (std::size_t i = 0; i < caps.size(); ++i) {
    if (chosen.contains(parts[i])) continue;
    std::array<bool, kinds.size()> taken{};
    for (std::size_t own = 0; own < caps.size(); ++own) {
      if (parts[own] != parts[i]) continue;
      for (std::size_t j = 0; j < caps.size(); ++j) {
        const auto other = chosen.find(parts[j]);
        if (other != chosen.end() && is_near(caps[own], caps[j])) taken[other->second] = true;
      }
    }
    const auto free = static_cast<std::size_t>(std::find(taken.begin(), taken.end(), false) - taken.begin());
    chosen[parts[i]] = free % kinds.size();
  }
  std::vector<Hatch> out;
  for (const std::string& part : parts) out.push_back(kinds[chosen[part]]);
  return out;
}

Mesh area_mesh(const std::vector<Region>& regions, const View& view) {
  Mesh out;
  const auto normal = floats(view.normal());
  for (const Region& region : regions)
    for (const Vec2& p : geometry::triangles(region.outline, region.holes)) {
      out.at.push_back(floats(in_space(view, p)));
      out.normal.push_back(normal);
    }
  return out;
}

Strokes outline_strokes(const std::vector<Region>& regions, const View& view) {
  Strokes out;
  const auto add = [&](const Outline& ring) {
    for (std::size_t i = 0; i < ring.size(); ++i) {
      out.at.push_back(floats(in_space(view, ring[i])));
      out.at.push_back(floats(in_space(view, ring[(i + 1) % ring.size()])));
    }
  };
  for (const Region& region : regions) {
    add(region.outline);
    for (const Outline& hole : region.holes) add(hole);
  }
  return out;
}

Strokes hatch_strokes(const std::vector<Region>& regions, const View& view, const Hatch& hatch, double pitch) {
  Strokes out;
  for (const Region& region : regions) {
    output::Area area;
    area.outlines = region.holes;
    area.outlines.push_back(region.outline);
    area.pattern = output::Pattern::hatch;
    area.degrees = hatch.degrees;
    area.pitch = hatch.pitch * pitch;
    for (const auto& [p, q] : output::strokes(area).lines) {
      out.at.push_back(floats(in_space(view, p)));
      out.at.push_back(floats(in_space(view, q)));
    }
  }
  return out;
}

}  // namespace baywright::render
