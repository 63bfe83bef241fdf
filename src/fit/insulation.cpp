#include "fit/insulation.h"

#include "geometry/gap.h"

#include <algorithm>
#include <string_view>
#include <utility>

namespace baywright::fit {

namespace {

Finding note(const std::string& what, const std::string& metal, double gap) {
  Finding out;
  out.kind = Kind::insulation;
  out.between = {what, metal};
  out.why = {Code::bare_near, {{"what", what}, {"metal", metal}}, {{"gap", gap}, {"least", bare_near_mm}}};
  return out;
}

/// Whether it may be metal: what a user gave as a solid or a model. A build does not say what things are made of.
bool may_be_metal(const build::HostPart& part) {
  return part.part.kind != "board";
}

}  // namespace

std::vector<Finding> insulation(const std::vector<Finding>& findings, const build::Build& build, const Seated& seated) {
  std::vector<Finding> out;
  const geometry::Vec3 up = seated.card.pose.direction({0.0, 0.0, 1.0});  // away from a card's underside
  for (const Finding& finding : findings) {
    if (finding.kind != Kind::clearance || !finding.gap || !(finding.gap->min < bare_near_mm)) continue;
    const std::string& body = finding.bodies[0];
    const bool solder = body == "solder side" || body == "chips underneath";
    const bool bare = body == "card" && glm::dot(finding.toward, up) > 0.5;
    if (!solder && !bare) continue;
    const auto part = std::find_if(build.parts.begin(), build.parts.end(),
                                   [&](const build::HostPart& each) { return each.name == finding.between[1]; });
    if (part != build.parts.end() && may_be_metal(*part))
      out.push_back(note(finding.between[0], finding.between[1], finding.gap->min));
  }
  return out;
}

std::vector<Finding> board_insulation(const Host& host, const build::Build& build) {
  std::vector<Finding> out;
  std::vector<int> near;
  for (std::size_t i = 0; i < host.parts.size(); ++i) {
    if (may_be_metal(build.parts[i])) continue;
    const geometry::Vec3 up = host.parts[i].frame.pose.direction({0.0, 0.0, 1.0});
    for (std::size_t j = 0; j < host.parts.size(); ++j) {
      if (!may_be_metal(build.parts[j])) continue;
      const PlacedPart& other = host.parts[j];
      double least = bare_near_mm;
      bool found = false;
      for (int a = host.parts[i].first; a < host.parts[i].first + host.parts[i].count; ++a) {
        host.tree.near(host.scene.element(a).bounds, bare_near_mm, near);
        for (const int b : near) {
          if (b < other.first || b >= other.first + other.count) continue;
          const geometry::Gap gap = geometry::gap(host.scene.element(a).placed, host.scene.element(b).placed);
          if (!(gap.mm < least) || glm::dot(gap.direction, up) > -0.5) continue;
          least = gap.mm;
          found = true;
        }
      }
      if (found) out.push_back(note(build.parts[i].name, build.parts[j].name, std::max(0.0, least)));
    }
  }
  return out;
}

}  // namespace baywright::fit
