#include "viewer/snapping.h"

#include "build/part_face.h"
#include "fit/fixing.h"
#include "parts/form.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace baywright::viewer {

namespace {

constexpr double taken_mm = 0.1;  // another hole as near to a hole of the drive is the one for it
constexpr double same_mm = 1e-3;  // figures are written to a thousandth: closer ones are one

template <typename Target, typename Away>
const Target* nearest(const std::vector<Target>& list, double reach, Away away) {
  const Target* best = nullptr;
  double least = reach;
  for (const Target& each : list)
    if (const double d = away(each); d <= least && (best == nullptr || d < least)) {
      best = &each;
      least = d;
    }
  return best;
}

/// As far from the nearer of two edges as `other` is from the nearer of the two others.
std::optional<SnapLine> corner(double wanted, double length, double other, double other_length, double reach,
                               bool upright) {
  const double edge = std::min(other, other_length - other);
  for (const bool high : {false, true}) {
    const double at = high ? length - edge : edge;
    if (!(std::abs(at - wanted) <= reach)) continue;
    const char* own = upright ? (high ? "right" : "left") : (high ? "upper" : "lower");
    const char* its = upright ? (other <= other_length - other ? "lower" : "upper")
                              : (other <= other_length - other ? "left" : "right");
    return SnapLine{at, std::string("as far from the ") + own + " edge as from the " + its};
  }
  return std::nullopt;
}

// --- what there is to come to rest at ---

/// Whose holes a place's are held against: of the drive that is shown, else of another, else of the standard.
struct Offering {
  build::Drive drive;
  std::string of;  // "flat drive"
};
std::optional<Offering> offering(const Shown& shown, const build::Bay& bay) {
  const auto takes = [&](const build::Drive& drive) { return drive.outer() == bay.form; };
  for (const build::Drive& drive : shown.build.drives)
    if (drive.name == shown.choice.drive && takes(drive)) return Offering{drive, drive.name};
  for (const build::Drive& drive : shown.build.drives)
    if (takes(drive)) return Offering{drive, drive.name};
  const char* id = bay.form == parts::Form::drive_2_5   ? "2.5in"
                   : bay.form == parts::Form::drive_3_5 ? "3.5in"
                                                        : nullptr;
  const auto* family = id == nullptr ? nullptr : standards::drives::family(id);
  if (family == nullptr || bay.on_edge) return std::nullopt;  // on edge a hole's place hangs on the drive's height
  build::Drive made;
  made.form = bay.form;
  made.cased = parts::cased_drive(*family, nullptr, {});
  return Offering{std::move(made), "the " + std::string(family->title)};
}

void add_pattern(const Shown& shown, const HolePlan& plan, const HoleMark& mark, SnapTargets& out) {
  const auto place = std::find_if(shown.build.places.begin(), shown.build.places.end(),
                                  [&](const build::Place& each) { return each.name == mark.place; });
  if (place == shown.build.places.end()) return;
  const auto* bay = std::get_if<build::Bay>(&place->socket);
  if (bay == nullptr || !bay->fixing) return;
  const auto held = offering(shown, *bay);
  if (!held) return;
  const build::PartFace face =
      build::face_of(shown.build.parts[static_cast<std::size_t>(place->part)].part, place->axis, place->back);
  for (const fit::OfferedHole& hole : fit::offered_holes(held->drive, *bay)) {
    const Vec2 at = build::on_face(*place, face, hole.along, hole.other);
    const bool taken = std::any_of(plan.marks.begin(), plan.marks.end(), [&](const HoleMark& other) {
      return other.kind == HoleMark::Kind::hole && other.number != mark.number &&
             glm::distance(other.at, at) < taken_mm;
    });
    if (!taken) out.points.push_back({at, hole.drive_hole->name + " of " + held->of});
  }
}

bool moves_with(const HoleMark& mark, const HoleMark& other) {
  if (&mark == &other || (other.number == mark.number && other.kind == mark.kind && other.place == mark.place))
    return true;
  return mark.kind == HoleMark::Kind::place && other.place == mark.place && other.kind != HoleMark::Kind::own;
}

/// The same words twice, or two reasons for one figure: the first is enough.
void add(std::vector<SnapLine>& to, double at, std::string words) {
  for (const SnapLine& each : to)
    if (std::abs(each.at - at) < same_mm) return;
  to.push_back({at, std::move(words)});
}

}  // namespace

Snapped snapped(const Vec2& wanted, const SnapTargets& targets, double grid, double reach) {
  Snapped out;
  if (const SnapPoint* point =
          nearest(targets.points, reach, [&](const SnapPoint& each) { return glm::distance(each.at, wanted); })) {
    out.at = point->at;
    out.words = "on " + point->words;
    out.x = point->at.x;
    out.y = point->at.y;
    return out;
  }
  std::array<std::optional<SnapLine>, 2> held;
  for (int i = 0; i < 2; ++i) {
    const SnapLine* line = nearest(i == 0 ? targets.xs : targets.ys, reach,
                                   [&](const SnapLine& each) { return std::abs(each.at - wanted[i]); });
    if (line != nullptr) held[static_cast<std::size_t>(i)] = *line;
    out.at[i] = line != nullptr ? line->at : std::round(wanted[i] / grid) * grid;
  }
  for (int i = 0; i < 2 && targets.corners; ++i) {
    if (held[static_cast<std::size_t>(i)]) continue;
    const int j = 1 - i;
    if (auto line = corner(wanted[i], targets.size[i], out.at[j], targets.size[j], reach, i == 0)) {
      out.at[i] = line->at;
      held[static_cast<std::size_t>(i)] = std::move(line);
      break;  // the other one is what this was measured by
    }
  }
  if (held[0]) out.x = out.at.x;
  if (held[1]) out.y = out.at.y;
  const std::string on_grid = grid < 1.0 ? "on tenths" : "on whole mm";
  if (!held[0] && !held[1]) {
    out.words = on_grid;
    return out;
  }
  out.words = "x " + (held[0] ? held[0]->words : on_grid) + "; y " + (held[1] ? held[1]->words : on_grid);
  return out;
}

SnapTargets snap_targets(const HolePlan& plan, const HoleMark& mark, const Shown& shown) {
  SnapTargets out;
  out.size = plan.size;
  if (mark.kind == HoleMark::Kind::hole) add_pattern(shown, plan, mark, out);
  out.corners = mark.kind == HoleMark::Kind::hole;
  std::vector<const HoleMark*> own;  // that move with it
  std::vector<const HoleMark*> others;
  for (const HoleMark& each : plan.marks) {
    if (each.kind == HoleMark::Kind::place) continue;
    (moves_with(mark, each) ? own : others).push_back(&each);
  }
  const auto line_up = [&](int axis, std::vector<SnapLine>& to) {
    if (own.empty()) return;
    double low = std::numeric_limits<double>::infinity();
    double high = -low;
    for (const HoleMark* each : own) {
      low = std::min(low, each->at[axis] - mark.at[axis]);
      high = std::max(high, each->at[axis] - mark.at[axis]);
    }
    const char* what =
        mark.kind == HoleMark::Kind::place ? "its holes in the middle of the part" : "in the middle of the part";
    add(to, 0.5 * (plan.size[axis] - low - high), what);
    for (const HoleMark* mine : own)
      for (const HoleMark* other : others) {
        const double off = mine->at[axis] - mark.at[axis];
        const std::string whose = mine->number == mark.number ? "" : mine->name + ' ';
        add(to, other->at[axis] - off, whose + "in line with " + other->name);
      }
    if (mark.kind != HoleMark::Kind::hole) return;
    for (const HoleMark* other : others)
      add(to, plan.size[axis] - other->at[axis], "as far from its edge as " + other->name + " from the opposite one");
  };
  line_up(0, out.xs);
  line_up(1, out.ys);
  return out;
}

}  // namespace baywright::viewer
