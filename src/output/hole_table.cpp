#include "output/hole_table.h"

#include "tolerance/reading.h"

#include <algorithm>
#include <array>

namespace baywright::output {

using geometry::Vec3;

namespace {

constexpr double heading = 9.5;
constexpr double most_pitch = 3.6;
constexpr double least_pitch = 3.1;
constexpr double most_height = 62.0;

const build::Fixing* fixing_of(const Subject& s) {
  const build::Bay* bay = s.bay();
  return bay != nullptr && bay->fixing ? &*bay->fixing : nullptr;
}

double pitch_of(std::size_t holes) {
  return std::max(least_pitch, std::min(most_pitch, (most_height - heading) / static_cast<double>(holes)));
}

/// Where a hole of the place is, in the world; on the right of the two that face each other in side walls.
Vec3 hole_at(const Subject& s, const build::Fixing& fixing, const std::array<double, 2>& hole) {
  const geometry::Pose& slot = s.seated.slot.pose;
  const double raised = s.bay()->raised ? s.bay()->raised->dimension.nominal : 0.0;
  return slot.point(fixing.side ? Vec3(0.0, hole[0], raised + hole[1]) : Vec3(hole[1], hole[0], 0.0));
}

}  // namespace

double hole_table_height(const Subject& s) {
  const build::Fixing* fixing = fixing_of(s);
  if (fixing == nullptr || fixing->holes.empty()) return 0.0;
  return heading + pitch_of(fixing->holes.size()) * static_cast<double>(fixing->holes.size()) + 2.0;
}

void draw_hole_table(const Subject& s, const Vec2& at, double width, Group& all) {
  const build::Fixing& fixing = *fixing_of(s);
  Group out;
  out.name = "holes";
  out.add(fitted(at + Vec2(0.0, 3.0), fixing.side ? "Holes, in both side walls" : "Holes", width, title_size,
                 smallest_text, true));
  const std::array<double, 5> columns = {0.0, 8.0, 19.5, 31.0, 44.0};
  const std::array<const char*, 5> names = {"hole", "along", fixing.side ? "up" : "across", "diameter", "meets"};
  double y = at.y + 7.4;
  for (std::size_t i = 0; i < names.size(); ++i) out.add(text({at.x + columns[i], y}, names[i]));
  out.add(Line{{{at.x, y + 1.2}, {at.x + width, y + 1.2}}, false, {}});
  const double pitch = pitch_of(fixing.holes.size());
  for (std::size_t i = 0; i < fixing.holes.size(); ++i) {
    y += pitch + (i == 0 ? 0.6 : 0.0);
    const std::string meets = i < s.seated.meets.size() ? s.seated.meets[i] : std::string();
    const std::array<std::string, 5> cells = {
        std::to_string(i + 1), tolerance::in_words(fixing.middle(i)[0]), tolerance::in_words(fixing.middle(i)[1]),
        tolerance::in_words(fixing.width(i).nominal), meets.empty() ? "nothing" : meets};
    for (std::size_t j = 0; j < cells.size(); ++j) {
      const double room = (j + 1 < columns.size() ? columns[j + 1] - 1.0 : width) - columns[j];
      out.add(text({at.x + columns[j], y}, shortened(cells[j], room, smallest_text)));
    }
  }
  all.add(std::move(out));
}

void draw_holes(const Subject& s, Group& group, const geometry::View& view, const Placement& placement) {
  const build::Fixing* fixing = fixing_of(s);
  if (fixing == nullptr) return;
  constexpr double past = 1.3;  // mm of paper: centre lines beyond the hole
  const double radius = placement.scale * 0.5 * fixing->diameter.dimension.nominal;
  const auto number = [&](std::size_t i, const Vec2& at) {
    Text label = text(at, std::to_string(i + 1));
    label.haloed = true;
    if (has_room(group, box_of(label))) group.add(label);
  };
  for (std::size_t i = 0; i < fixing->holes.size(); ++i) {
    const Vec2 flat = view.flat(hole_at(s, *fixing, fixing->middle(i)));
    const Vec2 at = placement.at(flat);
    if (!fixing->side) {
      group.add(Disc{at, radius, "", Pen{thin_line, ink, true}});
      group.add(Line{{at - Vec2(radius + past, 0.0), at + Vec2(radius + past, 0.0)}, false, {}});
      group.add(Line{{at - Vec2(0.0, radius + past), at + Vec2(0.0, radius + past)}, false, {}});
      number(i, at + Vec2(radius + 0.6, -radius - 0.4));
      continue;
    }
    double across = 0.0;  // mm from the middle to the outer end of the heads
    for (int j = s.seated.scene.first_element(); j < s.seated.scene.element_count(); ++j) {
      const fit::Element& element = s.seated.scene.element(j);
      const bool counts = element.part == "screw" || element.body == "left wall" || element.body == "right wall";
      if (counts) across = std::max(across, bounds_in(view, element).high.y);
    }
    if (across == 0.0) continue;
    for (const double side : {-1.0, 1.0}) {
      const Vec2 outer = placement.at({flat.x, flat.y + side * across});
      group.add(Line{{outer + Vec2(0.0, -side * past), outer + Vec2(0.0, side * 6.0)}, false, {}});
    }
    number(i, placement.at({flat.x, flat.y - across}) + Vec2(0.8, -4.6));
  }
}

}  // namespace baywright::output
