#include "output/views.h"

#include "geometry/overlap.h"
#include "tolerance/reading.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <set>

namespace baywright::output {

using fit::Element;
using fit::Finding;
using fit::Scene;
using fit::Seated;
using geometry::Vec3;
using geometry::View;

namespace {

constexpr double margin = 5.0;       // mm round the drive, along the board
constexpr double near = 8.0;         // mm: parts that stand within this of the drive are shown
constexpr double drawn_same = 0.02;  // mm: what a drawing may differ by from the gap that it shows
constexpr double along_axis = 0.9999;

std::string family(const std::string& body) {
  const std::size_t end = body.find_last_not_of("0123456789 ");
  return end == std::string::npos ? body : body.substr(0, end + 1);
}

std::vector<Outline> cuts_of(const Scene& scene, const std::vector<int>& elements, const View& view) {
  std::vector<Outline> out;
  for (const int element : elements)
    for (auto& region : geometry::section(scene.element(element).placed, view))
      out.push_back(std::move(region.outline));
  return out;
}

/// How far apart two sets of outlines are along a direction, by their extents; none where one is empty.
std::optional<double> apart(const std::vector<Outline>& a, const std::vector<Outline>& b, const Vec2& along) {
  double end = -std::numeric_limits<double>::infinity();
  double start = std::numeric_limits<double>::infinity();
  for (const Outline& outline : a)
    for (const Vec2& p : outline) end = std::max(end, glm::dot(p, along));
  for (const Outline& outline : b)
    for (const Vec2& p : outline) start = std::min(start, glm::dot(p, along));
  if (!std::isfinite(end) || !std::isfinite(start)) return std::nullopt;
  return start - end;
}

/// Where the line p + t * along crosses the outlines' boundaries.
std::vector<double> crossings(const std::vector<Outline>& outlines, const Vec2& p, const Vec2& along) {
  const Vec2 side(-along.y, along.x);
  std::vector<double> out;
  for (const Outline& outline : outlines)
    for (std::size_t i = 0; i < outline.size(); ++i) {
      const Vec2 a = outline[i] - p;
      const Vec2 b = outline[(i + 1) % outline.size()] - p;
      const double sa = glm::dot(a, side);
      const double sb = glm::dot(b, side);
      if ((sa > 0.0) == (sb > 0.0)) continue;
      out.push_back(glm::dot(a + (b - a) * (sa / (sa - sb)), along));
    }
  std::sort(out.begin(), out.end());
  return out;
}

/// How far outlines reach along a direction, and over what stretch sideways they do.
struct Reach {
  double end = -std::numeric_limits<double>::infinity();
  double low = std::numeric_limits<double>::infinity();
  double high = -std::numeric_limits<double>::infinity();
};

Reach reach(const std::vector<Outline>& outlines, const Vec2& along, const Vec2& side) {
  Reach out;
  for (const Outline& outline : outlines)
    for (const Vec2& p : outline) out.end = std::max(out.end, glm::dot(p, along));
  for (const Outline& outline : outlines)
    for (const Vec2& p : outline) {
      if (glm::dot(p, along) < out.end - drawn_same) continue;
      out.low = std::min(out.low, glm::dot(p, side));
      out.high = std::max(out.high, glm::dot(p, side));
    }
  return out;
}

std::optional<double> nearest_to(const std::vector<double>& values, double wanted) {
  std::optional<double> best;
  for (const double value : values)
    if (!best || std::abs(value - wanted) < std::abs(*best - wanted)) best = value;
  return best;
}

/// The drive's own elements, and those of the host that are of its slot and no larger than a card: socket, stand-offs.
std::vector<int> of_slot(const Seated& seated) {
  std::vector<int> out;
  const Scene& scene = seated.scene;
  geometry::Bounds own = geometry::Bounds::empty();
  for (const Element& element : scene.elements) own.add(element.bounds);
  constexpr double reach = 15.0;
  for (const int i : seated.joint_host) {
    const geometry::Bounds& box = scene.element(i).bounds;
    bool inside = true;
    for (int axis = 0; axis < 3; ++axis)
      inside = inside && box.low[axis] > own.low[axis] - reach && box.high[axis] < own.high[axis] + reach;
    if (inside) out.push_back(i);
  }
  for (int i = scene.first_element(); i < scene.element_count(); ++i) out.push_back(i);
  return out;
}

Vec3 gap_direction(const Finding& finding) {
  return -finding.toward;
}

/// Whether the plane cuts the first or second part of the gap.
bool cuts(const Seated& seated, const Finding& finding, std::size_t which, const View& view) {
  return !cuts_of(seated.scene, alike(seated.scene, finding.between[which], finding.bodies[which]), view).empty();
}

/// Whether the plane cuts both parts and shows the gap as wide as it is.
bool shows(const Seated& seated, const Finding& finding, const View& view) {
  const auto a = cuts_of(seated.scene, alike(seated.scene, finding.between[0], finding.bodies[0]), view);
  const auto b = cuts_of(seated.scene, alike(seated.scene, finding.between[1], finding.bodies[1]), view);
  const Vec3 n = gap_direction(finding);
  const Vec2 along(glm::dot(n, view.right), glm::dot(n, view.up));
  if (glm::length(along) < along_axis) return !a.empty() && !b.empty();
  const auto seen = apart(a, b, along);
  return seen && std::abs(*seen - finding.gap->nominal) <= drawn_same;
}

/// M.2 and mini cards are cut across as seen from their far end; the rest as seen from its connector or bracket, so
/// that what is called left lies to the left and the elevation belongs to the right of the section.
View card_view(const Seated& seated, Stance stance, bool along) {
  const auto& pose = seated.slot.pose;
  const bool flat_card = stance == Stance::m2 || stance == Stance::mini;
  return {pose.shift, along ? pose.turn[1] : flat_card ? -pose.turn[0] : pose.turn[0], pose.turn[2]};
}

/// Moves the plane along its normal to where it shows the gap: the centre line, or the place of the gap and a little to
/// either side of it, since the place may be at the very corner of a part.
bool aim(View& view, const Seated& seated, const Finding& finding, bool centre_first) {
  const double to_spot = view.depth(finding.at);
  std::vector<double> tries;
  if (centre_first) tries.push_back(0.0);
  for (const double by : {0.0, 0.01, -0.01, 0.2, -0.2, 1.0, -1.0}) tries.push_back(to_spot + by);
  const Vec3 from = view.point;
  for (const double depth : tries) {
    view.point = from + view.normal() * depth;
    if (shows(seated, finding, view)) return depth == 0.0;
  }
  // A part that reaches round the other, as a sheet round what stands in its opening, is on both sides of it.
  for (const double depth : tries) {
    view.point = from + view.normal() * depth;
    if (cuts(seated, finding, 0, view) && cuts(seated, finding, 1, view)) return depth == 0.0;
  }
  view.point = from + view.normal() * to_spot;
  return false;
}

/// The window's height, less what is empty above and below.
Window trimmed(const Seated& seated, const View& view, Window window) {
  double low = std::numeric_limits<double>::infinity();
  double high = -low;
  for (const Seen& seen : cut_scene(seated.scene, view, window, 1.0, false))
    for (const Outline& outline : seen.outlines)
      for (const Vec2& p : outline) {
        low = std::min(low, p.y);
        high = std::max(high, p.y);
      }
  constexpr double air = 0.5;
  if (low < high) {
    window.low.y = std::max(window.low.y, low - air);
    window.high.y = std::min(window.high.y, high + air);
  }
  return window;
}

}  // namespace

std::vector<int> alike(const Scene& scene, const std::string& part, const std::string& body) {
  std::vector<int> out;
  for (int i = 0; i < scene.element_count(); ++i) {
    const Element& element = scene.element(i);
    if (element.part == part && family(element.body) == family(body)) out.push_back(i);
  }
  return out;
}

Window window_round(const Seated& seated, const View& view, double by) {
  Window out{Vec2(std::numeric_limits<double>::infinity()), Vec2(-std::numeric_limits<double>::infinity())};
  for (const int i : of_slot(seated)) {
    const Window each = bounds_in(view, seated.scene.element(i));
    out.low = glm::min(out.low, each.low);
    out.high = glm::max(out.high, each.high);
  }
  out.low -= Vec2(by);
  out.high += Vec2(by);
  return out;
}

namespace {

bool about_holes(const Finding& finding) {
  return finding.kind == fit::Kind::screw || finding.kind == fit::Kind::holes;
}

/// Where a section across has nothing to show: the middle of what stands there.
void aim_at_middle(View& view, const Seated& seated) {
  geometry::Bounds own = geometry::Bounds::empty();
  for (int i = seated.scene.first_element(); i < seated.scene.element_count(); ++i)
    if (seated.brings(i)) own.add(seated.scene.element(i).bounds);
  view.point += view.normal() * view.depth(0.5 * (own.low + own.high));
}

std::string section_title(Stance stance, const SectionView& section, const Finding* finding, bool centre) {
  const bool drive = stance == Stance::flat || stance == Stance::on_edge;
  std::string title = section.along ? "Section along the " : "Section across the ";
  title += drive ? "drive" : stance == Stance::card && section.along ? "slot" : "card";
  if (finding != nullptr && about_holes(*finding)) return title + ", through its first screw";
  if (centre) return title + ", on its centre line";
  if (upright(stance) && !section.along) return title;  // the elevation stands close by
  return title + (finding == nullptr ? ", in its middle" : ", where it decides");
}

}  // namespace

Stance stance_of(const build::Place& place) {
  if (std::holds_alternative<build::MiniSocket>(place.socket)) return Stance::mini;
  if (std::holds_alternative<build::CardSlot>(place.socket)) return Stance::card;
  if (const auto* bay = std::get_if<build::Bay>(&place.socket)) return bay->on_edge ? Stance::on_edge : Stance::flat;
  return Stance::m2;
}

bool upright(Stance stance) {
  return stance == Stance::card || stance == Stance::on_edge;
}

SectionView section_view(const Seated& seated, Stance stance, const Finding* finding) {
  constexpr double neighbours = 26.0;  // mm to either side: a slot's pitch and more
  const auto& axes = seated.slot.pose.turn;
  const auto is_along = [&](int axis) { return std::abs(glm::dot(finding->toward, axes[axis])) >= along_axis; };
  SectionView out;
  out.along = finding == nullptr ? !upright(stance) : upright(stance) ? is_along(1) : !is_along(0);
  out.view = card_view(seated, stance, out.along);
  bool centre = out.along;
  if (finding == nullptr) {
    if (!out.along) aim_at_middle(out.view, seated);
  } else if (about_holes(*finding)) {
    out.view.point += out.view.normal() * out.view.depth(finding->at);
  } else {
    centre = aim(out.view, seated, *finding, out.along);
  }
  out.title = section_title(stance, out, finding, centre && out.along);
  out.window = window_round(seated, out.view, margin);
  out.window.low.y -= near - margin;
  out.window.high.y += near - margin;
  if (stance == Stance::card && !out.along)
    out.window.low.x -= neighbours - margin, out.window.high.x += neighbours - margin;
  out.window = trimmed(seated, out.view, out.window);
  return out;
}

OuterView outer_view(const Seated& seated, Stance stance, const SectionView& section, bool holes) {
  const auto& pose = seated.slot.pose;
  OuterView out;
  out.beside = upright(stance) && !section.along && !holes;
  if (out.beside) {
    out.view = {pose.shift, pose.turn[1], pose.turn[2]};
    out.title = stance == Stance::card ? "Elevation on the component side" : "Elevation along the drive";
    out.window = window_round(seated, out.view, margin);
    out.heights = stance != Stance::card;
    out.window.low.y = section.window.low.y;  // level with it
    out.window.high.y = section.window.high.y;
    return out;
  }
  out.view = {pose.shift, pose.turn[1], -pose.turn[0]};
  out.title = stance == Stance::flat || stance == Stance::on_edge ? "Plan on the drive" : "Plan on the card";
  out.window = window_round(seated, out.view, margin);
  if (section.along) out.window.low.x = section.window.low.x, out.window.high.x = section.window.high.x;
  return out;
}

Spot spot_in(const Seated& seated, const Finding& finding, const View& view) {
  Spot spot;
  const Vec3 n = gap_direction(finding);
  const Vec2 flat(glm::dot(n, view.right), glm::dot(n, view.up));
  const Vec2 at = view.flat(finding.at);
  spot.in_plane = glm::length(flat) > along_axis;
  spot.along = glm::length(flat) > 0.1 ? glm::normalize(flat) : Vec2(0.0, 1.0);
  const double half = 0.5 * finding.gap->nominal * glm::length(flat);
  spot.on_drive = at - spot.along * half;
  spot.on_other = at + spot.along * half;
  const auto a = cuts_of(seated.scene, alike(seated.scene, finding.between[0], finding.bodies[0]), view);
  const auto b = cuts_of(seated.scene, alike(seated.scene, finding.between[1], finding.bodies[1]), view);
  // The place may be at the end of a face, so the line across the gap is tried a little inside of it, either way.
  const Vec2 side(-spot.along.y, spot.along.x);
  bool faced = false;
  for (const double by : {0.6, -0.6, 0.2, -0.2, 0.0}) {
    const auto on_a = nearest_to(crossings(a, at + side * by, spot.along), -half);
    const auto on_b = nearest_to(crossings(b, at + side * by, spot.along), half);
    if (!on_a || !on_b || std::abs(*on_a + half) > 0.3 || std::abs(*on_b - half) > 0.3) continue;
    spot.on_drive = at + side * by + spot.along * *on_a;
    spot.on_other = at + side * by + spot.along * *on_b;
    faced = true;
    break;
  }
  // Where the two do not face each other (past a corner), the gap stands between their nearest corners.
  if (!faced && spot.in_plane && !a.empty() && !b.empty()) {
    const Reach from = reach(a, spot.along, side);
    const Reach to = reach(b, -spot.along, side);
    const double level = from.low > to.high   ? 0.5 * (from.low + to.high)
                         : to.low > from.high ? 0.5 * (to.low + from.high)
                                              : 0.5 * (std::max(from.low, to.low) + std::min(from.high, to.high));
    spot.on_drive = spot.along * from.end + side * level;
    spot.on_other = spot.along * -to.end + side * level;
  }
  const Scene& scene = seated.scene;
  for (const int one : alike(scene, finding.between[0], finding.bodies[0]))
    for (const int other : alike(scene, finding.between[1], finding.bodies[1]))
      for (geometry::Region& region : geometry::overlap(scene.element(one).placed, scene.element(other).placed, view))
        spot.overlap.push_back(std::move(region));
  return spot;
}

namespace {

/// What the element gains in length along `up` for each mm of the dimension, per mm of its length. A rigid motion: 0.
double stretch(const fit::Motion& motion, const Vec3& up) {
  double gain = 0.0;
  for (int i = 0; i < motion.stretch_count; ++i) {
    const fit::Stretch& one = motion.stretches[static_cast<std::size_t>(i)];
    const double along = glm::dot(up, one.axis);
    gain += along * along * (one.high_rate - one.low_rate) / (one.high - one.low);
  }
  return gain;
}

struct Span {
  double low = std::numeric_limits<double>::infinity();
  double high = -std::numeric_limits<double>::infinity();
  double right = -std::numeric_limits<double>::infinity();  // where the part ends toward the labels

  [[nodiscard]] double length() const { return high - low; }
};

/// The levels of a part's cuts over the middle of its length.
template <typename Wanted>
Span span_of(const std::vector<Seen>& seen, const Wanted& wanted) {
  Span out;
  std::vector<Outline> outlines;
  double left = std::numeric_limits<double>::infinity();
  for (const Seen& each : seen)
    if (each.cut && wanted(each.element))
      for (const Outline& outline : each.outlines) {
        outlines.push_back(outline);
        for (const Vec2& p : outline) {
          left = std::min(left, p.x);
          out.right = std::max(out.right, p.x);
        }
      }
  for (const double share : {0.5, 0.37, 0.81}) {  // the middle may be a gap between fins
    const double middle = left + share * (out.right - left);
    const std::vector<double> levels = crossings(outlines, {middle, 0.0}, {0.0, 1.0});
    if (levels.empty()) continue;
    out.low = levels.front();
    out.high = levels.back();
    break;
  }
  return out;
}

struct Found {
  std::set<int> dimensions;  // each is shown once
  std::vector<Height> heights;
};

Height height_of(const Placement& placement, std::string name, std::string value, const Span& span, double low,
                 double high) {
  const double from = placement.at({span.right, 0.0}).x + 0.8;
  return {std::move(name), std::move(value), placement.at({0.0, low}).y, placement.at({0.0, high}).y, from, from};
}

void add_thickness(Found& found, const Scene& scene, int index, const std::string& drive, const SectionView& section,
                   const std::vector<Seen>& seen, const Placement& placement) {
  constexpr double solder = 0.06;  // mm: a stand-off stands on its solder, which its dimension leaves out
  const Element& element = scene.element(index);
  const Span own = span_of(seen, [&](int other) { return other == index; });
  const Span whole = span_of(seen, [&](int other) { return scene.element(other).part == element.part; });
  for (const fit::Motion& motion : element.motions) {
    const double gain = stretch(motion, section.view.up) * own.length();
    if (!(std::abs(gain) > 0.01) || found.dimensions.contains(motion.dimension)) continue;
    const tolerance::Dimension& d = scene.dimension(motion.dimension);
    for (const Span* span : {&own, &whole}) {
      const double length = gain * d.nominal;
      if (!(std::abs(length - span->length()) <= solder)) continue;
      std::string name = element.part != drive                               ? element.part
                         : element.body == "edge" || element.body == "board" ? "card"
                         : element.body == "case"                            ? "drive"
                                                                             : element.body;
      std::string value = tolerance::in_words(d);
      if (gain < 0.99) value = tolerance::in_words(std::round(length * 100.0) / 100.0) + " (free " + value + ")";
      found.heights.push_back(
          height_of(placement, std::move(name), std::move(value), *span, span->high - length, span->high));
      found.dimensions.insert(motion.dimension);
      break;
    }
  }
}

/// The distance at which a host part was placed: from one of its faces to a face of another part.
void add_distance(Found& found, const Scene& scene, int index, const SectionView& section,
                  const std::vector<Seen>& seen, const Placement& placement) {
  const Element& element = scene.element(index);
  const Span own = span_of(seen, [&](int other) { return other == index; });
  for (const fit::Motion& motion : element.motions) {
    const tolerance::Dimension& d = scene.dimension(motion.dimension);
    const bool moves = std::abs(std::abs(glm::dot(motion.shift, section.view.up)) - 1.0) < 1e-9 &&
                       motion.turn == geometry::Mat3(0.0) && motion.stretch_count == 0;
    if (!moves || !(d.nominal > 0.0) || found.dimensions.contains(motion.dimension)) continue;
    for (int other = 0; other < scene.first_element(); ++other) {
      if (scene.element(other).part == element.part) continue;
      const Span theirs = span_of(seen, [&](int each) { return each == other; });
      for (const auto& [low, high] : {std::pair(theirs.high, own.low), std::pair(own.high, theirs.low)}) {
        if (!(std::abs(high - low - d.nominal) < 1e-3) || found.dimensions.contains(motion.dimension)) continue;
        Height height = height_of(placement, d.name, tolerance::in_words(d), own, low, high);
        height.from = placement.at({theirs.right, 0.0}).x + 0.8;
        if (low == own.high) std::swap(height.from, height.from_high);
        found.heights.push_back(std::move(height));
        found.dimensions.insert(motion.dimension);
      }
    }
  }
}

/// A bay's inner height: from the face that carries it to its roof.
void add_roof(Found& found, const Seated& seated, int index, const SectionView& section, const std::vector<Seen>& seen,
              const Placement& placement) {
  const int dimension = seated.machine.at(index);
  if (dimension < 0 || found.dimensions.contains(dimension)) return;
  const tolerance::Dimension& d = seated.scene.dimension(dimension);
  const Span own = span_of(seen, [&](int other) { return other == index; });
  const double floor = section.view.flat(seated.slot.pose.shift).y;
  if (!(std::abs(own.low - floor - d.nominal) < 1e-3)) return;
  found.heights.push_back(height_of(placement, d.name, tolerance::in_words(d), own, floor, own.low));
  found.dimensions.insert(dimension);
}

}  // namespace

std::vector<Height> heights_in(const Seated& seated, Stance stance, const std::string& drive, const Finding* finding,
                               const SectionView& section, const std::vector<Seen>& seen, const Placement& placement) {
  constexpr std::size_t most = 9;
  // Of an add-in card the board's height is what people measure.
  const auto aside = [&](const Element& element) {
    return stance == Stance::card && (element.body == "tab" || element.body == "bracket" || element.body == "tongue");
  };
  const Scene& scene = seated.scene;
  std::set<int> cut;
  for (const Seen& each : seen)
    if (each.cut) cut.insert(each.element);
  Found found;
  for (const int i : cut) {
    const bool own = seated.brings(i);
    const Element& element = scene.element(i);
    if (seated.machine.contains(i)) {
      if (element.body == "roof") add_roof(found, seated, i, section, seen, placement);
      continue;
    }
    if (aside(element)) continue;
    const bool decides = finding != nullptr && element.part == finding->between[0];
    if (own && (element.part != "screw" || decides)) add_thickness(found, scene, i, drive, section, seen, placement);
    if (!own && element.body == "standoff" && seated.joint_host.contains(i))
      add_thickness(found, scene, i, drive, section, seen, placement);
    if (!own) add_distance(found, scene, i, section, seen, placement);
  }
  // A heatsink's base is a height of the heatsink too; the whole is what people measure.
  std::vector<Height>& heights = found.heights;
  std::stable_sort(heights.begin(), heights.end(), [](const Height& a, const Height& b) {
    return a.name != b.name ? a.name < b.name : a.low - a.high > b.low - b.high;
  });
  heights.erase(
      std::unique(heights.begin(), heights.end(), [](const Height& a, const Height& b) { return a.name == b.name; }),
      heights.end());
  if (found.heights.size() > most) found.heights.resize(most);
  return found.heights;
}

std::string figures_of(const Scene& scene, const std::vector<int>& elements, const Vec3& along, double length) {
  for (const int i : elements) {
    const Element& element = scene.element(i);
    const geometry::Bounds& box = element.bounds;
    const double own = glm::dot(glm::abs(along), box.high - box.low);
    for (const fit::Motion& motion : element.motions) {
      const tolerance::Dimension& d = scene.dimension(motion.dimension);
      if (std::abs(stretch(motion, along) * own - 1.0) < 0.01 && std::abs(d.nominal - length) <= drawn_same)
        return tolerance::in_words(d);
    }
  }
  return tolerance::in_words(std::round(length * 100.0) / 100.0);
}

std::string direction_in_slot(const Seated& seated, Stance stance, const Vec3& direction) {
  using Names = std::array<std::array<const char*, 2>, 3>;  // of the place's x, y and z, each against it and along it
  static constexpr Names m2 = {{{"across the card, away from pin 1", "across the card, toward pin 1"},
                                {"along the card, toward the socket", "along the card, toward the screw"},
                                {"toward the board", "away from the board"}}};
  static constexpr Names mini = {{{"across the card, to its left", "across the card, to its right"},
                                  {"along the card, toward the socket", "along the card, toward the screws"},
                                  {"toward the board", "away from the board"}}};
  static constexpr Names card = {{{"to the card's solder side", "to the card's component side"},
                                  {"along the slot, toward the bracket", "along the slot, away from the bracket"},
                                  {"toward the board", "away from the board"}}};
  static constexpr Names drive = {
      {{"across, to the left as seen from the connector", "across, to the right as seen from the connector"},
       {"along the drive, toward its connector", "along the drive, away from its connector"},
       {"toward the floor", "away from the floor"}}};
  const Names& names = stance == Stance::m2     ? m2
                       : stance == Stance::mini ? mini
                       : stance == Stance::card ? card
                                                : drive;
  for (int axis = 0; axis < 3; ++axis) {
    const double share = glm::dot(direction, seated.slot.pose.turn[axis]);
    if (std::abs(share) > along_axis) return names[static_cast<std::size_t>(axis)][share > 0.0 ? 1 : 0];
  }
  return "on a slant";
}

}  // namespace baywright::output
