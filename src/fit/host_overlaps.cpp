#include "fit/host_overlaps.h"

#include "fit/limits.h"
#include "geometry/gap.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace baywright::fit {

namespace {

constexpr double deeper = 1e-6;  // mm: what is made to touch does not run into each other

struct Depth {
  double nominal = 0.0;  // mm; below 0 they are apart
  double worst = 0.0;
};

}  // namespace

double least_gap(const Host& host, int a, int b, tolerance::Method method) {
  return limits(host.scene, host.scene.element(a), host.scene.element(b), tolerance::chain_method(method), 0.0).min;
}

std::vector<Finding> host_overlaps(const Host& host, const build::Build& build, tolerance::Method method) {
  std::vector<Finding> out;
  std::vector<int> near;
  const auto part_of = [&](int element) {
    for (std::size_t i = 0; i < host.parts.size(); ++i)
      if (element >= host.parts[i].first && element < host.parts[i].first + host.parts[i].count)
        return static_cast<int>(i);
    return -1;  // a slot's own
  };
  std::map<std::pair<int, int>, Depth> deepest;
  for (int a = 0; a < host.scene.element_count(); ++a) {
    const int part_a = part_of(a);
    if (part_a < 0) continue;
    const Element& one = host.scene.element(a);
    host.tree.near(swept(one), 0.0, near);
    for (const int b : near) {
      const int part_b = part_of(b);
      if (b <= a || part_b < 0 || part_a == part_b) continue;
      const Element& other = host.scene.element(b);
      const geometry::Gap gap = geometry::gap(one.placed, other.placed);
      if (gap.mm > glm::length(one.swing + other.swing)) continue;
      const bool overlap = gap.relation == geometry::Relation::overlapping;
      const double least = least_gap(host, a, b, method);
      // Whether a mesh without an inside holds the other is not known, and is said of the mesh.
      const bool may = least < -deeper && std::isfinite(least) && gap.bound != geometry::Bound::surface;
      if (!overlap && !may) continue;
      const Depth found{-gap.mm, std::isfinite(least) ? std::max(-least, -gap.mm) : -gap.mm};
      const auto [known, fresh] = deepest.try_emplace(std::minmax(part_a, part_b), found);
      if (fresh) continue;
      known->second.nominal = std::max(known->second.nominal, found.nominal);
      known->second.worst = std::max(known->second.worst, found.worst);
    }
  }
  for (const auto& [parts, depth] : deepest) {
    const std::string& a = build.parts[static_cast<std::size_t>(parts.first)].name;
    const std::string& b = build.parts[static_cast<std::size_t>(parts.second)].name;
    Finding finding;
    finding.kind = Kind::host;
    finding.between = {a, b};
    finding.why = {depth.nominal > 0.0 ? Code::parts_overlap : Code::parts_may_meet,
                   {{"a", a}, {"b", b}},
                   {{"depth", depth.nominal}, {"worst", depth.worst}}};
    out.push_back(std::move(finding));
  }
  return out;
}

}  // namespace baywright::fit
