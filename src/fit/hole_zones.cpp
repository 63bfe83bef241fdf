#include "fit/hole_zones.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace baywright::fit {

using geometry::Vec2;
using tolerance::Dimension;

namespace {

int entered_once(std::vector<Dimension>& list, const Dimension& dimension) {
  for (std::size_t i = 0; i < list.size(); ++i)
    if (list[i].name == dimension.name) return static_cast<int>(i);
  list.push_back(dimension);
  return static_cast<int>(list.size()) - 1;
}

/// Half the limits of what moves one hole but not all of them.
double half_range(const HoleMatch& match, const std::vector<std::vector<int>>& moves, std::size_t hole) {
  double sum = 0.0;
  for (const int i : moves[hole]) {
    const bool common = std::all_of(moves.begin(), moves.end(), [&](const std::vector<int>& each) {
      return std::find(each.begin(), each.end(), i) != each.end();
    });
    const Dimension& d = match.dimensions[static_cast<std::size_t>(i)];
    if (!common) sum += std::max(d.minus, d.plus);
  }
  return sum;
}

}  // namespace

HoleMatch hole_match(const build::Drive& drive, const build::Bay& bay, const std::vector<UsedHole>& used) {
  HoleMatch out;
  const std::vector<double> values = parts::nominal_values(drive.cased.part);
  const double half_width = 0.5 * drive.cased.width.at(values);
  const double half_height = 0.5 * drive.cased.height.at(values);
  for (const UsedHole& hole : used) {
    const double aside = hole.drive_hole->aside();
    const double right = bay.on_edge ? half_height - aside : bay.fixing->side ? aside : aside - half_width;
    out.at.emplace_back(hole.along, hole.other);
    out.off.push_back(Vec2(hole.along, hole.other) - Vec2(hole.drive_hole->x(), right));
    out.wide.push_back(bay.fixing->width(hole.index));
    for (const bool lengthwise : {true, false}) {
      std::vector<int> moved;
      for (const Dimension& d : lengthwise ? hole.drive_hole->along : hole.drive_hole->across)
        if (!d.exact() && !d.open()) moved.push_back(entered_once(out.dimensions, d));
      (lengthwise ? out.along : out.across).push_back(std::move(moved));
    }
  }
  return out;
}

double drive_zone(const HoleMatch& match) {
  Vec2 middle(0.0);
  for (const Vec2& off : match.off) middle += off / static_cast<double>(match.off.size());
  double zone = 0.0;
  double differ = 0.0;
  for (std::size_t i = 0; i < match.off.size(); ++i) {
    zone = std::max(zone, 2.0 * std::hypot(half_range(match, match.along, i), half_range(match, match.across, i)));
    differ = std::max(differ, 2.0 * glm::distance(match.off[i], middle));
  }
  return zone + differ;
}

double position_zone(const Dimension& position) {
  return 2.0 * std::numbers::sqrt2 * std::max(position.minus, position.plus);
}

double sure_hole(const HoleMatch& match, double screw, const Dimension& position, double under) {
  return screw + position_zone(position) + drive_zone(match) + under;
}

}  // namespace baywright::fit
